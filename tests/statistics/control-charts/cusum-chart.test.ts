import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cusumChart } from '../../../pipeline/statistics/control-charts/cusum-chart.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

// NIST/SEMATECH e-Handbook 6.3.2.3: target 325, K 0.3175, H 4.1959 in the unit of the data (so sigma 1 here).
const values = [
  324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
  328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
];
const nist = { values, allowance: 0.3175, decision: 4.1959, reference: { centre: 325, sigma: 1 } };

describe('CUSUM of the handbook', () => {
  const chart = computedOrFail(cusumChart(nist));

  it('has the published sums, two decimals (half a unit and the rounding of the print: 0.006)', () => {
    const high = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16, 19.04];
    const low = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, ...Array(9).fill(0)];
    for (const [i, point] of chart.points.entries()) {
      expect(Math.abs(point.high - high[i]!)).toBeLessThan(0.006);
      expect(Math.abs(point.low - low[i]!)).toBeLessThan(0.006);
    }
  });

  it('signals from the 14th value on and dates the shift to the 13th', () => {
    expect(chart.signals.map((i) => i + 1)).toEqual([14, 15, 16, 17, 18, 19, 20]);
    expect(chart.points[13]).toMatchObject({ signal: 'high', highSince: 12, lowSince: null });
  });
});

describe('CUSUM at the edges', () => {
  it('starts both sums at the head start', () => {
    const chart = computedOrFail(
      cusumChart({
        values: [0],
        allowance: 0.5,
        decision: 4,
        headStart: 0.5,
        reference: { centre: 0, sigma: 1 },
      }),
    );
    expect(chart.points[0]).toMatchObject({ high: 1.5, low: 1.5 });
  });

  it('holds over a missing value', () => {
    const chart = computedOrFail(cusumChart({ ...nist, values: [327, null, 327] }));
    expect(chart.points[1]).toMatchObject({ value: null, high: chart.points[0]!.high, signal: null });
  });

  it('states a constant baseline and refuses impossible settings', () => {
    expect(reasonOrFail(cusumChart({ values: [1, 1], allowance: 0.5, decision: 4 }))).toMatch(/never differ/);
    expect(() => cusumChart({ ...nist, headStart: 1 })).toThrow(RangeError);
    expect(() => cusumChart({ ...nist, decision: 0 })).toThrow(RangeError);
    expect(() => cusumChart({ ...nist, allowance: -1 })).toThrow(RangeError);
  });

  it('mirrors, and is the largest tail sum of z - k (its definition in closed form)', () => {
    holds(
      fc.property(
        fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 1, maxLength: 30 }),
        (z) => {
          const settings = { allowance: 0.5, decision: 4, reference: { centre: 0, sigma: 1 } };
          const up = computedOrFail(cusumChart({ values: z, ...settings }));
          const down = computedOrFail(cusumChart({ values: z.map((v) => -v), ...settings }));
          expect(up.points.map((p) => p.high)).toEqual(down.points.map((p) => p.low));
          let tail = 0;
          const tails = z.toReversed().map((v) => {
            tail += v - 0.5;
            return tail;
          });
          expect(up.points.at(-1)!.high).toBeCloseTo(Math.max(0, ...tails), 9);
        },
      ),
    );
  });
});
