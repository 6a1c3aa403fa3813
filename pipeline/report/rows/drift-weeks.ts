import { median } from 'simple-statistics';
import { groupBy } from '../../group-by.ts';
import { formatDay } from '../../site/day.ts';
import type { DriftRow } from './drift-rows.ts';

/** Days of the newest values that a picture always shows one by one, and the length of a record up to which it shows all so. */
const DAYS_ONE_BY_ONE = 731;
const LONG_RECORD = 1096;
/** Days from a Monday to the first day of 1970, a Thursday. */
const MONDAY = 3;

export interface DriftPoint extends Pick<DriftRow, 'day' | 'date' | 'value'> {
  /** Values of which it is the median, the lowest and the highest of them; 1 for a value by itself. */
  values: number;
  low: number;
  high: number;
}

/**
 * The points of a probe's picture: each value, but in a record of more than three years the median of each week before the last two years. A point more hardly shows
 * there, and pages of fifteen years would be four times as large.
 *
 * @param rows in order of day
 * @param from first and last day of the record
 */
export function driftPoints(rows: readonly DriftRow[], from: number, to: number): DriftPoint[] {
  const first = to - from > LONG_RECORD ? to - DAYS_ONE_BY_ONE : Number.NEGATIVE_INFINITY;
  const older = rows.filter((row) => row.day < first);
  const weeks = groupBy(older, ({ era, day }) => `${era} ${Math.floor((day + MONDAY) / 7)}`);
  const ofWeeks = [...weeks.values()].map((week): DriftPoint => {
    const day = week[0]!.day;
    const values = week.map(({ value }) => value);
    const [low, high] = [Math.min(...values), Math.max(...values)];
    return { day, date: formatDay(day), value: median(values), values: week.length, low, high };
  });
  const single = rows.filter((row) => row.day >= first);
  return [
    ...ofWeeks,
    ...single.map(({ day, date, value }) => ({ day, date, value, values: 1, low: value, high: value })),
  ];
}

/** Whether a picture has points of whole weeks. */
export const hasWeeks = (points: readonly DriftPoint[]): boolean => points.some(({ values }) => values > 1);
