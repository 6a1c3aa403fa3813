import { Temporal } from 'temporal-polyfill';

/** Calendar days as whole numbers since 1970-01-01, instants as milliseconds. */
export const MINUTE = 60_000;
export const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

export const dayNumber = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / DAY;
export const isoDay = (day: number): string => new Date(day * DAY).toISOString().slice(0, 10);
/** 1 (Monday) to 7 (Sunday). */
export const weekday = (day: number): number => ((day + 3) % 7) + 1;

/** Instant of a wall time that the zone has once; `minutes` since midnight, may pass 24 h. */
export function at(zone: string, day: number, minutes: number): number {
  const midnight = Temporal.PlainDate.from(isoDay(day + Math.floor(minutes / 1440)));
  const time = Temporal.PlainTime.from({
    hour: Math.floor((minutes % 1440) / 60),
    minute: Math.floor(minutes % 60),
  });
  return midnight.toZonedDateTime({ timeZone: zone, plainTime: time }).epochMilliseconds;
}

const offsets = new Map<string, number>();

/** Offset of the zone at an instant, ms; looked up once for each quarter of an hour, since changes fall on quarters. */
function offset(zone: string, instant: number): number {
  const quarter = Math.floor(instant / (15 * MINUTE));
  const key = `${zone} ${quarter}`;
  let value = offsets.get(key);
  if (value === undefined) {
    const zoned = Temporal.Instant.fromEpochMilliseconds(quarter * 15 * MINUTE).toZonedDateTimeISO(zone);
    value = zoned.offsetNanoseconds / 1e6;
    offsets.set(key, value);
  }
  return value;
}

/** Wall time of an instant as a date whose UTC parts are the wall's parts. */
export const wall = (zone: string, instant: number): Date => new Date(instant + offset(zone, instant));

/** The operating day (it opens at 04:00) of an instant. */
export const operatingDay = (zone: string, instant: number): number =>
  Math.floor((wall(zone, instant).getTime() - 4 * HOUR) / DAY);

/** The instant cut to whole minutes of the wall. */
export const toMinute = (instant: number): number => Math.floor(instant / MINUTE) * MINUTE;
