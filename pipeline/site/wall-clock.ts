import { Temporal } from 'temporal-polyfill';
import { type Day, formatDay } from './day.ts';

/** A wall time read in a zone. `later` is the second reading of a wall time that occurs twice. */
export interface WallReading {
  at: number;
  mark: 'time' | 'ambiguous' | 'shifted';
  later?: number;
}

/** The clock of a site: wall time to instant and back, and the operating day of an instant. */
export interface WallClock {
  zone: string;
  /** Instant of a wall time. `wallMs` is the wall time written as if it were UTC, ms. */
  instantOf(wallMs: number): WallReading;
  /** Wall time of an instant, written as if it were UTC, ms. */
  wallOf(instant: number): number;
  operatingDay(instant: number): Day;
  /** Instant at which an operating day opens. */
  opensAt(day: Day): number;
}

const MS_PER_DAY = 86_400_000;
const FROM = Date.UTC(1970, 0, 1);
const UNTIL = Date.UTC(2100, 0, 1);

/** Whether the zone is one that the time zone database of this machine knows. */
export function isZone(zone: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return true;
  } catch {
    return false;
  }
}

/**
 * Clock of a zone. The changes of offset come from the time zone database through Temporal, once for the years that are asked for; looking one up is then
 * a binary search, since a fleet's records hold tens of millions of times.
 *
 * A wall time that occurs twice gives the earlier reading, marked `ambiguous`, with the later beside it. One that never occurred is moved on
 * by the length of the gap and marked `shifted` (the rule "compatible" of RFC 5545 and Temporal).
 *
 * @param zone IANA name of the zone, known to `isZone`
 * @param dayStarts hour at which the operating day starts, "HH:mm"
 */
export function wallClock(zone: string, dayStarts: string): WallClock {
  const [hour, minute] = dayStarts.split(':').map(Number) as [number, number];
  const dayStartMs = (hour * 60 + minute) * 60_000;
  const offsetAt = offsetsOf(zone);

  const wallOf = (instant: number): number => instant + offsetAt(instant);
  const instantOf = (wallMs: number): WallReading => {
    const before = offsetAt(wallMs - MS_PER_DAY);
    const after = offsetAt(wallMs + MS_PER_DAY);
    const first = wallMs - before;
    if (before === after) return { at: first, mark: 'time' };
    const second = wallMs - after;
    const firstHolds = offsetAt(first) === before;
    const secondHolds = offsetAt(second) === after;
    if (firstHolds && secondHolds) {
      return first < second
        ? { at: first, mark: 'ambiguous', later: second }
        : { at: second, mark: 'ambiguous', later: first };
    }
    if (firstHolds) return { at: first, mark: 'time' };
    if (secondHolds) return { at: second, mark: 'time' };
    return { at: first, mark: 'shifted' };
  };
  return {
    zone,
    instantOf,
    wallOf,
    operatingDay: (instant) => Math.floor((wallOf(instant) - dayStartMs) / MS_PER_DAY),
    opensAt: (day) => instantOf(day * MS_PER_DAY + dayStartMs).at,
  };
}

/** A wall time as "2026-03-01 06:30", for messages and tables. */
export function formatWall(wallMs: number): string {
  const day = Math.floor(wallMs / MS_PER_DAY);
  return `${formatDay(day)} ${new Date(wallMs).toISOString().slice(11, 16)}`;
}

/** How far around an instant the changes of offset are asked for at once, ms. */
const AROUND = 3653 * MS_PER_DAY;

/** Offset of a zone at an instant, ms; before 1970 and after 2099 that of the nearest year. */
function offsetsOf(zone: string): (instant: number) => number {
  let known = { from: UNTIL, until: FROM, instants: [] as number[], offsets: [] as number[] };
  return (instant) => {
    const at = Math.min(Math.max(instant, FROM), UNTIL - 1);
    if (at < known.from || at >= known.until)
      known = changesOf(
        zone,
        Math.min(known.from, Math.max(FROM, at - AROUND)),
        Math.max(known.until, Math.min(UNTIL, at + AROUND)),
      );
    return known.offsets[indexAt(known.instants, at)]!;
  };
}

/** The offset at the first instant, and each change until the last. */
function changesOf(zone: string, from: number, until: number) {
  let at = Temporal.Instant.fromEpochMilliseconds(from).toZonedDateTimeISO(zone);
  const instants = [from];
  const offsets = [at.offsetNanoseconds / 1e6];
  for (;;) {
    const next = at.getTimeZoneTransition('next');
    if (next === null || next.epochMilliseconds >= until) break;
    at = next;
    instants.push(at.epochMilliseconds);
    offsets.push(at.offsetNanoseconds / 1e6);
  }
  return { from, until, instants, offsets };
}

function indexAt(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sorted[middle]! <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}
