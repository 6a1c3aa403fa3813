import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { autoregressiveSeries, normalStream } from '../../../pipeline/statistics/run-length/normal-stream.ts';
import { kendallUpperTail } from '../../../pipeline/statistics/trend/kendall-exact.ts';
import { kendallVariance, tieSizes } from '../../../pipeline/statistics/trend/kendall-variance.ts';
import { mannKendall } from '../../../pipeline/statistics/trend/mann-kendall.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

// Little, College of the Holy Cross, "A Mann-Kendall Example (By Hand)": 72 ups, 18 downs, 1 tie; S 54, Z
// 2.9058, one-sided p 0.0018.
const little = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];

describe('Mann-Kendall', () => {
  it('agrees with the hand calculation of Little', () => {
    const test = computedOrFail(mannKendall({ values: little }));
    expect(test.s).toBe(54);
    expect(test.z).toBeCloseTo(2.9058, 4);
    expect(test.pIncreasing).toBeCloseTo(0.0018, 4);
    // Recomputed with R 4.2.2.
    expect(test.variance).toBeCloseTo(332.6666666667, 9);
    expect(test.z).toBeCloseTo(2.905836846, 8);
    expect(test.pIncreasing / 0.001831361881).toBeCloseTo(1, 8);
    expect(test.pValue / 0.003662723763).toBeCloseTo(1, 8);
    expect(test.tau).toBeCloseTo(0.5966941897, 9);
  });

  it('has the exact p-value of a perfect order: 2/7! (and the example of the docstring)', () => {
    const values = [9, 15, 19, 20, 45, 55, 78];
    const exact = computedOrFail(mannKendall({ values, pValueBy: 'exact' }));
    expect(exact).toMatchObject({ s: 21, tau: 1 });
    expect(exact.pValue / (2 / 5040)).toBeCloseTo(1, 10);
    expect(computedOrFail(mannKendall({ values })).z).toBeCloseTo(3.003757046, 8);
  });

  // reference/trend.R, R 4.2.2: cor.test(method = "kendall", exact = TRUE), T = 23 concordant pairs of 28.
  it("has R's exact p-value of a mixed order", () => {
    const values = [3.1, 2.2, 5.4, 4.1, 6.0, 5.1, 7.3, 6.4];
    const exact = computedOrFail(mannKendall({ values, pValueBy: 'exact' }));
    expect(exact.s).toBe(18);
    expect(exact.pValue).toBeCloseTo(0.03115079365, 9);
    expect(exact.pIncreasing).toBeCloseTo(0.01557539683, 10);
  });

  // reference/trend.R, R 4.2.2: variance implied by cor.test(exact = FALSE) with ties on both sides.
  it("has R's variance with ties on both sides", () => {
    const a = [1, 1, 2, 3, 3, 3, 4, 5, 6, 6];
    const b = [2, 3, 3, 1, 4, 4, 5, 5, 5, 7];
    expect(kendallVariance(10, tieSizes(a), tieSizes(b))).toBeCloseTo(114.2277778, 6);
  });

  it.each([
    { values: [1, 2], why: /too few/ },
    { values: [4, 4, 4, 4], why: /equal/ },
    { values: [1, null, null, 2], why: /too few/ },
    { values: [1, 2, 2, 4], pValueBy: 'exact' as const, why: /no ties/ },
    { values: [1, 5, 2, 4], correction: 'ar1' as const, why: /too few for an autocorrelation/ },
    { values: [1, 5, 2, 4], correction: 'hamed-rao' as const, why: /too few for an autocorrelation/ },
  ])('states why there is no test of $values', ({ why, ...input }) => {
    expect(reasonOrFail(mannKendall(input))).toMatch(why);
  });

  it('refuses NaN, and exact with a correction', () => {
    expect(() => mannKendall({ values: [1, Number.NaN, 3] })).toThrow(RangeError);
    expect(() => mannKendall({ values: [1, 2, 3], pValueBy: 'exact', correction: 'ar1' })).toThrow(
      RangeError,
    );
  });

  const series = fc.array(fc.integer({ min: -8, max: 8 }), { minLength: 3, maxLength: 40 });

  it('mirrors when the series is turned upside down or read backwards', () => {
    holds(
      fc.property(series, (values) => {
        const test = mannKendall({ values });
        const negated = mannKendall({ values: values.map((v) => -v) });
        const backwards = mannKendall({ values: values.toReversed() });
        expect(numbersIn(test).every(Number.isFinite)).toBe(true);
        if (!test.computable || !negated.computable || !backwards.computable) {
          expect(new Set(values).size).toBe(1);
          return;
        }
        expect(negated.s + test.s).toBe(0);
        expect(backwards.s + test.s).toBe(0);
        expect(negated.pIncreasing).toBeCloseTo(test.pDecreasing, 12);
        expect(negated.pValue).toBeCloseTo(test.pValue, 12);
      }),
    );
  });

  it('sees only the order of the values and skips missing ones', () => {
    holds(
      fc.property(series, (values) => {
        const stretched = values.flatMap((v) => [Math.exp(v / 3), null]);
        expect(mannKendall({ values: stretched })).toEqual(mannKendall({ values }));
      }),
    );
  });

  it('has exact probabilities that add up: P(S >= s) + P(S <= s) = 1 + P(S = s)', () => {
    const order = fc.shuffledSubarray([1, 2, 3, 4, 5, 6, 7, 8], { minLength: 8 });
    holds(
      fc.property(order, (values) => {
        const exact = computedOrFail(mannKendall({ values, pValueBy: 'exact' }));
        const normal = computedOrFail(mannKendall({ values }));
        const here = exact.pIncreasing - kendallUpperTail(exact.s + 2, 8);
        expect(exact.pIncreasing + exact.pDecreasing).toBeCloseTo(1 + here, 12);
        // The normal approximation with continuity correction is good to 0.01 at n = 8.
        expect(Math.abs(exact.pIncreasing - normal.pIncreasing)).toBeLessThan(0.01);
      }),
    );
  });
});

describe('Mann-Kendall under autocorrelation', () => {
  it('keeps near 5 % with the AR(1) variance where the plain test calls trends in a third of series', () => {
    const newSeries = autoregressiveSeries(normalStream(12), 0.6);
    let [plain, corrected] = [0, 0];
    const runs = 400;
    for (let run = 0; run < runs; run += 1) {
      const next = newSeries();
      const values = Array.from({ length: 80 }, next);
      if (computedOrFail(mannKendall({ values })).pValue <= 0.05) plain += 1;
      if (computedOrFail(mannKendall({ values, correction: 'ar1' })).pValue <= 0.05) corrected += 1;
    }
    expect(plain / runs).toBeGreaterThan(0.25);
    // The rate measured on 1000 series is 6 to 7 %; three standard errors of 400 are 3.7 points.
    expect(corrected / runs).toBeLessThan(0.11);
  });

  it('still finds a trend through autocorrelated noise', () => {
    const next = autoregressiveSeries(normalStream(3), 0.5)();
    const values = Array.from({ length: 120 }, (_, i) => 0.04 * i + next());
    const test = computedOrFail(mannKendall({ values, correction: 'ar1' }));
    expect(test.varianceFactor).toBeGreaterThan(1.5);
    expect(test.pIncreasing).toBeLessThan(0.001);
  });
});
