import { dayOfDate } from '../../site/day.ts';

/** A time as it is written: on the wall clock, or (with `offsetMinutes`) absolutely. */
export interface WrittenTime {
  /** Wall time as if it were UTC, ms. */
  wallMs: number;
  /** The text gives a date and no time. */
  dayOnly: boolean;
  offsetMinutes: number | undefined;
}

/** Two-digit years: 69 to 99 are 1969 to 1999. Source: POSIX.1-2017, strptime, %y. */
export const fullYear = (year: number): number => year + (year < 69 ? 2000 : 1900);

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * The time of date and clock; undefined where it isn't on the calendar. 24:00 is the end of the day (ISO 8601).
 *
 * @param hour undefined where only the date is written
 */
export function written(
  year: number,
  month: number,
  date: number,
  hour: number | undefined,
  minute: number,
  second: number,
  ms: number,
  offsetMinutes: number | undefined,
): WrittenTime | undefined {
  if (month < 1 || month > 12 || date < 1) return undefined;
  const leap = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  if (date > LENGTHS[month - 1]! + (leap ? 1 : 0)) return undefined;
  if (minute > 59 || second > 59) return undefined;
  const endOfDay = hour === 24 && minute === 0 && second === 0 && ms === 0;
  if (hour !== undefined && hour > 23 && !endOfDay) return undefined;
  if (offsetMinutes !== undefined && Math.abs(offsetMinutes) > 14 * 60) return undefined;
  // Years below 100 would be read as 1900 and something by Date.UTC; no clock of a control shows them.
  if (year < 100) return undefined;
  const wallMs =
    dayOfDate(year, month, date) * 86_400_000 + ((hour ?? 0) * 60 + minute) * 60_000 + second * 1000 + ms;
  return { wallMs, dayOnly: hour === undefined, offsetMinutes };
}
