import type { Window } from './schedule-schema.ts';
import { displacedIn, HOURS, type SiteWeek, type UnitWeek } from './week-pattern.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** Step between the starts that are tried. */
const STEP = HOUR / 2;

/** Times that a cleaning takes, ms. */
export interface Spans {
  coolDown: number;
  work: number;
  back: number;
}

/** A place in the week: begin of the work since Monday, ms, and what a cleaning there costs. */
export interface Slot {
  /** Begin of the work since Monday 00:00, ms. */
  work: number;
  displaced: number;
  /** Units left beyond those needed, at the tightest hour; below 0: too few. */
  spare: number;
  worked: boolean;
}

/** Every half hour of the week as a begin of the work, with what a cleaning there would displace. */
export function slotsOf(unit: UnitWeek, site: SiteWeek, spans: Spans, weeks: number): Slot[] {
  const slots: Slot[] = [];
  for (let work = 0; work < HOURS * HOUR; work += STEP) {
    const [from, to] = [work - spans.coolDown, work + spans.work + spans.back];
    slots.push({
      work,
      displaced: displacedIn(unit, from, to, weeks),
      spare: Math.min(...hoursOf(from, to).map((hour) => site.units.length - 1 - site.needed[hour]!)),
      worked: hoursOf(work, to).every((hour) => site.worked[hour] === 1),
    });
  }
  return slots;
}

/** Hours of the week that a span touches. */
export function hoursOf(from: number, to: number): number[] {
  const hours: number[] = [];
  for (let hour = Math.floor(from / HOUR); hour * HOUR < to; hour++)
    hours.push(((hour % HOURS) + HOURS) % HOURS);
  return hours;
}

/** Windows that fit, the best of each weekday, those that displace least first. */
export function bestWindows(slots: readonly Slot[], spans: Spans): Window[] {
  const best = new Map<number, Slot>();
  for (const slot of slots) {
    if (slot.spare < 0 || !slot.worked) continue;
    const weekday = Math.floor(slot.work / DAY) + 1;
    const known = best.get(weekday);
    if (!known || isBetter(slot, known)) best.set(weekday, slot);
  }
  return [...best]
    .sort(([a, x], [b, y]) => x.displaced - y.displaced || y.spare - x.spare || a - b)
    .map(([weekday, slot]) => ({
      weekday,
      out_from: clockText(slot.work - spans.coolDown),
      work_from: clockText(slot.work),
      work_to: clockText(slot.work + spans.work),
      back: clockText(slot.work + spans.work + spans.back),
      displaced: slot.displaced,
      spare_units: slot.spare,
    }));
}

/** Fewer displaced cycles, then more units to spare; of equals the one that came first. */
export const isBetter = (a: Slot, b: Slot): boolean =>
  a.displaced < b.displaced || (a.displaced === b.displaced && a.spare > b.spare);

function clockText(ms: number): string {
  const minutes = Math.round((((ms % DAY) + DAY) % DAY) / 60_000);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60) % 24)}:${two(minutes % 60)}`;
}
