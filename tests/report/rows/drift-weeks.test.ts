import { describe, expect, it } from 'vitest';
import { driftPoints, hasWeeks } from '../../../pipeline/report/rows/drift-weeks.ts';
import { formatDay, parseDay } from '../../../pipeline/site/day.ts';

const FROM = parseDay('2020-01-01')!;
const series = (days: number, eraFrom = Number.POSITIVE_INFINITY) =>
  Array.from({ length: days }, (_, index) => ({
    unit: 'U',
    probe: 'heat_up_time' as const,
    era: index < eraFrom ? 0 : 1,
    day: FROM + index,
    date: formatDay(FROM + index),
    value: index,
    adjusted: null,
  }));

describe('the points of a drift picture', () => {
  it('are all values of a record of up to three years', () => {
    const points = driftPoints(series(1097), FROM, FROM + 1096);
    expect(points).toHaveLength(1097);
    expect(hasWeeks(points)).toBe(false);
  });

  it('are the medians of calendar weeks before the last two years of a longer one', () => {
    const days = 1500;
    const points = driftPoints(series(days), FROM, FROM + days - 1);
    // 2020-01-01 was a Wednesday: the first week has five days, with values 0 to 4.
    expect(points[0]).toEqual({ day: FROM, date: '2020-01-01', value: 2, values: 5, low: 0, high: 4 });
    expect(points[1]).toEqual({ day: FROM + 5, date: '2020-01-06', value: 8, values: 7, low: 5, high: 11 });
    const single = points.filter(({ values }) => values === 1);
    expect(single).toHaveLength(732);
    expect(single[0]!.day).toBe(FROM + days - 1 - 731);
    expect(points.reduce((sum, { values }) => sum + values, 0)).toBe(days);
    expect(hasWeeks(points)).toBe(true);
  });

  it('keep eras apart within a week', () => {
    const points = driftPoints(series(1500, 7), FROM, FROM + 1499);
    expect(points.slice(1, 3)).toEqual([
      { day: FROM + 5, date: '2020-01-06', value: 5.5, values: 2, low: 5, high: 6 },
      { day: FROM + 7, date: '2020-01-08', value: 9, values: 5, low: 7, high: 11 },
    ]);
  });
});
