import { describe, expect, it } from 'vitest';
import { kendallOverStrata } from '../../../pipeline/statistics/trend/kendall-over-strata.ts';
import { mannKendall } from '../../../pipeline/statistics/trend/mann-kendall.ts';
import { expectNear, value } from '../computable.ts';
import { reasonOrFail } from '../computed-or-fail.ts';

const first = { x: [2, 5, 9, 14, 14, 21, 28, 30, 35, 40], y: [0, 1, 1, 2, 1, 2, 2, 3, 2, 3] };
const second = { x: [3, 8, 8, 15, 22, 26], y: [2, 1, 2, 2, 4, 3] };

describe('Kendall within strata', () => {
  it('in one stratum is the test of R 4.2.2, cor.test(method = "kendall", exact = FALSE, continuity = TRUE)', () => {
    const test = value(kendallOverStrata([first]));
    expectNear(test.z, 2.94386356092, 1e-10);
    expectNear(test.pValue, 0.00324142863098, 1e-10);
  });

  it('over strata sums S and its variance, each from R 4.2.2 (S over z without continuity, squared)', () => {
    const test = value(kendallOverStrata([first, second]));
    expect(test.s).toBe(39);
    expectNear(test.variance, 110.888888888889 + 23.866666666667, 1e-12);
    expectNear(test.z, 3.2734842612182, 1e-12);
    expectNear(test.pValue, 0.0010623030647, 1e-10);
    // By hand for the second stratum: of 15 pairs 9 go the same way, 2 opposite ways, 4 are tied in x or y.
    expect(value(kendallOverStrata([second])).gamma).toBe(7 / 11);
  });

  it('of a series against time is Mann-Kendall', () => {
    // Little, "A Mann-Kendall Example (By Hand)": S 54, Z 2.9058.
    const y = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];
    const test = value(kendallOverStrata([{ x: y.map((_, index) => index), y }]));
    expect(test.s).toBe(54);
    expect(test.z).toBeCloseTo(2.9058, 4);
    expectNear(test.z, value(mannKendall({ values: y })).z, 1e-12);
  });

  it('does not take strata of different level for an association', () => {
    const high = { x: [50, 51, 52, 53, 54, 55], y: [4, 3, 4, 3, 4, 3] };
    const low = { x: [1, 2, 3, 4, 5, 6], y: [0, 1, 0, 1, 0, 1] };
    expect(value(kendallOverStrata([high, low])).s).toBe(0);
    const pooled = { x: [...high.x, ...low.x], y: [...high.y, ...low.y] };
    expect(value(kendallOverStrata([pooled])).pValue).toBeLessThan(0.05);
  });

  it('states what it can’t compute', () => {
    expect(reasonOrFail(kendallOverStrata([]))).toMatch(/No stratum/);
    expect(reasonOrFail(kendallOverStrata([{ x: [1, 1, 1], y: [0, 1, 2] }]))).toMatch(/No stratum/);
    expect(() => kendallOverStrata([{ x: [1], y: [] }])).toThrow(RangeError);
  });
});
