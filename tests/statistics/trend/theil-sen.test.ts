import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { theilSen } from '../../../pipeline/statistics/trend/theil-sen.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

describe('Theil-Sen slope', () => {
  // Sen, Journal of the American Statistical Association 63 (1968) 1379-1389: slope 4, 93 % interval 3.71 to
  // 4.38 (two decimals); Gilbert's interpolated ranks by reference/trend.R, R 4.2.2.
  const sen = { times: [1, 2, 3, 4, 10, 12, 18], values: [9, 15, 19, 20, 45, 55, 78], level: 0.93 };

  it('has the published slope and rounded interval (the example of the docstring)', () => {
    const rounded = computedOrFail(theilSen({ ...sen, ranks: 'rounded' }));
    expect(rounded).toMatchObject({ slope: 4, intercept: 4, slopes: 21, n: 7 });
    expect(Math.abs(rounded.interval.low - 3.71)).toBeLessThan(0.0051);
    expect(Math.abs(rounded.interval.high - 4.38)).toBeLessThan(0.0051);
    expect(rounded.interval.low).toBeCloseTo(26 / 7, 10);
    expect(rounded.interval.high).toBe(4.375);
  });

  it('has the interpolated interval', () => {
    const { interval } = computedOrFail(theilSen(sen));
    expect(interval.low).toBeCloseTo(3.730994718, 8);
    expect(interval.high).toBeCloseTo(4.284619479, 8);
  });

  // Little, "A Mann-Kendall Example (By Hand)"; slope and interval by reference/trend.R, R 4.2.2, one tie.
  it('has the slope of a series with a tie', () => {
    const values = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];
    const fit = computedOrFail(theilSen({ times: values.map((_, i) => i + 1), values, ranks: 'rounded' }));
    expect(fit.slope).toBeCloseTo(0.5666666667, 9);
    expect(fit.interval.low).toBeCloseTo(0.325, 9);
    expect(fit.interval.high).toBeCloseTo(0.8666666667, 9);
  });

  it('leaves out pairs with equal times', () => {
    const fit = computedOrFail(theilSen({ times: [1, 1, 2, 2], values: [0, 2, 3, 5] }));
    expect(fit.slopes).toBe(4);
    expect(fit.slope).toBe(3);
  });

  it('leaves a side unbounded where there are too few pairs', () => {
    const fit = computedOrFail(theilSen({ times: [1, 2, 3], values: [1, 2, 4] }));
    expect(fit.interval).toEqual({
      low: Number.NEGATIVE_INFINITY,
      high: Number.POSITIVE_INFINITY,
      level: 0.95,
    });
  });

  it('states too few times, and refuses what cannot be', () => {
    expect(reasonOrFail(theilSen({ times: [], values: [] }))).toMatch(/Fewer than two/);
    expect(reasonOrFail(theilSen({ times: [3, 3], values: [1, 2] }))).toMatch(/Fewer than two/);
    expect(() => theilSen({ times: [1], values: [1, 2] })).toThrow(RangeError);
    expect(() => theilSen({ ...sen, level: 1 })).toThrow(RangeError);
    expect(() => theilSen({ ...sen, varianceFactor: 0 })).toThrow(RangeError);
  });

  it('is 0 to 0 on a constant series', () => {
    const fit = computedOrFail(theilSen({ times: [1, 2, 3, 4, 5, 6], values: [7, 7, 7, 7, 7, 7] }));
    expect(fit).toMatchObject({ slope: 0, intercept: 7 });
    expect(fit.interval).toMatchObject({ low: 0, high: 0 });
  });

  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: -50, max: 50 })), {
    minLength: 2,
    maxLength: 30,
  });

  it('ignores the order of the input, follows a line added to it, and holds its slope inside the interval', () => {
    holds(
      fc.property(points, (pairs) => {
        const fit = theilSen({ times: pairs.map((p) => p[0]), values: pairs.map((p) => p[1]) });
        const turned = pairs.toReversed();
        expect(theilSen({ times: turned.map((p) => p[0]), values: turned.map((p) => p[1]) })).toEqual(fit);
        if (!fit.computable) return;
        expect(numbersIn(fit).some(Number.isNaN)).toBe(false);
        expect(fit.interval.low).toBeLessThanOrEqual(fit.slope);
        expect(fit.interval.high).toBeGreaterThanOrEqual(fit.slope);
        const added = computedOrFail(
          theilSen({ times: pairs.map((p) => p[0]), values: pairs.map((p) => p[1] + 3 * p[0] + 2) }),
        );
        expect(added.slope).toBeCloseTo(fit.slope + 3, 9);
      }),
    );
  });

  it('has a wider interval for autocorrelated values', () => {
    const times = Array.from({ length: 30 }, (_, i) => i);
    const values = times.map((t) => t + 5 * Math.sin(t * t));
    const width = (varianceFactor: number) => {
      const { interval } = computedOrFail(theilSen({ times, values, varianceFactor }));
      return interval.high - interval.low;
    };
    expect(width(3)).toBeGreaterThan(width(1));
  });
});
