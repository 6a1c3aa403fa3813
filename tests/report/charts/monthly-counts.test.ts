import { describe, expect, it } from 'vitest';
import { eventRate, proportion } from '../../../pipeline/findings/summaries/rate.ts';
import { countBounds, monthlyCountsChart } from '../../../pipeline/report/charts/monthly-counts.ts';
import { monthlyRows } from '../../../pipeline/report/rows/monthly-rows.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { fleetInput } from '../fixtures/fleet.ts';

const per100 = ({ of, low, high }: { of: number; low: number | null; high: number | null }) => ({
  of,
  low: low === null ? null : low * 100,
  high: high === null ? null : high * 100,
});

describe('interval of a month as a count', () => {
  // Exact limits of a Poisson count at 95 %: F. Garwood, Biometrika 28 (1936) 437-442, the table.
  it.each([
    [0, 0, 3.689],
    [1, 0.0253, 5.572],
    [5, 1.623, 11.668],
    [10, 4.795, 18.39],
  ])('of %i aborts is that of the published table, whatever the cycles', (events, low, high) => {
    for (const cycles of [40, 1000]) {
      const bounds = countBounds(per100(eventRate(events, cycles, 0.95)));
      expect(bounds.low_count).toBeCloseTo(low, 3);
      expect(bounds.high_count).toBeCloseTo(high, 2);
    }
  });

  it('of failed days never holds more than the days', () => {
    const bounds = countBounds(per100(proportion(9, 10, 0.95)));
    expect(bounds.high_count).toBeLessThanOrEqual(10);
    // C. Clopper, E. Pearson, Biometrika 26 (1934) 404-413; R binom.test(9, 10): 0.5550 to 0.9975 (from memory).
    expect(bounds.low_count).toBeCloseTo(5.55, 2);
    expect(bounds.high_count).toBeCloseTo(9.975, 2);
  });

  it('is not there where nothing was counted', () => {
    expect(countBounds(per100(eventRate(0, 0, 0.95)))).toEqual({ low_count: null, high_count: null });
  });
});

describe('bars of counts', () => {
  it('begin at zero and have room for each interval', () => {
    const { review } = fleetInput(3);
    const rows = monthlyRows(review.charts.failed_days, review, en).filter((row) => row.scope === 'A1');
    const max = Math.max(...rows.map((row) => countBounds(row).high_count ?? 0));
    const spec = monthlyCountsChart(rows, { valueTitle: 'n', scale: { max }, labelledMonths: [] });
    const [bars] = (
      spec as unknown as { layer: { encoding: { y: { scale: { domain: number[]; zero: boolean } } } }[] }
    ).layer;
    expect(bars!.encoding.y.scale.zero).toBe(true);
    expect(bars!.encoding.y.scale.domain[0]).toBe(0);
    expect(bars!.encoding.y.scale.domain[1]).toBeGreaterThan(max);
  });
});
