import { notComputable, type Outcome } from '../result.ts';
import { collinearity } from './design.ts';
import { fitRegression } from './fit.ts';
import type { Likelihood, LikelihoodPoint } from './maximise.ts';
import type { RegressionFit } from './regression-result.ts';
import { dot, zeros } from './solve.ts';

/** What every kind of stratum has: its rows of covariates, centred within it, and its cluster where there are clusters. */
export interface StratumRows {
  rows: number[][];
  cluster: string | number | undefined;
}

/** A regression whose likelihood is a product over strata, each conditioned on its own events. */
export interface WithinStrata<Stratum extends StratumRows> {
  method: string;
  names: readonly string[];
  level: number;
  /** Strata that say something. */
  used: readonly Stratum[];
  /** Log-likelihood of a stratum with its derivatives. */
  likelihoodOf(stratum: Stratum, beta: readonly number[]): LikelihoodPoint;
  /** Whether the likelihood of a stratum never falls along a direction, from the place of each row along it. */
  recedes(stratum: Stratum, along: readonly number[], slack: number): boolean;
  /** Whether errors robust to clusters are wanted. */
  clustered: boolean;
}

/** Fits such a regression from coefficients of 0. Not computable where covariates do not vary within strata or depend on one another there. */
export function fitWithinStrata<Stratum extends StratumRows>(
  of: WithinStrata<Stratum>,
): Outcome<RegressionFit> {
  const { method, names, level, used, likelihoodOf } = of;
  const design = used.flatMap(({ rows }) => rows);
  const dependent = collinearity(design, names);
  if (dependent !== undefined) return notComputable(method, `Within the strata: ${dependent}`);
  const likelihood: Likelihood = {
    at(beta) {
      const sum = { logLikelihood: 0, score: beta.map(() => 0), information: zeros(beta.length) };
      for (const stratum of used) {
        const part = likelihoodOf(stratum, beta);
        sum.logLikelihood += part.logLikelihood;
        for (let a = 0; a < beta.length; a++) {
          sum.score[a]! += part.score[a]!;
          for (let b = 0; b < beta.length; b++) sum.information[a]![b]! += part.information[a]![b]!;
        }
      }
      return sum;
    },
    reach: (step) => design.reduce((most, x) => Math.max(most, Math.abs(dot(x, step))), 0),
    recedes(direction) {
      const slack = 1e-5 * this.reach(direction);
      return used.every((stratum) =>
        of.recedes(
          stratum,
          stratum.rows.map((x) => dot(x, direction)),
          slack,
        ),
      );
    },
  };
  const zero = names.map(() => 0);
  return fitRegression({
    method,
    likelihood,
    names,
    start: zero,
    nullBeta: zero,
    firstTested: 0,
    level,
    robust: of.clustered
      ? {
          scores: (beta) => used.map((stratum) => likelihoodOf(stratum, beta).score),
          clusters: used.map(({ cluster }) => cluster!),
        }
      : undefined,
  });
}
