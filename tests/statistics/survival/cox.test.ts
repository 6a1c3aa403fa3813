import { describe, expect, it } from 'vitest';
import { conditionalLogistic } from '../../../pipeline/statistics/regression/conditional-logistic.ts';
import { cox } from '../../../pipeline/statistics/survival/cox.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';
import { lateEntries, mercaptopurine, placebo } from './remission.ts';

const both = {
  durations: [...mercaptopurine.durations, ...placebo.durations],
  observed: [...mercaptopurine.observed, ...placebo.observed],
  covariates: { placebo: [...Array(21).fill(0), ...Array(21).fill(1)] as number[] },
};

describe('Exact ties', () => {
  // The exact partial likelihood is conditional logistic regression over the risk sets. Published 1.628 (0.433) (from memory); more digits by R 4.2.2,
  // survival 3.5-3: 1.628243952 (0.4331312965), log-likelihood -82.66927925 and -74.54310116, tests 16.25235618, 16.79294099, 14.13187595.
  it('come from conditional logistic regression over the risk sets', () => {
    const times = [...new Set(both.durations.filter((_, i) => both.observed[i] === 1))];
    const rows = times.flatMap((time) =>
      both.durations.flatMap((duration, i) =>
        duration >= time
          ? [
              {
                time,
                placebo: both.covariates.placebo[i]!,
                case: duration === time && both.observed[i] === 1 ? 1 : 0,
              },
            ]
          : [],
      ),
    );
    const fit = computedOrFail(
      conditionalLogistic({
        names: ['placebo'],
        covariates: rows.map((row) => [row.placebo]),
        cases: rows.map((row) => row.case),
        strata: rows.map((row) => row.time),
      }),
    );
    expect(fit.coefficients[0]!.estimate).toBeCloseTo(1.628243952, 8);
    expect(fit.coefficients[0]!.standardError).toBeCloseTo(0.4331312965, 8);
    expect(fit.nullLogLikelihood).toBeCloseTo(-82.66927925, 7);
    expect(fit.logLikelihood).toBeCloseTo(-74.54310116, 7);
    expect(fit.likelihoodRatio.chiSquare).toBeCloseTo(16.25235618, 7);
    // The exact score statistic is the log-rank chi-square.
    expect(fit.score.chiSquare).toBeCloseTo(16.79294099, 7);
    expect(fit.wald.chiSquare).toBeCloseTo(14.13187595, 7);
  });
});

describe('Cox regression on remission times', () => {
  // Published (from memory): Breslow 1.509 (0.410), log-likelihood -86.380 (Kleinbaum and Klein); Efron 1.572
  // (0.412). More digits by reference/survival.R, R 4.2.2, survival 3.5-3.
  it.each([
    [
      'breslow',
      1.509,
      1.5091914126,
      0.4095644064,
      -93.9850504782,
      -86.3796220711,
      15.2108568142,
      15.930539564,
      13.57826365,
    ],
    [
      'efron',
      1.572,
      1.5721251488,
      0.4123967177,
      -93.1842699968,
      -85.0084245774,
      16.351690839,
      17.2465367957,
      14.5326170634,
    ],
  ] as const)('%s ties', (ties, printed, estimate, error, atNull, fitted, ratio, score, wald) => {
    const fit = computedOrFail(cox({ ...both, ties }));
    const coefficient = fit.coefficients[0]!;
    expect(Math.abs(coefficient.estimate - printed)).toBeLessThan(0.00051);
    expect(coefficient.estimate).toBeCloseTo(estimate, 8);
    expect(coefficient.standardError).toBeCloseTo(error, 8);
    expect(fit.logLikelihood.null).toBeCloseTo(atNull, 7);
    expect(fit.logLikelihood.fitted).toBeCloseTo(fitted, 7);
    expect(fit.likelihoodRatio.statistic).toBeCloseTo(ratio, 7);
    expect(fit.score.statistic).toBeCloseTo(score, 7);
    expect(fit.wald.statistic).toBeCloseTo(wald, 7);
  });

  it('has the hazard ratio and interval of R', () => {
    const { hazardRatio, interval } = computedOrFail(cox(both)).coefficients[0]!;
    expect(hazardRatio).toBeCloseTo(4.816873898, 7);
    expect(interval.low).toBeCloseTo(2.146508213, 7);
    expect(interval.high).toBeCloseTo(10.80931068, 6);
  });

  it('turns round with its covariate and stretches with its unit', () => {
    const fit = computedOrFail(cox(both));
    const turned = computedOrFail(
      cox({ ...both, covariates: { mp: both.covariates.placebo.map((x) => 10 * (1 - x)) } }),
    );
    expect(turned.coefficients[0]!.estimate).toBeCloseTo(-fit.coefficients[0]!.estimate / 10, 9);
    expect(turned.logLikelihood.fitted).toBeCloseTo(fit.logLikelihood.fitted, 9);
  });
});

describe('Cox regression with late entries, ties, strata and two covariates', () => {
  const x = [1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 1, 0, 0, 0, 1, 1];
  const y = [2.1, 0.3, 1.7, 3.2, 0.4, 2.2, 1.1, 0.9, 2.8, 1.5, 0.2, 2.7, 1.9, 0.8, 1.2, 2.4];

  // reference/survival.R, R 4.2.2, survival 3.5-3.
  it('agrees with R', () => {
    const fit = computedOrFail(
      cox({ ...lateEntries, covariates: { x, y }, strata: x.map((_, i) => 'ab'[i % 2]!) }),
    );
    expect(fit.coefficients.map((c) => c.estimate)).toEqual([
      expect.closeTo(0.4068452201, 8),
      expect.closeTo(0.03861948498, 8),
    ]);
    expect(fit.coefficients.map((c) => c.standardError)).toEqual([
      expect.closeTo(0.9718256698, 8),
      expect.closeTo(0.3521414305, 8),
    ]);
    expect(fit.logLikelihood.null).toBeCloseTo(-15.679776718, 8);
    expect(fit.logLikelihood.fitted).toBeCloseTo(-15.579748571, 8);
    expect(fit.score.statistic).toBeCloseTo(0.1939171455, 8);
    expect(fit.wald.statistic).toBeCloseTo(0.1925015518, 8);
  });

  it('states covariates that say the same', () => {
    const outcome = cox({ ...lateEntries, covariates: { x, twice: x.map((v) => 2 * v + 1) } });
    expect(reasonOrFail(outcome)).toMatch(/do not vary apart/);
  });
});

describe('Cox regression at the edges', () => {
  it('states no event, a constant covariate and perfect separation', () => {
    const data = { durations: [1, 2, 3, 4], covariates: { x: [1, 1, 0, 0] } };
    expect(reasonOrFail(cox({ ...data, observed: [0, 0, 0, 0] }))).toMatch(/No event/);
    expect(reasonOrFail(cox({ ...data, observed: [1, 1, 0, 0] }))).toMatch(/without bound/);
    expect(reasonOrFail(cox({ ...data, observed: [1, 1, 1, 0], covariates: { x: [2, 2, 2, 2] } }))).toMatch(
      /same for all/,
    );
  });

  it('refuses impossible input', () => {
    const data = { durations: [1, 2], observed: [1, 1] as (0 | 1)[] };
    expect(() => cox({ ...data, covariates: {} })).toThrow(RangeError);
    expect(() => cox({ ...data, covariates: { x: [1] } })).toThrow(RangeError);
    expect(() => cox({ ...data, covariates: { x: [1, Number.NaN] } })).toThrow(RangeError);
    expect(() => cox({ ...data, covariates: { x: [1, 2] }, strata: ['a'] })).toThrow(RangeError);
  });
});
