import { describe, expect, it } from 'vitest';
import { cusumRunLength } from '../../../pipeline/statistics/run-length/cusum-run-length.ts';
import { simulateRunLength } from '../../../pipeline/statistics/run-length/simulate-run-length.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

// Lucas and Crosier, Technometrics 24 (1982) 199-205, Table 1: k 0.5, h 4, two-sided, three significant
// digits; then the same by reference/run-lengths.R, R 4.2.2, spc 0.6.7, to three decimals.
const rows = [
  [0, 168, 167.684, 149, 148.696],
  [0.25, 74.2, 74.224, 62.7, 62.698],
  [0.5, 26.6, 26.63, 20.1, 20.064],
  [0.75, 13.3, 13.285, 8.97, 8.968],
  [1, 8.38, 8.383, 5.29, 5.287],
  [1.5, 4.75, 4.747, 2.86, 2.862],
  [2, 3.34, 3.343, 2.01, 2.014],
  [2.5, 2.62, 2.62, 1.59, 1.586],
  [3, 2.19, 2.194, 1.32, 1.325],
  [4, 1.71, 1.708, 1.07, 1.067],
] as const;

describe('CUSUM run length', () => {
  it.each(rows)('shift %f', (shift, published, spc, publishedHead, spcHead) => {
    const design = { allowance: 0.5, decision: 4, shift };
    const plain = computedOrFail(cusumRunLength(design)).average;
    const head = computedOrFail(cusumRunLength({ ...design, headStart: 0.5 })).average;
    // Half a unit of the third digit, 0.5 % at most.
    expect(Math.abs(plain / published - 1)).toBeLessThan(0.005);
    expect(Math.abs(head / publishedHead - 1)).toBeLessThan(0.005);
    expect(Math.abs(plain - spc)).toBeLessThan(0.001);
    expect(Math.abs(head - spcHead)).toBeLessThan(0.001);
  });

  // spc: 465.443506 and 10.37597. Siegmund's approximation (Montgomery, chapter 9) is off as known: 469.11
  // and 10.34.
  it('is exact where the approximation of Siegmund is near', () => {
    expect(computedOrFail(cusumRunLength({ allowance: 0.5, decision: 5 })).average).toBeCloseTo(
      465.443506,
      4,
    );
    const shifted = computedOrFail(cusumRunLength({ allowance: 0.5, decision: 5, shift: 1 })).average;
    expect(shifted).toBeCloseTo(10.37597, 4);
    const b = 5 + 1.166;
    const oneSided = (drift: number) => (Math.exp(-2 * drift * b) + 2 * drift * b - 1) / (2 * drift * drift);
    expect(oneSided(-0.5)).toBeCloseTo(938.2, 1);
    expect(Math.abs(oneSided(-0.5) / 2 / 465.44 - 1)).toBeLessThan(0.01);
    expect(Math.abs(oneSided(0.5) / shifted - 1)).toBeLessThan(0.01);
  });

  it('runs the example of the docstring', () => {
    expect(computedOrFail(cusumRunLength({ allowance: 0.5, decision: 4 })).average).toBeCloseTo(167.68, 2);
  });

  // Simulation of the two-sided chart; the stated error of joining the sides plus four standard errors.
  it.each([
    [0.3, 7.897, 0.01],
    [0.6, 13.695, 0.015],
    [0.9, 23.139, 0.05],
  ])('autocorrelation %f is within the stated error of simulation', (autocorrelation, decision, stated) => {
    const exact = computedOrFail(cusumRunLength({ allowance: 0.5, decision, autocorrelation })).average;
    const simulated = computedOrFail(
      simulateRunLength({
        chart: { kind: 'cusum', allowance: 0.5 },
        limit: decision,
        autocorrelation,
        runs: 6000,
        seed: 5,
      }),
    );
    const room = 4 * simulated.standardError;
    expect(exact).toBeGreaterThan(simulated.average - room);
    expect(exact * (1 - stated)).toBeLessThan(simulated.average + room);
  });

  it('names sides that a shift leaves silent, and refuses impossible settings', () => {
    const shifted = computedOrFail(cusumRunLength({ allowance: 0.5, decision: 4, shift: 4 }));
    expect(shifted.low).toBe(Number.POSITIVE_INFINITY);
    const mirrored = computedOrFail(cusumRunLength({ allowance: 0.5, decision: 4, shift: -4 }));
    expect(mirrored).toMatchObject({ average: shifted.average, high: shifted.low, low: shifted.high });
    expect(reasonOrFail(cusumRunLength({ allowance: 2, decision: 9 }))).toMatch(/10 million/);
    expect(() => cusumRunLength({ allowance: -1, decision: 4 })).toThrow(RangeError);
    expect(() => cusumRunLength({ allowance: 0.5, decision: 4, headStart: 1 })).toThrow(RangeError);
  });
});
