import type { DateReader } from './date-pattern.ts';

const MS_PER_DAY = 86_400_000;

/**
 * Day 0 of the two counts that spreadsheets use, ms as if UTC. The count from 1900 holds a 29 February 1900 that never was; from 1 March 1900 on it
 * is as if it had begun on 30 December 1899. Source: ECMA-376 Part 1 (Office Open XML), 18.17.4.1, date systems.
 */
const ZERO: Readonly<Record<string, number>> = {
  'serial 1900': Date.UTC(1899, 11, 30),
  'serial 1904': Date.UTC(1904, 0, 1),
};

/**
 * Reader of days as a spreadsheet counts them; undefined where the pattern is none of "serial 1900" and "serial 1904". Parts of a day are rounded to the
 * second, since a fraction of a day can't hold one exactly. A decimal comma is read as a point.
 */
export function serialReader(pattern: string): DateReader | undefined {
  const zero = Object.hasOwn(ZERO, pattern) ? ZERO[pattern] : undefined;
  if (zero === undefined) return undefined;
  return (whole, from = 0, to = whole.length) => {
    const text = whole.slice(from, to).trim();
    if (!/^\d{1,6}(?:[.,]\d+)?$/.test(text)) return undefined;
    const days = Number(text.replace(',', '.'));
    const seconds = Math.round(days * 86_400);
    return {
      wallMs: zero + seconds * 1000,
      dayOnly: (seconds * 1000) % MS_PER_DAY === 0,
      offsetMinutes: undefined,
    };
  };
}
