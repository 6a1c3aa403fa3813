import { describe, expect, it } from 'vitest';
import { poissonRegression } from '../../../pipeline/statistics/regression/poisson.ts';
import { expectNear, value } from '../computable.ts';
import { readReference } from '../reference/read-reference.ts';
import { doctors } from '../stratified/examples.ts';

const events = doctors.flatMap((s) => [s.exposedEvents, s.unexposedEvents]);
const exposure = doctors.flatMap((s) => [s.exposedTime, s.unexposedTime]);
/** Age group 0 to 4 and smoking, row by row. */
const rows = doctors.flatMap((_, age) => [
  { age, smoker: 1 },
  { age, smoker: 0 },
]);

interface Reference {
  clustered: {
    data: { clusters: number[]; covariates: number[][]; exposure: number[]; count: number[] };
    poisson: {
      estimate: number[];
      standard_error: number[];
      robust: number[];
      deviance: number;
      pearson: number;
      log_likelihood: number;
    };
  };
}

describe('poissonRegression on the British doctors', () => {
  it('age as factor: exp(smoker) 1.425519 (Stata manual, from memory), deviance 12.13', () => {
    const covariates = rows.map(({ age, smoker }) => [
      ...[1, 2, 3, 4].map((a) => (a === age ? 1 : 0)),
      smoker,
    ]);
    const fit = value(
      poissonRegression({
        events,
        exposure,
        covariates,
        names: ['45-54', '55-64', '65-74', '75-84', 'smoker'],
      }),
    );
    // R 4.2.2 glm.
    const expected = [
      [-7.9193257119, 0.1917618188],
      [1.4840070063, 0.1951033726],
      [2.6275051185, 0.1837272694],
      [3.3504927852, 0.1847991809],
      [3.7000964519, 0.1922195121],
      [0.3545356373, 0.1073741182],
    ];
    expected.forEach(([estimate, error], i) => {
      expectNear(fit.coefficients[i]!.estimate, estimate!, 1e-8);
      expectNear(fit.coefficients[i]!.standardError, error!, 1e-6);
    });
    expect(fit.coefficients[5]!.ratio).toBeCloseTo(1.425519, 6);
    expectNear(fit.deviance, 12.1323664, 1e-7);
    expectNear(fit.pearson, 11.1553332, 1e-7);
    expectNear(fit.logLikelihood, -33.60015344, 1e-8);
    expect(fit.residualDegreesOfFreedom).toBe(4);
  });
  it('Dobson, An Introduction to Generalized Linear Models, ch. 9: two decimals printed (from memory), the rest R 4.2.2', () => {
    const covariates = rows.map(({ age, smoker }) => [smoker, age + 1, (age + 1) ** 2, smoker * (age + 1)]);
    const fit = value(poissonRegression({ events, exposure, covariates }));
    expectNear(fit.coefficients[0]!.estimate, -10.7917625473, 1e-8);
    const expected = [
      [1.441, 0.372, 1.4409718798, 0.3721988607],
      [2.376, 0.208, 2.376478324, 0.2079485971],
      [-0.198, 0.027, -0.1976765428, 0.0273674247],
      [-0.308, 0.097, -0.3075480857, 0.097041143],
    ];
    expected.forEach(([estimate, error, estimateR, errorR], i) => {
      const found = fit.coefficients[i + 1]!;
      expect(found.estimate).toBeCloseTo(estimate!, 3);
      expect(found.standardError).toBeCloseTo(error!, 3);
      expectNear(found.estimate, estimateR!, 1e-8);
      expectNear(found.standardError, errorR!, 1e-6);
    });
    expectNear(fit.deviance, 1.635370131, 1e-7);
    expectNear(fit.pearson, 1.550251161, 1e-7);
    expect(fit.residualDegreesOfFreedom).toBe(5);
  });
});

it('clusters: R 4.2.2 glm and sandwich 3.0-2 vcovCL (reference/regression.R)', () => {
  const { data, poisson } = readReference<Reference>('regression')[0]!.clustered;
  const fit = value(
    poissonRegression({
      events: data.count,
      exposure: data.exposure,
      covariates: data.covariates,
      clusters: data.clusters,
    }),
  );
  const robust = value(fit.robust!);
  poisson.estimate.forEach((estimate, i) => {
    expectNear(fit.coefficients[i]!.estimate, estimate, 1e-9);
    expectNear(fit.coefficients[i]!.standardError, poisson.standard_error[i]!, 1e-8);
    expectNear(robust.coefficients[i]!.standardError, poisson.robust[i]!, 1e-8);
  });
  expectNear(fit.deviance, poisson.deviance, 1e-9);
  expectNear(fit.pearson, poisson.pearson, 1e-9);
  expectNear(fit.logLikelihood, poisson.log_likelihood, 1e-9);
});

it('two groups by hand: the ratio of rates, error sqrt(1/a + 1/b); the unit of time moves the constant alone', () => {
  for (const unit of [1, 1e-6, 1e6]) {
    const fit = value(
      poissonRegression({ events: [41, 15], exposure: [28010 * unit, 19017 * unit], covariates: [[1], [0]] }),
    );
    expectNear(fit.coefficients[1]!.ratio, 1.855758658, 1e-9);
    expectNear(fit.coefficients[1]!.standardError, Math.sqrt(1 / 41 + 1 / 15), 1e-9);
    expectNear(fit.coefficients[0]!.ratio, 15 / (19017 * unit), 1e-9);
  }
});

describe('edges', () => {
  it('a level without any event has no finite estimate', () => {
    expect(
      poissonRegression({
        events: [0, 0, 3, 5],
        exposure: [10, 20, 10, 30],
        covariates: [[1], [1], [0], [0]],
      }),
    ).toMatchObject({
      computable: false,
      reason: expect.stringContaining('no finite estimate'),
    });
  });
  it('no event, collinear, rows without exposure', () => {
    expect(poissonRegression({ events: [0, 0], exposure: [1, 2], covariates: [[0], [1]] })).toMatchObject({
      computable: false,
      reason: 'There are no events.',
    });
    expect(
      poissonRegression({
        events: [1, 2, 0],
        exposure: [1, 2, 0],
        covariates: [[3], [3], [5]],
        names: ['x'],
      }),
    ).toMatchObject({
      computable: false,
      reason: 'x is a linear combination of constant.',
    });
  });
  it('refuses what cannot be', () => {
    expect(() => poissonRegression({ events: [1], exposure: [0], covariates: [[1]] })).toThrow(
      '1 events in exposure 0',
    );
    expect(() => poissonRegression({ events: [1.5], exposure: [2], covariates: [[1]] })).toThrow(RangeError);
  });
});
