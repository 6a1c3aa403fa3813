import { describe, expect, it } from 'vitest';
import { individualsChart } from '../../../pipeline/statistics/control-charts/individuals-chart.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

describe('individuals and moving-range chart', () => {
  // NIST/SEMATECH e-Handbook 6.3.2.2, flow rate: mean 50.81, mean moving range 1.8778, limits 45.8159 and
  // 55.8041.
  const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

  it('has the published centre and limits', () => {
    const chart = computedOrFail(individualsChart({ values: flow }));
    const point = chart.points[0]!;
    expect(chart.reference.centre).toBeCloseTo(50.81, 10);
    expect(chart.movingRangeCentre).toBeCloseTo(1.8778, 4);
    expect(Math.abs(point.lower! - 45.8159)).toBeLessThan(6e-5);
    expect(Math.abs(point.upper! - 55.8041)).toBeLessThan(6e-5);
    // reference/variables-charts.R, R 4.2.2
    expect(point.lower).toBeCloseTo(45.815910165, 8);
    expect(point.upper).toBeCloseTo(55.804089835, 8);
    expect(chart.movingRangeUpper).toBeCloseTo(6.1347, 9);
    expect(chart.movingRanges.slice(0, 2)).toEqual([null, 2]);
  });

  it('freezes its limits on the baseline and bridges nothing over a missing value', () => {
    const chart = computedOrFail(
      individualsChart({ values: [1, 2, null, 4, 5, 99], baseline: { first: 0, last: 4 } }),
    );
    expect(chart.reference).toMatchObject({
      centre: 3,
      baseline: { first: 0, last: 4, frozen: true, points: 4 },
    });
    expect(chart.movingRangeCentre).toBe(1);
    expect(chart.points[2]).toMatchObject({ value: null, z: null, missing: 'no value' });
    expect(chart.points[5]!.z).toBeCloseTo(96 * 1.128, 9);
  });

  it.each([
    { values: [], why: /at least 2/ },
    { values: [1], why: /at least 2/ },
    { values: [1, null, 2], why: /neighbouring/ },
    { values: [7, 7, 7], why: /never differ/ },
  ])('states why there is no chart of $values', ({ values, why }) => {
    expect(reasonOrFail(individualsChart({ values }))).toMatch(why);
  });

  it('refuses NaN', () => {
    expect(() => individualsChart({ values: [1, Number.NaN] })).toThrow(RangeError);
  });
});
