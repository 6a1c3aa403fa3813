import { describe, expect, it } from 'vitest';
import { abortsChart, failedDaysChart } from '../../../pipeline/findings/summaries/monthly-charts.ts';
import { dayOfDate } from '../../../pipeline/site/day.ts';
import type { UnitDay } from '../../../pipeline/transform/panel/unit-day.ts';

/** Days of one month, the first `failed` of them failed, each with one cycle; all aborts on the first day. */
const days = (month: number, of: number, failed: number, aborts = 0): UnitDay[] =>
  Array.from(
    { length: of },
    (_, index) =>
      ({
        day: dayOfDate(2026, month, 1) + index,
        at_risk: 1,
        failed: index < failed ? 1 : 0,
        cleanliness_aborts: index === 0 ? aborts : 0,
        production_cycles: 1,
      }) as UnitDay,
  );

describe('monthly charts', () => {
  // Exact binomial interval, 95 %: 1 of 10 is 0.25 to 44.50 % (common textbook value, from memory; Clopper and Pearson 1934).
  it('stand each month’s share with its exact interval', () => {
    const [first, second] = failedDaysChart([...days(1, 10, 1), ...days(2, 28, 0)], 'fleet', 0.95);
    expect(first).toMatchObject({ month: '2026-01', events: 1, of: 10, value: 0.1 });
    expect(first!.low).toBeCloseTo(0.0025, 4);
    expect(first!.high).toBeCloseTo(0.445, 4);
    expect(second!.low).toBe(0);
    // 1 - 0.025^(1/28), the closed form of the bound for no event.
    expect(second!.high).toBeCloseTo(1 - 0.025 ** (1 / 28), 10);
  });

  // Exact Poisson interval of 3 events, 95 %: 0.6187 to 8.7673 (Garwood 1936, table; from memory).
  it('stand each month’s aborts per cycle with the exact interval of their number', () => {
    const [only] = abortsChart(days(1, 20, 0, 3), 'fleet', 0.95);
    expect(only!.low! * 20).toBeCloseTo(0.6187, 4);
    expect(only!.high! * 20).toBeCloseTo(8.7673, 4);
  });
});
