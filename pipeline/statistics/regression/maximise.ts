import { dot, invertSymmetric, multiply } from './solve.ts';

export interface LikelihoodPoint {
  logLikelihood: number;
  score: number[];
  /** Observed information: minus the matrix of second derivatives. */
  information: number[][];
}

/** A log-likelihood that is concave in its coefficients. */
export interface Likelihood {
  at(beta: readonly number[]): LikelihoodPoint;
  /**
   * Largest absolute change of a row's linear predictor for this step: the scale on which convergence is
   * judged.
   */
  reach(step: readonly number[]): number;
  /**
   * True if the likelihood never falls along this direction, however far one goes: no finite maximum
   * (separation).
   */
  recedes(direction: readonly number[]): boolean;
}

export type Maximum =
  | { state: 'converged'; beta: number[]; point: LikelihoodPoint; covariance: number[][]; iterations: number }
  | { state: 'monotone' }
  | { state: 'not converged' };

/**
 * Maximises a concave log-likelihood by Newton steps, halved where they overshoot, until no linear predictor
 * moves by more than 1e-9.
 *
 * Where the data separate, steps never shrink: the last direction is then put to the likelihood itself, and
 * separation is only reported if the likelihood never falls along it.
 */
export function maximise(likelihood: Likelihood, start: readonly number[]): Maximum {
  let beta = [...start];
  let point = likelihood.at(beta);
  let direction: number[] | undefined;
  for (let iterations = 1; iterations <= 100; iterations++) {
    const covariance = invertSymmetric(point.information);
    if (covariance === undefined) break;
    const step = multiply(covariance, point.score);
    direction = step;
    const reach = likelihood.reach(step);
    let share = 1;
    let next = beta.map((b, i) => b + step[i]!);
    let there = likelihood.at(next);
    const slack = 1e-12 * (1 + Math.abs(point.logLikelihood));
    while (!(there.logLikelihood >= point.logLikelihood - slack) && share > 1e-10) {
      share /= 2;
      next = beta.map((b, i) => b + share * step[i]!);
      there = likelihood.at(next);
    }
    beta = next;
    point = there;
    if (reach < 1e-9) {
      const last = invertSymmetric(point.information);
      if (last !== undefined) return { state: 'converged', beta, point, covariance: last, iterations };
      break;
    }
    // Far out, and the score is spent: steps go on along a direction in which nothing is left to gain.
    if (iterations > 15 && Math.abs(dot(point.score, step)) < 1e-8 && reach > 0.1) break;
  }
  if (direction !== undefined && likelihood.recedes(direction)) return { state: 'monotone' };
  return { state: 'not converged' };
}
