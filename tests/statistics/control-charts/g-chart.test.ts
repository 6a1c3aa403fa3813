import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gChart } from '../../../pipeline/statistics/control-charts/g-chart.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

const gaps = [6, 12, 0, 3, 21, 14, 9, 30, 2, 17, 8, 25];

describe('g chart', () => {
  // No published example with numbers was found. Formula: Benneyan, Health Care Management Science 4 (2001)
  // 305-318; values by reference/variables-charts.R, R 4.2.2.
  it('has three-sigma limits on request', () => {
    const chart = computedOrFail(gChart({ gaps, limits: 'three-sigma' }));
    expect(chart).toMatchObject({ centre: 12.25, centreIs: 'mean' });
    expect(chart.points[0]!.upper).toBeCloseTo(50.47057692, 8);
    expect(chart.points[0]!.lower).toBe(0);
  });

  it("has the quantiles of R's qgeom as probability limits", () => {
    const strict = computedOrFail(gChart({ gaps }));
    expect([strict.points[0]!.lower, strict.points[0]!.upper]).toEqual([0, 84]);
    const wide = computedOrFail(gChart({ gaps, tail: 0.02 }));
    expect([wide.points[0]!.lower, wide.points[0]!.upper]).toEqual([0, 49]);
    expect(strict.centre).toBeCloseTo(Math.log(0.5) / Math.log(12.25 / 13.25) - 1, 12);
  });

  it('scores a gap by its mid-probability', () => {
    const expected = [
      -0.25572522614, 0.31794339352, -1.77758707507, -0.70766217341, 0.89575988661, 0.46558072984,
      0.06302925677, 1.33224157977, -0.92492587391, 0.66358929222, -0.03418862751, 1.10167933694,
    ];
    const chart = computedOrFail(gChart({ gaps }));
    for (const [i, point] of chart.points.entries()) expect(point.z).toBeCloseTo(expected[i]!, 8);
  });

  it('says that a short gap alone cannot signal unless events are very rare', () => {
    expect(computedOrFail(gChart({ gaps })).falseAlarm.low).toBe(0);
    const rare = computedOrFail(gChart({ gaps: [2000, 2100, 1900, 0], baseline: { first: 0, last: 2 } }));
    expect(rare.points[0]!.lower).toBeGreaterThan(0);
    expect(rare.falseAlarm.low).toBeGreaterThan(0);
    expect(rare.falseAlarm.low).toBeLessThan(0.00135);
    expect(rare.points[3]!.value! < rare.points[3]!.lower!).toBe(true);
  });

  it.each([{ gaps: [] }, { gaps: [4] }, { gaps: [0, 0, 0] }])(
    'states why there is no chart of $gaps',
    (input) => {
      expect(reasonOrFail(gChart(input))).not.toBe('');
    },
  );

  it('refuses a gap that is no count', () => {
    expect(() => gChart({ gaps: [1, -1] })).toThrow(RangeError);
    expect(() => gChart({ gaps: [1, 2], tail: 0.5 })).toThrow(RangeError);
  });

  it('keeps the false-alarm probability on each side at or under the tail asked for', () => {
    holds(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 5000 }), { minLength: 2, maxLength: 30 }),
        fc.double({ min: 0.0005, max: 0.2, noNaN: true }),
        (anyGaps, tail) => {
          const chart = gChart({ gaps: anyGaps, tail });
          expect(numbersIn(chart).every(Number.isFinite)).toBe(true);
          if (!chart.computable) return;
          expect(chart.falseAlarm.low).toBeLessThan(tail);
          expect(chart.falseAlarm.high).toBeLessThanOrEqual(tail * (1 + 1e-12));
        },
      ),
    );
  });
});
