import { describe, expect, it } from 'vitest';
import { conditionalPoisson } from '../../../pipeline/statistics/regression/conditional-poisson.ts';
import { expectNear, value } from '../computable.ts';
import { readReference } from '../reference/read-reference.ts';
import { doctors } from '../stratified/examples.ts';

interface Reference {
  clustered: {
    data: { clusters: number[]; covariates: number[][]; exposure: number[]; count: number[] };
    conditional_poisson: { estimate: number[]; standard_error: number[]; robust: number[] };
  };
}

describe('conditionalPoisson', () => {
  it('British doctors within age groups: exp(smoker) 1.425519 (Stata manual, from memory), the rest R 4.2.2 glm', () => {
    const fit = value(
      conditionalPoisson({
        events: doctors.flatMap((of) => [of.exposedEvents, of.unexposedEvents]),
        exposure: doctors.flatMap((of) => [of.exposedTime, of.unexposedTime]),
        covariates: doctors.flatMap(() => [[1], [0]]),
        names: ['smoker'],
        strata: doctors.flatMap((_, age) => [age, age]),
      }),
    );
    const [smoker] = fit.coefficients;
    expect(smoker!.ratio).toBeCloseTo(1.425519, 6);
    expectNear(smoker!.estimate, 0.3545356373, 1e-8);
    expectNear(smoker!.standardError, 0.1073741182, 1e-6);
  });

  it("R's warpbreaks (Tippett 1950): wool within tension, R 4.2.2 glm(breaks ~ wool + tension, poisson)", () => {
    const breaks = [
      26, 30, 54, 25, 70, 52, 51, 26, 67, 18, 21, 29, 17, 12, 18, 35, 30, 36, 36, 21, 24, 18, 10, 43, 28, 15,
      26, 27, 14, 29, 19, 29, 31, 41, 20, 44, 42, 26, 19, 16, 39, 28, 21, 39, 29, 20, 21, 24, 17, 13, 15, 15,
      16, 28,
    ];
    const fit = value(
      conditionalPoisson({
        events: breaks,
        exposure: breaks.map(() => 1),
        covariates: breaks.map((_, i) => [i < 27 ? 0 : 1]),
        strata: breaks.map((_, i) => 'LMH'[Math.floor(i / 9) % 3]!),
      }),
    );
    expectNear(fit.coefficients[0]!.estimate, -0.2059884426, 1e-8);
    // As printed after R's default of 1e-8 for the deviance.
    expectNear(fit.coefficients[0]!.standardError, 0.05157116865, 1e-5);
  });

  it('clusters of several strata: R 4.2.2 glm with an indicator a stratum (reference/regression.R)', () => {
    const { data, conditional_poisson: of } = readReference<Reference>('regression')[0]!.clustered;
    const fit = value(
      conditionalPoisson({
        events: data.count,
        exposure: data.exposure,
        covariates: data.covariates,
        strata: data.count.map((_, i) => Math.floor(i / 6)),
        clusters: data.clusters,
      }),
    );
    const robust = value(fit.robust!);
    for (const [i, estimate] of of.estimate.entries()) {
      expectNear(fit.coefficients[i]!.estimate, estimate, 1e-9);
      expectNear(fit.coefficients[i]!.standardError, of.standard_error[i]!, 1e-8);
      expectNear(robust.coefficients[i]!.standardError, of.robust[i]!, 1e-8);
    }
  });

  it('two groups by hand: the ratio of rates, error sqrt(1/a + 1/b), whatever the unit of time', () => {
    for (const unit of [1, 1e-6, 1e6]) {
      const fit = value(
        conditionalPoisson({
          events: [41, 15],
          exposure: [28010 * unit, 19017 * unit],
          covariates: [[1], [0]],
          strata: [1, 1],
        }),
      );
      expectNear(fit.coefficients[0]!.ratio, 1.855758658, 1e-9);
      expectNear(fit.coefficients[0]!.standardError, Math.sqrt(1 / 41 + 1 / 15), 1e-9);
    }
  });

  it('thousands of strata', () => {
    // In each of 20,000 strata the rates are as 2 to 1, so the ratio is 2, and the information 3 * 2/3 * 1/3 a stratum.
    const strata = Array.from({ length: 40_000 }, (_, i) => i >> 1);
    const fit = value(
      conditionalPoisson({
        events: strata.map((_, i) => (i % 2 === 0 ? 2 : 1)),
        exposure: strata.map((stratum) => 1 + (stratum % 7)),
        covariates: strata.map((_, i) => [i % 2 === 0 ? 1 : 0]),
        strata,
      }),
    );
    expectNear(fit.coefficients[0]!.ratio, 2, 1e-9);
    expectNear(fit.coefficients[0]!.standardError, Math.sqrt(1 / (20_000 * 3 * (2 / 9))), 1e-9);
  });
});

describe('edges of conditionalPoisson', () => {
  const strata = [1, 1, 1, 1];

  it('a covariate without any event has no finite estimate', () => {
    expect(
      conditionalPoisson({
        events: [0, 0, 3, 5],
        exposure: [10, 20, 10, 30],
        covariates: [[1], [1], [0], [0]],
        strata,
      }),
    ).toMatchObject({ computable: false, reason: expect.stringContaining('no finite estimate') });
  });

  it('no event, and a covariate that varies between strata alone', () => {
    const covariates = [[0], [1], [0], [1]];
    expect(
      conditionalPoisson({ events: [0, 0, 0, 0], exposure: [1, 1, 1, 1], covariates, strata }),
    ).toMatchObject({ computable: false, reason: 'There are no events.' });
    expect(
      conditionalPoisson({
        events: [1, 2, 3, 0],
        exposure: [1, 1, 1, 0],
        covariates: [[3], [3], [5], [9]],
        names: ['x'],
        strata: [1, 1, 2, 2],
      }),
    ).toMatchObject({ computable: false, reason: expect.stringContaining('Within the strata: x') });
  });

  it('refuses what cannot be', () => {
    const covariates = [[1], [0]];
    expect(() =>
      conditionalPoisson({ events: [1, 0], exposure: [0, 1], covariates, strata: [1, 1] }),
    ).toThrow('1 events in exposure 0');
    expect(() =>
      conditionalPoisson({ events: [1.5, 0], exposure: [2, 1], covariates, strata: [1, 1] }),
    ).toThrow(RangeError);
    expect(() => conditionalPoisson({ events: [1, 0], exposure: [2, 1], covariates, strata: [1] })).toThrow(
      'strata must have 2 entries',
    );
    expect(() =>
      conditionalPoisson({
        events: [1, 0],
        exposure: [2, 1],
        covariates,
        strata: [1, 1],
        clusters: ['a', 'b'],
      }),
    ).toThrow('must lie in one cluster');
  });
});
