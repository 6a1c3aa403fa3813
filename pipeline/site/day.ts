/**
 * A day as a whole number: days since 1970-01-01 in the calendar of the place that it speaks of. Differences are counts of days.
 */
export type Day = number;

const MS_PER_DAY = 86_400_000;

/** Day of a calendar date; months run from 1. The date must exist (checked by the caller or by `parseDay`). */
export function dayOfDate(year: number, month: number, date: number): Day {
  return Math.round(Date.UTC(year, month - 1, date) / MS_PER_DAY);
}

/** "2026-03-01" to a day; undefined where the text is no date of the calendar. */
export function parseDay(text: string): Day | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return undefined;
  const day = dayOfDate(Number(match[1]), Number(match[2]), Number(match[3]));
  return formatDay(day) === text ? day : undefined;
}

/** Days that were asked for, as texts: a fleet's tables name the same few thousand days millions of times. */
const texts = new Map<Day, string>();

/** Most days that are remembered: a century and more. */
const MOST_TEXTS = 50_000;

/** A day as "2026-03-01". */
export function formatDay(day: Day): string {
  const known = texts.get(day);
  if (known !== undefined) return known;
  const text = new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
  if (texts.size < MOST_TEXTS) texts.set(day, text);
  return text;
}

/** 1 (Monday) to 7 (Sunday). */
export function weekday(day: Day): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/** First day of the month "2026-03", and of the month after it; undefined where the text is no month. */
export function monthSpan(month: string): { from: Day; until: Day } | undefined {
  const match = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(month);
  if (!match) return undefined;
  const year = Number(match[1]);
  const number = Number(match[2]);
  return { from: dayOfDate(year, number, 1), until: dayOfDate(year, number + 1, 1) };
}

/** The month of a day as "2026-03". */
export function monthOf(day: Day): string {
  return formatDay(day).slice(0, 7);
}
