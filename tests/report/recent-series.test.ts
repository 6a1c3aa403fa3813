import { describe, expect, it } from 'vitest';
import type { Review } from '../../pipeline/findings/review-schema.ts';
import { withRecentSeries } from '../../pipeline/report/recent-series.ts';

const seriesOf = (from: string, day: number[], leftOut: number[] = []) => ({
  series: {
    from,
    day,
    value: day.map((at) => at + 0.5),
    adjusted: day.map((at) => -at),
    left_out: leftOut.map((at) => ({ day: at, value: 1, why: 'stuck' as const })),
  },
});
const recent = (...probes: ReturnType<typeof seriesOf>[]) =>
  withRecentSeries({ period: { to: '2026-12-31' }, drift: { probes } } as unknown as Review).drift.probes.map(
    ({ series }) => series,
  );

describe('recent series', () => {
  it('hold the last 731 days, counted from their first', () => {
    // 2024-12-31 is the first of 731 days to 2026-12-31: 366 days after 2023-12-31 (a leap year).
    const [series] = recent(seriesOf('2023-12-31', [0, 365, 366, 400, 1096], [10, 380]));
    expect(series).toEqual({
      from: '2024-12-31',
      day: [0, 34, 730],
      value: [366.5, 400.5, 1096.5],
      adjusted: [-366, -400, -1096],
      left_out: [{ day: 14, value: 1, why: 'stuck' }],
    });
  });

  it('stay as they are where they begin later, and are empty where they ended before', () => {
    const later = seriesOf('2026-01-01', [0, 3]);
    const [same, ended] = recent(later, seriesOf('2020-01-01', [0, 3]));
    expect(same).toBe(later.series);
    expect(ended!.day).toEqual([]);
  });
});
