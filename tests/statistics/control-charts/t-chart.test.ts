import { describe, expect, it } from 'vitest';
import { tChart } from '../../../pipeline/statistics/control-charts/t-chart.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

describe('t chart', () => {
  // Hours between valve failures, Montgomery, Introduction to Statistical Quality Control, Example 7.6. The
  // book prints the transformed times 4.80986 6.70903 5.72650 3.81367 ... (from memory), with the power
  // rounded to 0.2777, which moves them by up to 0.004; limits by reference/variables-charts.R, R 4.2.2.
  const hours = [
    286, 948, 536, 124, 816, 729, 4, 143, 431, 8, 2837, 596, 81, 227, 603, 492, 1199, 1214, 2831, 96,
  ];

  it('charts the valve failures on the transformed scale', () => {
    const chart = computedOrFail(tChart({ times: hours }));
    expect(chart.reference.centre).toBeCloseTo(5.389276973, 8);
    expect(chart.reference.sigma).toBeCloseTo(2.093014692, 8);
    const transformed = chart.points.map((p) => chart.reference.centre + p.z! * chart.reference.sigma);
    for (const [i, printed] of [4.80986, 6.70903, 5.7265, 3.81367].entries()) {
      expect(Math.abs(transformed[i]! - printed)).toBeLessThan(0.004);
    }
    expect(chart.points[0]!.upper! / 6937.933488).toBeCloseTo(1, 8);
    expect(chart.points[0]!.lower).toBe(0);
    expect(chart.points.filter((p) => Math.abs(p.z!) > 3)).toHaveLength(0);
  });

  it('counts times of 0 and keeps them', () => {
    const chart = computedOrFail(tChart({ times: [0, 5, 9, 0] }));
    expect(chart.zeros).toBe(2);
    expect(chart.points[0]!.value).toBe(0);
  });

  it('states a series without change or with one time', () => {
    expect(reasonOrFail(tChart({ times: [5, 5, 5] }))).toMatch(/never differ/);
    expect(reasonOrFail(tChart({ times: [5] }))).toMatch(/at least 2/);
    expect(() => tChart({ times: [5, -1] })).toThrow(RangeError);
  });
});
