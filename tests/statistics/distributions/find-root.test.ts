import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRoot } from '../../../pipeline/statistics/distributions/find-root.ts';
import { holds } from '../properties.ts';

describe('findRoot', () => {
  it('finds the root of functions with a known one, flat and steep', () => {
    holds(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), fc.constantFrom(1, 3, 9), (root, power) => {
        const f = (x: number) => (x - root) ** power;
        const found = findRoot(f, root - 7, root + 31, 1e-13);
        expect(Math.abs(found - root)).toBeLessThan(1e-11 * (1 + Math.abs(root)));
      }),
    );
    expect(findRoot((x) => Math.exp(x) - 3, -700, 700)).toBeCloseTo(Math.log(3), 13);
    expect(findRoot((x) => Math.atan(1e6 * (x - 0.3)), -1, 1)).toBeCloseTo(0.3, 13);
  });
  it('agrees with a step: no continuity needed to stay in the bracket', () => {
    expect(findRoot((x) => (x < 0.7 ? -1 : 1), 0, 5)).toBeCloseTo(0.7, 12);
  });
  it('takes few calls on a smooth function', () => {
    let calls = 0;
    findRoot(
      (x) => {
        calls++;
        return x ** 3 - 2 * x - 5; // Wallis (1685): 2.0945514815
      },
      2,
      3,
    );
    expect(calls).toBeLessThan(15);
    expect(findRoot((x) => x ** 3 - 2 * x - 5, 2, 3)).toBeCloseTo(2.0945514815, 10);
  });
  it('returns an end that is a root, and takes infinite ends', () => {
    expect(findRoot((x) => x, 0, 4)).toBe(0);
    expect(findRoot((x) => x - 4, 0, 4)).toBe(4);
    expect(findRoot((x) => Math.log(x), 0, 10)).toBeCloseTo(1, 13);
  });
  it('refuses a bracket without a change of sign', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow('no change of sign');
    expect(() => findRoot(() => Number.NaN, -1, 1)).toThrow(RangeError);
  });
});
