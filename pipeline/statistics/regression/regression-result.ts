import { studentQuantile, studentTail } from '../distributions/beta.ts';
import { chiSquareTail } from '../distributions/gamma.ts';
import { normalMultiplier, normalTwoSided } from '../distributions/normal.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { addOuter, dot, invertSymmetric, multiply, zeros } from './solve.ts';

export interface Coefficient {
  name: string;
  estimate: number;
  standardError: number;
  /** Estimate over standard error. */
  statistic: number;
  pValue: number;
  interval: Interval;
  /** exp(estimate): odds or rate ratio for one unit of the covariate; likewise its interval. */
  ratio: number;
  ratioInterval: Interval;
}

export interface ChiSquareTest {
  chiSquare: number;
  degreesOfFreedom: number;
  pValue: number;
}

export interface RobustCoefficients {
  coefficients: Coefficient[];
  covariance: number[][];
  clusters: number;
}

export interface RegressionFit {
  coefficients: Coefficient[];
  covariance: number[][];
  logLikelihood: number;
  nullLogLikelihood: number;
  /** Tests that all coefficients but the constant are 0. */
  likelihoodRatio: ChiSquareTest;
  score: ChiSquareTest;
  wald: ChiSquareTest;
  /** Present where clusters were given. */
  robust: Outcome<RobustCoefficients> | undefined;
  iterations: number;
}

/**
 * Coefficients with tests and intervals; Student's t with `degreesOfFreedom` where given, else the normal
 * distribution.
 */
export function coefficientTable(
  names: readonly string[],
  beta: readonly number[],
  covariance: number[][],
  level: number,
  degreesOfFreedom?: number,
): Coefficient[] {
  const multiplier =
    degreesOfFreedom === undefined
      ? normalMultiplier(level)
      : studentQuantile((1 - level) / 2, degreesOfFreedom, 'upper');
  return beta.map((estimate, i) => {
    const standardError = Math.sqrt(covariance[i]![i]!);
    const statistic = estimate / standardError;
    const p =
      degreesOfFreedom === undefined
        ? normalTwoSided(statistic)
        : 2 * studentTail(Math.abs(statistic), degreesOfFreedom, 'upper');
    const [low, high] = [estimate - multiplier * standardError, estimate + multiplier * standardError];
    return {
      name: names[i]!,
      estimate,
      standardError,
      statistic,
      pValue: Math.min(1, Math.max(Number.MIN_VALUE, p)),
      interval: { low, high, level },
      ratio: Math.exp(estimate),
      ratioInterval: { low: Math.exp(low), high: Math.exp(high), level },
    };
  });
}

export function chiSquareTest(chiSquare: number, degreesOfFreedom: number): ChiSquareTest {
  const statistic = Math.max(0, chiSquare);
  return {
    chiSquare: statistic,
    degreesOfFreedom,
    pValue: Math.max(Number.MIN_VALUE, chiSquareTail(statistic, degreesOfFreedom, 'upper')),
  };
}

/** Wald test that the coefficients from `first` on are all 0. */
export function waldTest(beta: readonly number[], covariance: number[][], first: number): ChiSquareTest {
  const tested = beta.slice(first);
  const inverse = invertSymmetric(covariance.slice(first).map((row) => row.slice(first)));
  if (inverse === undefined)
    throw new Error('waldTest: the covariance of a converged fit must be positive definite');
  return chiSquareTest(dot(tested, multiply(inverse, tested)), tested.length);
}

/**
 * Cluster-robust ("sandwich") covariance and tests.
 *
 * Scores are summed within clusters; the factor G / (G - 1) and Student's t with G - 1 degrees of freedom
 * make up for few clusters in part. Under about 20 clusters it still tends to be too sure. Edges: one
 * cluster, or clusters whose scores are all 0 (each fitted exactly), is not computable.
 *
 * @param scores - score vector of each row, or of each stratum
 * @param clusters - cluster of each, in the same order
 *
 * Source: K.-Y. Liang & S. L. Zeger, Biometrika 73 (1986) 13-22; factor and t: A. C. Cameron & D. L. Miller,
 * J. Human Resources 50 (2015) 317-372.
 */
export function robustCoefficients(
  names: readonly string[],
  beta: readonly number[],
  covariance: number[][],
  scores: readonly (readonly number[])[],
  clusters: ArrayLike<string | number>,
  level: number,
): Outcome<RobustCoefficients> {
  const method = 'cluster-robust covariance, factor G / (G - 1), t with G - 1 degrees of freedom';
  const sums = new Map<string | number, number[]>();
  scores.forEach((score, i) => {
    const sum = sums.get(clusters[i]!);
    if (sum === undefined) sums.set(clusters[i]!, [...score]);
    else for (let j = 0; j < sum.length; j++) sum[j]! += score[j]!;
  });
  const count = sums.size;
  if (count < 2) return notComputable(method, 'There is only one cluster.');
  const middle = zeros(beta.length);
  for (const sum of sums.values()) addOuter(middle, multiply(covariance, sum), count / (count - 1));
  // Below this share of the model's variance only rounding is left: the clusters' scores are all 0.
  if (middle.some((row, i) => !(row[i]! > 1e-16 * covariance[i]![i]!))) {
    return notComputable(
      method,
      'The scores of each cluster are 0, so clusters say nothing about the spread.',
    );
  }
  const coefficients = coefficientTable(names, beta, middle, level, count - 1);
  return computed(method, { coefficients, covariance: middle, clusters: count });
}
