import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { poissonTail } from '../../../pipeline/statistics/distributions/gamma.ts';
import { garwoodInterval } from '../../../pipeline/statistics/intervals/garwood-interval.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';

describe('garwoodInterval', () => {
  // Garwood, Biometrika 28 (1936) 437-442, three decimals as in many printed tables (from memory; NaN where
  // none is quoted); ten digits from R 4.2.2 qgamma: 95 % low and high, 90 % low and high.
  it.each([
    [0, 0, 3.689, 0, 3.688879454, 0, 2.995732274],
    [1, 0.0253, 5.572, 0.02531780798, 5.571643391, 0.05129329439, 4.743864518],
    [2, Number.NaN, Number.NaN, 0.2422092785, 7.224687668, 0.3553615107, 6.295793622],
    [5, 1.623, 11.668, 1.62348639, 11.66833208, 1.970149568, 10.51303491],
    [10, 4.795, 18.39, 4.795388696, 18.39035604, 5.425405697, 16.96221924],
    [20, 12.217, 30.888, 12.21651959, 30.8883779, 13.2546516, 29.06201884],
    [50, 37.111, 65.919, 37.11096374, 65.91876666, 38.96473258, 63.2870741],
  ])('%i events', (events, low, high, low95, high95, low90, high90) => {
    const at95 = value(garwoodInterval(events, 1)).interval;
    const at90 = value(garwoodInterval(events, 1, 0.9)).interval;
    if (!Number.isNaN(low)) {
      expect(Math.abs(at95.low - low)).toBeLessThanOrEqual(0.0005);
      expect(Math.abs(at95.high - high)).toBeLessThanOrEqual(0.0005);
    }
    for (const [found, expected] of [
      [at95.low, low95],
      [at95.high, high95],
      [at90.low, low90],
      [at90.high, high90],
    ] as const) {
      expectNear(found, expected, 1e-9);
    }
  });
  it('keeps its digits at a million events', () => {
    // R 4.2.2: qgamma(0.025, 1e6), qgamma(0.975, 1e6 + 1).
    const { low, high } = value(garwoodInterval(1_000_000, 1)).interval;
    expectNear(low, 998040.983340294, 1e-12);
    expectNear(high, 1001961.911945432, 1e-12);
  });
  it('has the one-sided Poisson test at alpha / 2 on each bound, in any unit of exposure', () => {
    holds(
      fc.property(
        fc.integer({ min: 0, max: 100_000 }),
        fc.double({ min: 0.001, max: 10_000, noNaN: true }),
        fc.double({ min: 0.5, max: 0.9999, noNaN: true }),
        (events, exposure, level) => {
          const { interval } = value(garwoodInterval(events, exposure, level));
          const alpha = (1 - level) / 2;
          if (events > 0) expectNear(poissonTail(events, interval.low * exposure, 'upper'), alpha, 1e-7);
          expectNear(poissonTail(events, interval.high * exposure, 'lower'), alpha, 1e-7);
        },
      ),
    );
  });
  it('states what it cannot compute, and refuses what cannot be', () => {
    expect(garwoodInterval(0, 0)).toMatchObject({ computable: false, reason: 'There is no exposure.' });
    expect(() => garwoodInterval(1, 0)).toThrow(RangeError);
    expect(() => garwoodInterval(1.5, 1)).toThrow(RangeError);
    expect(() => garwoodInterval(1, -2)).toThrow(RangeError);
    expect(() => garwoodInterval(1, Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});
