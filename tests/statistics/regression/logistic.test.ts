import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logisticRegression } from '../../../pipeline/statistics/regression/logistic.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';
import { readReference } from '../reference/read-reference.ts';
import { infert, spector } from './examples.ts';

interface Reference {
  clustered: {
    data: { clusters: number[]; covariates: number[][]; trials: number[]; events: number[] };
    logistic: { estimate: number[]; standard_error: number[]; robust: number[] };
  };
}

describe('logisticRegression', () => {
  it('Spector & Mazzeo, as in Greene, Table 21.1', () => {
    const fit = value(logisticRegression(spector));
    // Printed (from memory): -13.021 (4.931), 2.826 (1.263), 0.095 (0.142), 2.379 (1.065); more digits from R
    // 4.2.2 glm.
    const expected = [
      ['constant', -13.021, 4.931, -13.02134685812, 4.931324213],
      ['GPA', 2.826, 1.263, 2.82611259489, 1.2629410755],
      ['TUCE', 0.095, 0.142, 0.09515766132, 0.1415542057],
      ['PSI', 2.379, 1.065, 2.37868765509, 1.0645642544],
    ] as const;
    expected.forEach(([name, estimate, error, estimateR, errorR], i) => {
      const found = fit.coefficients[i]!;
      expect(found.name).toBe(name);
      expect(Math.abs(found.estimate - estimate)).toBeLessThanOrEqual(0.0005);
      expect(Math.abs(found.standardError - error)).toBeLessThanOrEqual(0.0005);
      expectNear(found.estimate, estimateR, 1e-9);
      // glm takes errors from its last step but one: 1e-6.
      expectNear(found.standardError, errorR, 1e-6);
    });
    expectNear(fit.logLikelihood, -12.88963422, 1e-9);
    expectNear(-2 * fit.nullLogLikelihood, 41.18345939, 1e-9);
    expectNear(fit.likelihoodRatio.chiSquare, 15.40419095, 1e-8); // printed 15.40
    expect(fit.likelihoodRatio.degreesOfFreedom).toBe(3);
  });
  it('grouped trials with clusters: R 4.2.2 glm and sandwich 3.0-2 vcovCL (reference/regression.R)', () => {
    const { data, logistic } = readReference<Reference>('regression')[0]!.clustered;
    const fit = value(logisticRegression(data));
    const robust = value(fit.robust!);
    expect(robust.clusters).toBe(14);
    logistic.estimate.forEach((estimate, i) => {
      expectNear(fit.coefficients[i]!.estimate, estimate, 1e-9);
      expectNear(fit.coefficients[i]!.standardError, logistic.standard_error[i]!, 1e-8);
      expectNear(robust.coefficients[i]!.standardError, logistic.robust[i]!, 1e-8);
    });
  });
  it('one covariate of 0 and 1: the sample odds ratio and its Woolf error, by hand', () => {
    const fit = value(logisticRegression({ events: [12, 5], trials: [42, 46], covariates: [[1], [0]] }));
    expectNear(fit.coefficients[1]!.ratio, (12 * 41) / (30 * 5), 1e-11);
    expectNear(fit.coefficients[1]!.standardError, Math.sqrt(1 / 12 + 1 / 30 + 1 / 5 + 1 / 41), 1e-9);
  });
  it('matched sets wrongly fitted without strata give other numbers (R 4.2.2: 1.197205, 0.418129)', () => {
    const fit = value(logisticRegression({ events: infert.cases, covariates: infert.covariates }));
    expectNear(fit.coefficients[1]!.estimate, 1.197205035, 1e-8);
    expectNear(fit.coefficients[2]!.estimate, 0.418129395, 1e-8);
  });
  it('a covariate in another unit, and rows in another order, change nothing else', () => {
    const base = value(logisticRegression(spector));
    holds(
      fc.property(
        fc.constantFrom(1e-4, 0.5, 1e4),
        fc.shuffledSubarray([...spector.events.keys()], { minLength: 32 }),
        (unit, order) => {
          const fit = value(
            logisticRegression({
              events: order.map((i) => spector.events[i]!),
              covariates: order.map((i) => spector.covariates[i]!.map((x, j) => (j === 0 ? x * unit : x))),
            }),
          );
          expectNear(fit.coefficients[1]!.estimate * unit, base.coefficients[1]!.estimate, 1e-8);
          expectNear(fit.coefficients[3]!.standardError, base.coefficients[3]!.standardError, 1e-8);
          expectNear(fit.coefficients[1]!.pValue, base.coefficients[1]!.pValue, 1e-8);
        },
      ),
      50,
    );
  });
});

describe('edges', () => {
  const x = [[0], [1], [2], [3], [4], [5]];
  it('complete and quasi-complete separation are named', () => {
    for (const events of [
      [0, 0, 0, 1, 1, 1],
      [1, 1, 0, 0, 0, 0],
    ]) {
      expect(logisticRegression({ events, covariates: x })).toMatchObject({
        computable: false,
        reason: expect.stringContaining('separate'),
      });
    }
    // No event among the exposed, both among the others.
    expect(
      logisticRegression({ events: [0, 0, 1, 0, 1, 1], covariates: [[1], [1], [0], [0], [0], [0]] }),
    ).toMatchObject({
      computable: false,
      reason: expect.stringContaining('separate'),
    });
  });
  it('nearly separated data still have their estimate', () => {
    expect(logisticRegression({ events: [0, 0, 1, 0, 1, 1], covariates: x }).computable).toBe(true);
  });
  it('random designs: separation is found exactly where a search over directions finds it', () => {
    holds(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: 0, max: 1 })), {
          minLength: 4,
          maxLength: 9,
        }),
        (rows) => {
          const fit = logisticRegression({
            events: rows.map((r) => r[1]),
            covariates: rows.map((r) => [r[0]]),
          });
          // One covariate: separated if all events lie at or beyond all non-events, on either side.
          const [ones, zeros] = [1, 0].map((k) => rows.filter((r) => r[1] === k).map((r) => r[0]));
          if (ones!.length === 0 || zeros!.length === 0 || new Set(rows.map((r) => r[0])).size === 1) return;
          const separated =
            Math.min(...ones!) >= Math.max(...zeros!) || Math.max(...ones!) <= Math.min(...zeros!);
          expect(fit.computable).toBe(!separated);
          if (!fit.computable) expect(fit.reason).toContain('separate');
        },
      ),
      500,
    );
  });
  it('collinear columns are named', () => {
    const events = [0, 1, 0, 1, 1, 0];
    expect(
      logisticRegression({ events, covariates: x.map(([a]) => [a!, 2 * a! + 1]), names: ['age', 'twice'] }),
    ).toMatchObject({
      computable: false,
      reason: 'twice is a linear combination of constant, age.',
    });
    expect(logisticRegression({ events, covariates: x.map(() => [7]), names: ['same'] })).toMatchObject({
      computable: false,
      reason: 'same is a linear combination of constant.',
    });
  });
  it('no event, nothing but events, one cluster', () => {
    expect(logisticRegression({ events: [0, 0], covariates: [[0], [1]] })).toMatchObject({
      computable: false,
    });
    expect(logisticRegression({ events: [1, 1], covariates: [[0], [1]] })).toMatchObject({
      computable: false,
    });
    const fit = value(logisticRegression({ ...spector, clusters: spector.events.map(() => 'a') }));
    expect(fit.robust).toMatchObject({ computable: false, reason: 'There is only one cluster.' });
  });
  it('refuses what cannot be', () => {
    expect(() => logisticRegression({ events: [2], covariates: [[0]] })).toThrow('2 events in 1 trials');
    expect(() => logisticRegression({ events: [1, 0], covariates: [[0]] })).toThrow('2 rows');
    expect(() => logisticRegression({ events: [1, 0], covariates: [[0], [Number.NaN]] })).toThrow('finite');
  });
});
