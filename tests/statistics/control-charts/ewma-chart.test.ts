import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ewmaChart } from '../../../pipeline/statistics/control-charts/ewma-chart.ts';
import { EwmaVariance } from '../../../pipeline/statistics/control-charts/ewma-variance.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

// NIST/SEMATECH e-Handbook 6.3.2.4: lambda 0.3, target 50, s 2.0539, L 3.
const values = [
  52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4,
  53.6, 52.1,
];
const published = [
  50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38,
  49.92, 50.73, 51.23, 51.94, 51.99,
];
const nist = { values, lambda: 0.3, limit: 3, reference: { centre: 50, sigma: 2.0539 } };

describe('EWMA chart of the handbook', () => {
  const chart = computedOrFail(ewmaChart(nist));

  it('has the published EWMA, to the two decimals printed, and no signal', () => {
    for (const [i, point] of chart.points.entries()) {
      expect(Math.abs(point.value! - published[i]!)).toBeLessThan(0.0051);
    }
    expect(chart.signals).toEqual([]);
  });

  it('has time-varying limits that end at the published 47.4115 and 52.5884', () => {
    // reference/variables-charts.R, R 4.2.2
    for (const [i, upper] of [51.84851, 52.25639401, 52.43140557].entries()) {
      expect(chart.points[i]!.upper).toBeCloseTo(upper, 7);
    }
    // At the twentieth value 1 - 0.7^40 has all but reached 1. The handbook cut its lower limit: 1e-4.
    expect(Math.abs(chart.points[19]!.upper! - 52.5884)).toBeLessThan(1e-4);
    expect(Math.abs(chart.points[19]!.lower! - 47.4115)).toBeLessThan(1e-4);
  });
});

describe('EWMA of autocorrelated values', () => {
  it('has the standard deviation of the full covariance matrix', () => {
    // reference/variables-charts.R, R 4.2.2: lambda 0.2, phi 0.6, steps 1, 2, 5 and 20.
    const variance = new EwmaVariance(0.2, 0.6);
    const sd = Array.from({ length: 20 }, () => Math.sqrt(variance.afterValue()));
    expect(sd[0]).toBeCloseTo(0.2, 12);
    expect(sd[1]).toBeCloseTo(0.3224903099, 9);
    expect(sd[4]).toBeCloseTo(0.494455505, 9);
    expect(sd[19]).toBeCloseTo(0.5622598389, 9);
  });

  it('comes to the closed limit of Schmid (1997)', () => {
    holds(
      fc.property(
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        (lambda, phi) => {
          const variance = new EwmaVariance(lambda, phi);
          let last = 0;
          for (let i = 0; i < 2000; i += 1) last = variance.afterValue();
          expect(last / EwmaVariance.limit(lambda, phi)).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('draws wider limits for positive autocorrelation', () => {
    const plain = computedOrFail(ewmaChart(nist)).points[10]!;
    const wide = computedOrFail(ewmaChart({ ...nist, autocorrelation: 0.5 })).points[10]!;
    expect(wide.upper).toBeGreaterThan(plain.upper!);
    expect(wide.value).toBe(plain.value);
  });
});

describe('EWMA chart at the edges', () => {
  it('is the individuals z where lambda is 1', () => {
    const chart = computedOrFail(ewmaChart({ ...nist, lambda: 1 }));
    for (const [i, p] of chart.points.entries()) expect(p.z).toBeCloseTo((values[i]! - 50) / 2.0539, 10);
  });

  it('holds its level over a missing value', () => {
    const chart = computedOrFail(
      ewmaChart({ values: [1, null, 1], lambda: 0.5, limit: 3, reference: { centre: 0, sigma: 1 } }),
    );
    expect(chart.points.map((p) => p.value)).toEqual([0.5, null, 0.75]);
    expect(numbersIn(chart).every(Number.isFinite)).toBe(true);
  });

  it('freezes centre and sigma on a baseline', () => {
    const chart = computedOrFail(
      ewmaChart({
        values: [1, 3, 100],
        lambda: 0.5,
        limit: 3,
        reference: { baseline: { first: 0, last: 1 } },
      }),
    );
    expect(chart.reference).toMatchObject({ centre: 2, sigma: Math.SQRT2, sigmaBy: 'standard-deviation' });
    expect(chart.signals).toEqual([2]);
  });

  it('states a constant baseline and refuses impossible settings', () => {
    expect(reasonOrFail(ewmaChart({ values: [4, 4, 4], lambda: 0.2, limit: 3 }))).toMatch(/never differ/);
    expect(() => ewmaChart({ ...nist, lambda: 0 })).toThrow(RangeError);
    expect(() => ewmaChart({ ...nist, limit: 0 })).toThrow(RangeError);
    expect(() => ewmaChart({ ...nist, autocorrelation: 1 })).toThrow(RangeError);
    expect(() => ewmaChart({ ...nist, reference: { centre: 0, sigma: 0 } })).toThrow(RangeError);
  });
});
