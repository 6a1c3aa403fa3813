import { describe, expect, it } from 'vitest';
import { ewmaRunLength } from '../../../pipeline/statistics/run-length/ewma-run-length.ts';
import { simulateRunLength } from '../../../pipeline/statistics/run-length/simulate-run-length.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

// Lucas and Saccucci, Technometrics 32 (1990) 1-12, Table 3: two-sided, fixed limits, zero state, three
// significant digits.
const shifts = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5];
const fast = [500, 255, 88.8, 35.9, 17.5, 6.53, 3.63, 2.5, 1.93, 1.58, 1.34, 1.07];
const slow = [500, 76.7, 29.3, 17.6, 12.6, 8.07, 5.99, 4.8, 4.03, 3.49, 3.11, 2.55];
// Montgomery, Introduction to Statistical Quality Control, Table 9.11 (from memory).
const montgomeryShifts = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3];
const quarter = [500, 170, 48.2, 20.1, 11.1, 5.5, 3.6, 2.7, 2.3];
const twentieth = [500, 84, 28.8, 16.4, 11.4, 7.1, 5.2, 4.2, 3.5];

describe('EWMA run length against published tables', () => {
  it.each(shifts.map((shift, i) => [shift, fast[i]!, slow[i]!]))(
    'Lucas and Saccucci, shift %f',
    (shift, publishedFast, publishedSlow) => {
      const average = (lambda: number, limit: number) =>
        computedOrFail(ewmaRunLength({ lambda, limit, shift, limits: 'asymptotic' })).average;
      // Half a unit of the third digit and a little for the rounding of L: 0.4 %.
      expect(Math.abs(average(0.5, 3.071) / publishedFast - 1)).toBeLessThan(0.004);
      expect(Math.abs(average(0.03, 2.437) / publishedSlow - 1)).toBeLessThan(0.004);
    },
  );

  it.each(montgomeryShifts.map((shift, i) => [shift, quarter[i]!, twentieth[i]!]))(
    'Montgomery, shift %f',
    (shift, first, second) => {
      const average = (lambda: number, limit: number) =>
        computedOrFail(ewmaRunLength({ lambda, limit, shift, limits: 'asymptotic' })).average;
      // The book prints one decimal (48.2, where the value is 48.29): 0.1 plus 0.3 %.
      expect(Math.abs(average(0.25, 2.998) - first)).toBeLessThan(0.1 + 0.003 * first);
      expect(Math.abs(average(0.05, 2.615) - second)).toBeLessThan(0.1 + 0.003 * second);
    },
  );
});

// reference/run-lengths.R: R 4.2.2, spc 0.6.7; relative 1e-5.
describe('EWMA run length against the R package spc', () => {
  it.each([
    [{ lambda: 0.5, limit: 3.071, limits: 'asymptotic' }, 499.909],
    [{ lambda: 0.5, limit: 3.071, limits: 'asymptotic', shift: 1 }, 17.4766],
    [{ lambda: 0.03, limit: 2.437, limits: 'asymptotic' }, 499.859157],
    [{ lambda: 0.1, limit: 2.7, limits: 'asymptotic' }, 368.993734],
    [{ lambda: 0.1, limit: 2.7, limits: 'time-varying' }, 356.095097],
  ] as const)('%o', (design, expected) => {
    expect(Math.abs(computedOrFail(ewmaRunLength(design)).average / expected - 1)).toBeLessThan(1e-5);
  });

  it('runs the example of the docstring', () => {
    const example = computedOrFail(ewmaRunLength({ lambda: 0.03, limit: 2.437, limits: 'asymptotic' }));
    expect(example.average).toBeCloseTo(499.86, 2);
  });
});

describe('EWMA run length of AR(1) values', () => {
  // No published table with these conventions was found; an independent simulation is the check. 12 000 runs:
  // four standard errors are 3.6 %.
  it.each([
    [0.2, 2.5, -0.5, 0],
    [0.2, 2.3, 0.3, 0],
    [0.1, 2.2, 0.6, 0],
    [0.3, 2.2, 0.9, 0],
    [0.2, 2.5, 0.5, 1],
  ])('lambda %f, L %f, autocorrelation %f, shift %f', (lambda, limit, autocorrelation, shift) => {
    const exact = computedOrFail(ewmaRunLength({ lambda, limit, autocorrelation, shift }));
    const simulated = computedOrFail(
      simulateRunLength({
        chart: { kind: 'ewma', lambda },
        limit,
        autocorrelation,
        shift,
        runs: 12_000,
        seed: 20,
      }),
    );
    expect(Math.abs(exact.average - simulated.average)).toBeLessThan(4 * simulated.standardError);
    expect(Math.abs(exact.median - simulated.median)).toBeLessThanOrEqual(1 + 0.05 * exact.median);
  });

  it('never signals sooner than independent statistics of the same width (Šidák)', () => {
    const independent = computedOrFail(ewmaRunLength({ lambda: 1, limit: 2.5 })).average;
    for (const autocorrelation of [-0.8, -0.3, 0.4, 0.9]) {
      expect(
        computedOrFail(ewmaRunLength({ lambda: 0.3, limit: 2.5, autocorrelation })).average,
      ).toBeGreaterThan(independent);
    }
  });
});

describe('EWMA run length at the edges', () => {
  it('is the Shewhart chart where lambda is 1: 370.4 and median 257', () => {
    const shewhart = computedOrFail(ewmaRunLength({ lambda: 1, limit: 3 }));
    expect(shewhart.average).toBeCloseTo(370.398, 3);
    expect(shewhart.median).toBe(Math.ceil(Math.log(0.5) / Math.log(1 - 1 / shewhart.average)));
  });

  it('states a chart that never signals', () => {
    expect(reasonOrFail(ewmaRunLength({ lambda: 0.2, limit: 8 }))).toMatch(/10 million/);
  });

  it('refuses impossible settings', () => {
    expect(() => ewmaRunLength({ lambda: 0, limit: 3 })).toThrow(RangeError);
    expect(() => ewmaRunLength({ lambda: 0.2, limit: -1 })).toThrow(RangeError);
    expect(() => ewmaRunLength({ lambda: 0.2, limit: 3, autocorrelation: 0.96 })).toThrow(RangeError);
    expect(() => ewmaRunLength({ lambda: 0.2, limit: 3, shift: Number.NaN })).toThrow(RangeError);
  });
});
