import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conditionalLogistic } from '../../../pipeline/statistics/regression/conditional-logistic.ts';
import {
  conditionalStratum,
  stratumLikelihood,
} from '../../../pipeline/statistics/regression/conditional-stratum.ts';
import { exactCommonOddsRatio } from '../../../pipeline/statistics/stratified/exact-common-odds-ratio.ts';
import { mantelHaenszelOddsRatio } from '../../../pipeline/statistics/stratified/mantel-haenszel-odds-ratio.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';
import { readReference } from '../reference/read-reference.ts';
import { infert } from './examples.ts';

interface Fit {
  data: { cases: number[]; strata: (string | number)[]; covariates: number[][]; clusters: number[] };
  estimate: number[];
  standard_error: number[];
  log_likelihood: number;
}
interface Reference {
  many: Fit & { null_log_likelihood: number; score: number; wald: number; likelihood_ratio: number };
  enumerated: Fit & { robust: number[]; clusters: number };
}

describe('conditionalLogistic', () => {
  it('infert, one case per set: printed 1.9859 (0.3524) and 1.4090 (0.3607) (R help page of clogit, from memory)', () => {
    const fit = value(conditionalLogistic(infert));
    const [spontaneous, induced] = fit.coefficients;
    expect(spontaneous!.estimate).toBeCloseTo(1.9859, 4);
    expect(induced!.estimate).toBeCloseTo(1.409, 4);
    // R 4.2.2, survival 3.5-3.
    expectNear(spontaneous!.estimate, 1.985875517, 1e-9);
    expectNear(spontaneous!.ratio, 7.285423103, 1e-9);
    expectNear(spontaneous!.standardError, 0.3524435398, 1e-8);
    expectNear(spontaneous!.statistic, 5.634591906, 1e-8);
    expectNear(induced!.estimate, 1.409011632, 1e-9);
    expectNear(induced!.ratio, 4.091909092, 1e-9);
    expectNear(induced!.standardError, 0.3607124362, 1e-8);
    expectNear(induced!.statistic, 3.906190889, 1e-8);
    expectNear(fit.nullLogLikelihood, -90.77935485, 1e-9);
    expectNear(fit.logLikelihood, -64.20223692, 1e-9);
    expect(fit.likelihoodRatio.chiSquare).toBeCloseTo(53.15, 2);
    expect(fit).toMatchObject({ strataUsed: 83, cases: 83 });
  });
  it('infert by education, up to 60 cases per stratum: survival 3.5-3, exact (reference/regression.R)', () => {
    const { many } = readReference<Reference>('regression')[0]!;
    const fit = value(conditionalLogistic(many.data));
    many.estimate.forEach((estimate, i) => {
      expectNear(fit.coefficients[i]!.estimate, estimate, 1e-7);
      expectNear(fit.coefficients[i]!.standardError, many.standard_error[i]!, 1e-7);
    });
    expectNear(fit.logLikelihood, many.log_likelihood, 1e-10);
    expectNear(fit.nullLogLikelihood, many.null_log_likelihood, 1e-10);
    expectNear(fit.score.chiSquare, many.score, 1e-8);
    expectNear(fit.wald.chiSquare, many.wald, 1e-2); // summary.coxph rounds the Wald test to two decimals
    expectNear(fit.likelihoodRatio.chiSquare, many.likelihood_ratio, 1e-8);
  });
  it('all sets enumerated, with cluster-robust errors (R 4.2.2, reference/regression.R)', () => {
    const { enumerated } = readReference<Reference>('regression')[0]!;
    const fit = value(conditionalLogistic(enumerated.data));
    const robust = value(fit.robust!);
    enumerated.estimate.forEach((estimate, i) => {
      expectNear(fit.coefficients[i]!.estimate, estimate, 1e-9);
      expectNear(fit.coefficients[i]!.standardError, enumerated.standard_error[i]!, 1e-9);
      expectNear(robust.coefficients[i]!.standardError, enumerated.robust[i]!, 1e-9);
    });
    expectNear(fit.logLikelihood, enumerated.log_likelihood, 1e-11);
    expect(robust.clusters).toBe(enumerated.clusters);
  });
  it('is the same to the last digit whether rows share their list of covariates or not', () => {
    const lists = [
      [0, 1],
      [1, 0],
      [1, 1],
    ];
    const covariates = Array.from({ length: 60 }, (_, i) => lists[(i * i + (i >> 3)) % 3]!);
    const cases = covariates.map((_, i) => (i % 7 === 0 || i % 11 === 3 ? 1 : 0));
    const strata = covariates.map((_, i) => i % 4);
    const shared = conditionalLogistic({ covariates, cases, strata });
    expect(shared).toEqual(conditionalLogistic({ covariates: covariates.map((x) => [...x]), cases, strata }));
    expect(shared.computable).toBe(true);
  });
  it('two cases among four rows, by hand', () => {
    // x = 0, 1, 2, 5, cases are the last two: likelihood e^7b over the six pairs e^1b, e^2b, e^5b, e^3b,
    // e^6b, e^7b.
    const stratum = conditionalStratum([[0], [1], [2], [5]], [false, false, true, true]);
    for (const b of [-1.3, 0, 0.4]) {
      const sums = [1, 2, 5, 3, 6, 7];
      const total = sums.reduce((t, s) => t + Math.exp(b * s), 0);
      const mean = sums.reduce((t, s) => t + s * Math.exp(b * s), 0) / total;
      const square = sums.reduce((t, s) => t + s * s * Math.exp(b * s), 0) / total;
      const found = stratumLikelihood(stratum, [b]);
      expectNear(found.logLikelihood, 7 * b - Math.log(total), 1e-13);
      expectNear(found.score[0]!, 7 - mean, 1e-12);
      expectNear(found.information[0]![0]!, square - mean ** 2, 1e-11);
    }
  });
});

/** Strata of 0/1 exposure as rows. */
function rowsOf(
  tables: { exposedEvents: number; exposedTotal: number; unexposedEvents: number; unexposedTotal: number }[],
) {
  const rows = tables.flatMap((t, stratum) => [
    ...Array.from({ length: t.exposedTotal }, (_, i) => ({ stratum, x: 1, y: i < t.exposedEvents ? 1 : 0 })),
    ...Array.from({ length: t.unexposedTotal }, (_, i) => ({
      stratum,
      x: 0,
      y: i < t.unexposedEvents ? 1 : 0,
    })),
  ]);
  return {
    cases: rows.map((r) => r.y),
    strata: rows.map((r) => r.stratum),
    covariates: rows.map((r) => [r.x]),
  };
}

describe('properties', () => {
  const table = fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 })).chain(([x, y]) =>
    fc.record({
      exposedEvents: fc.nat(x),
      exposedTotal: fc.constant(x),
      unexposedEvents: fc.nat(y),
      unexposedTotal: fc.constant(y),
    }),
  );
  it('with one 0/1 covariate: the conditional ratio, and the Mantel-Haenszel test as score test', () => {
    holds(
      fc.property(fc.array(table, { minLength: 1, maxLength: 4 }), (tables) => {
        const exact = exactCommonOddsRatio(tables);
        const fit = conditionalLogistic(rowsOf(tables));
        if (!exact.computable) {
          expect(fit.computable).toBe(false);
          return;
        }
        if (exact.estimate === 0 || exact.estimate === Number.POSITIVE_INFINITY) {
          expect(fit).toMatchObject({
            computable: false,
            reason: expect.stringContaining('no finite estimate'),
          });
          return;
        }
        expectNear(value(fit).coefficients[0]!.ratio, exact.estimate, 1e-7);
        expect(value(fit).score.chiSquare).toBeCloseTo(value(mantelHaenszelOddsRatio(tables)).chiSquare, 8);
      }),
    );
  });
  it('a number added to a covariate within each stratum changes nothing', () => {
    const base = value(conditionalLogistic(infert));
    const moved = value(
      conditionalLogistic({
        ...infert,
        covariates: infert.covariates.map(([a, b], i) => [a! + 1000 * infert.strata[i]!, b!]),
      }),
    );
    expectNear(moved.coefficients[0]!.estimate, base.coefficients[0]!.estimate, 1e-8);
    expectNear(moved.logLikelihood, base.logLikelihood, 1e-9);
  });
  it('10^218 possible sets: 365 cases of 730 rows do not overflow', () => {
    const n = 730;
    const cases = Array.from({ length: n }, (_, i) => (i * 7 + (i % 5)) % 2);
    const covariates = cases.map((y, i) => [((i * 13) % 29) / 29 + 0.2 * y]);
    const fit = value(conditionalLogistic({ cases, strata: cases.map(() => 0), covariates }));
    expect(Number.isFinite(fit.logLikelihood)).toBe(true);
    // R 4.2.2: lchoose(730, 365).
    expectNear(fit.nullLogLikelihood, -502.4747857234, 1e-12);
  });
});

describe('edges', () => {
  it('strata without cases or non-cases are left out', () => {
    const fit = value(
      conditionalLogistic({
        cases: [...infert.cases, 1, 0, 0],
        strata: [...infert.strata, 900, 901, 901],
        covariates: [...infert.covariates, [1, 1], [0, 1], [2, 2]],
      }),
    );
    expect(fit).toMatchObject({ strataUsed: 83, strataGiven: 85 });
    expectNear(fit.coefficients[0]!.estimate, 1.985875517, 1e-9);
  });
  it('says why not', () => {
    expect(
      conditionalLogistic({ cases: [1, 1, 0], strata: [1, 1, 2], covariates: [[0], [1], [1]] }),
    ).toMatchObject({ computable: false, reason: 'No stratum has both cases and non-cases.' });
    expect(
      conditionalLogistic({
        cases: [1, 0, 1, 0],
        strata: [1, 1, 2, 2],
        covariates: [[0.1], [0.1], [0.7], [0.7]],
        names: ['age'],
      }),
    ).toMatchObject({
      computable: false,
      reason: 'Within the strata: age does not vary.',
    });
    expect(
      conditionalLogistic({ cases: [1, 0, 1, 0], strata: [1, 1, 2, 2], covariates: [[2], [1], [5], [3]] }),
    ).toMatchObject({
      computable: false,
      reason: expect.stringContaining('no finite estimate'),
    });
  });
  it('refuses what cannot be', () => {
    expect(() => conditionalLogistic({ cases: [2, 0], strata: [1, 1], covariates: [[0], [1]] })).toThrow(
      '0 or 1',
    );
    expect(() => conditionalLogistic({ cases: [1, 0], strata: [1], covariates: [[0], [1]] })).toThrow(
      '2 entries',
    );
    expect(() =>
      conditionalLogistic({ cases: [1, 0], strata: [1, 1], covariates: [[0], [1]], clusters: ['a', 'b'] }),
    ).toThrow('one cluster');
  });
});
