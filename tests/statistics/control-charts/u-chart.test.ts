import { describe, expect, it } from 'vitest';
import { uChart } from '../../../pipeline/statistics/control-charts/u-chart.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

describe('u chart', () => {
  // Montgomery, Introduction to Statistical Quality Control, Example 7.5 (dyed cloth; `dyedcloth` in R
  // package qcc). The book prints u-bar 1.42 (from memory). The limits were recomputed with R 4.2.2 to six
  // decimals and agree with qcc's stored result.
  const defects = [14, 12, 20, 11, 7, 10, 21, 16, 19, 23];
  const units = [10, 8, 13, 10, 9.5, 10, 12, 10.5, 12, 12.5];
  const upper = [
    2.555038, 2.688626, 2.415894, 2.555038, 2.58444, 2.555038, 2.456427, 2.527762, 2.456427, 2.435552,
  ];
  const lower = [
    0.291474, 0.157885, 0.430617, 0.291474, 0.262072, 0.291474, 0.390085, 0.31875, 0.390085, 0.410959,
  ];

  it('has the limits of the dyed cloth', () => {
    const chart = computedOrFail(uChart({ counts: defects, denominators: units }));
    expect(chart.centre).toBeCloseTo(1.423255814, 9);
    for (const [i, point] of chart.points.entries()) {
      expect(Math.abs(point.upper! - upper[i]!)).toBeLessThan(1e-6);
      expect(Math.abs(point.lower! - lower[i]!)).toBeLessThan(1e-6);
      expect(point.z).toBeCloseTo((point.value! - chart.centre) / point.sigma!, 12);
    }
  });

  // NIST/SEMATECH e-Handbook 6.3.3.1, 25 wafers: mean 16, limits 4 and 28 (exact; from memory). 28 lies on
  // the line, only 31 is beyond.
  it('is the c chart of the wafers where every denominator is 1', () => {
    const wafers = [
      16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13,
    ];
    const chart = computedOrFail(uChart({ counts: wafers, denominators: wafers.map(() => 1) }));
    expect(chart.centre).toBe(16);
    expect(chart.points[0]).toMatchObject({ lower: 4, upper: 28 });
    expect(chart.points.filter((p) => Math.abs(p.z!) > 3).map((p) => p.value)).toEqual([31]);
  });

  it('runs the example of the docstring', () => {
    const chart = computedOrFail(uChart({ counts: [14, 12, 20, 11], denominators: [10, 8, 13, 10] }));
    expect(chart.centre).toBeCloseTo(1.3902, 4);
    expect(chart.points[0]!.lower).toBeCloseTo(0.2717, 4);
    expect(chart.points[0]!.upper).toBeCloseTo(2.5088, 4);
  });

  it('states events in a period without exposure and leaves them out', () => {
    const chart = computedOrFail(uChart({ counts: [1, 3, 2], denominators: [10, 0, 10] }));
    expect(chart.points[1]).toMatchObject({ value: null, missing: 'events but a denominator of 0' });
    expect(chart.centre).toBe(0.15);
  });

  it('states a baseline without events', () => {
    expect(
      reasonOrFail(uChart({ counts: [0, 0, 4], denominators: [5, 5, 5], baseline: { first: 0, last: 1 } })),
    ).toMatch(/No event/);
  });

  it('refuses a negative exposure', () => {
    expect(() => uChart({ counts: [1], denominators: [-1] })).toThrow(RangeError);
  });
});
