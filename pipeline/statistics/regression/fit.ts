import { computed, notComputable, type Outcome } from '../result.ts';
import { type Likelihood, maximise } from './maximise.ts';
import {
  chiSquareTest,
  coefficientTable,
  type RegressionFit,
  robustCoefficients,
  waldTest,
} from './regression-result.ts';
import { dot, invertSymmetric, multiply } from './solve.ts';

export interface FitRequest {
  method: string;
  likelihood: Likelihood;
  names: readonly string[];
  start: readonly number[];
  /** Coefficients of the model without covariates. */
  nullBeta: readonly number[];
  /** Coefficients before this one (a constant) are not tested. */
  firstTested: number;
  level: number;
  /** Score vectors at given coefficients, with the cluster of each. */
  robust: { scores(beta: readonly number[]): number[][]; clusters: ArrayLike<string | number> } | undefined;
}

export const MONOTONE =
  'The covariates separate events from non-events: at least one coefficient has no finite estimate (monotone likelihood).';

/** Fits a concave likelihood and puts together coefficients, global tests and robust errors. */
export function fitRegression(request: FitRequest): Outcome<RegressionFit> {
  const { method, likelihood, names, start, nullBeta, firstTested, level } = request;
  const maximum = maximise(likelihood, start);
  if (maximum.state === 'monotone') return notComputable(method, MONOTONE);
  if (maximum.state === 'not converged') {
    return notComputable(method, 'The search for the maximum of the likelihood did not converge.');
  }
  const { beta, covariance, point, iterations } = maximum;
  const atNull = likelihood.at(nullBeta);
  const tested = beta.length - firstTested;
  const nullCovariance = invertSymmetric(atNull.information);
  if (nullCovariance === undefined) {
    return notComputable(method, 'The information without covariates is singular.');
  }
  return computed(method, {
    coefficients: coefficientTable(names, beta, covariance, level),
    covariance,
    logLikelihood: point.logLikelihood,
    nullLogLikelihood: atNull.logLikelihood,
    likelihoodRatio: chiSquareTest(2 * (point.logLikelihood - atNull.logLikelihood), tested),
    score: chiSquareTest(dot(atNull.score, multiply(nullCovariance, atNull.score)), tested),
    wald: waldTest(beta, covariance, firstTested),
    robust:
      request.robust &&
      robustCoefficients(
        names,
        beta,
        covariance,
        request.robust.scores(beta),
        request.robust.clusters,
        level,
      ),
    iterations,
  });
}
