import { checkLevel } from '../intervals/check-proportion.ts';
import { notComputable, type Outcome } from '../result.ts';
import { type Covariates, checkedNames, collinearity } from './design.ts';
import { fitRegression } from './fit.ts';
import type { Likelihood } from './maximise.ts';
import type { RegressionFit } from './regression-result.ts';
import { addOuter, dot, zeros } from './solve.ts';

/** Rows of a logistic regression. */
export interface LogisticData extends Covariates {
  /** Events per row, whole numbers; 0 or 1 where `trials` is left out. */
  events: ArrayLike<number>;
  /** Trials per row, whole numbers; default 1 each. Rows without trials say nothing. */
  trials?: ArrayLike<number>;
}

/**
 * Logistic regression with a constant, by unconditional maximum likelihood.
 *
 * Estimated: log odds ratios per unit of each covariate. Model: logit of the probability is linear in the
 * covariates. Assumed: independent trials (with `clusters`, independence between clusters only for the robust
 * errors), and many events per coefficient; with many strata as covariates and few events in each the
 * estimates lie too far from 0 (use the conditional form). Standard errors from the information at the
 * maximum.
 *
 * Edges, each stated as not computable: no event or nothing but events; covariates that are linear
 * combinations of others (named); separation (a coefficient without a finite estimate).
 *
 * @param data - rows; see `LogisticData`
 * @param options - `level` of the intervals, default 0.95
 * @throws RangeError for arrays that do not fit together or counts that can't be
 *
 * Source: McCullagh & Nelder, Generalized Linear Models, 2nd ed. (1989) ch. 4; separation: A. Albert & J. A.
 * Anderson, Biometrika 71 (1984) 1-10.
 *
 * @example Spector & Mazzeo (1980), Greene, Econometric Analysis, Table 21.1: PSI 2.379, standard error 1.065
 */
export function logisticRegression(
  data: LogisticData,
  options: { level?: number } = {},
): Outcome<RegressionFit> {
  const { level = 0.95 } = options;
  const method = 'logistic regression, unconditional maximum likelihood';
  checkLevel(level, 'logisticRegression');
  const names = ['constant', ...checkedNames(data, data.events.length, 'logisticRegression')];
  const events = Array.from(data.events);
  const trials = data.trials === undefined ? events.map(() => 1) : Array.from(data.trials);
  checkCounts(events, trials);
  const used = events.map((_, i) => i).filter((i) => trials[i]! > 0);
  const rows = used.map((i) => ({ x: [1, ...data.covariates[i]!], events: events[i]!, trials: trials[i]! }));
  const totalEvents = rows.reduce((sum, row) => sum + row.events, 0);
  const totalTrials = rows.reduce((sum, row) => sum + row.trials, 0);
  if (totalEvents === 0 || totalEvents === totalTrials) {
    return notComputable(method, 'There must be at least one event and one non-event.');
  }
  const design = rows.map((row) => row.x);
  const dependent = collinearity(design, names);
  if (dependent !== undefined) return notComputable(method, dependent);
  const nullBeta = names.map((_, j) => (j === 0 ? Math.log(totalEvents / (totalTrials - totalEvents)) : 0));
  const likelihood: Likelihood = {
    at(beta) {
      const score = beta.map(() => 0);
      const information = zeros(beta.length);
      let logLikelihood = 0;
      for (const row of rows) {
        const eta = dot(row.x, beta);
        const p = 1 / (1 + Math.exp(-eta));
        logLikelihood += row.events * eta - row.trials * softplus(eta);
        for (let j = 0; j < score.length; j++) score[j]! += (row.events - row.trials * p) * row.x[j]!;
        addOuter(information, row.x, (row.trials * p) / (1 + Math.exp(eta)));
      }
      return { logLikelihood, score, information };
    },
    reach: (step) => rows.reduce((most, row) => Math.max(most, Math.abs(dot(row.x, step))), 0),
    recedes(direction) {
      const along = rows.map((row) => dot(row.x, direction));
      const slack = 1e-5 * along.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
      return rows.every(
        (row, i) =>
          (row.events === 0 || along[i]! >= -slack) && (row.events === row.trials || along[i]! <= slack),
      );
    },
  };
  const clusters = data.clusters;
  return fitRegression({
    method,
    likelihood,
    names,
    start: nullBeta,
    nullBeta,
    firstTested: 1,
    level,
    robust: clusters && {
      scores: (beta) =>
        rows.map((row) => {
          const residual = row.events - row.trials / (1 + Math.exp(-dot(row.x, beta)));
          return row.x.map((x) => residual * x);
        }),
      clusters: used.map((i) => clusters[i]!),
    },
  });
}

/** log(1 + exp(x)) without overflow. */
function softplus(x: number): number {
  return Math.max(0, x) + Math.log1p(Math.exp(-Math.abs(x)));
}

function checkCounts(events: number[], trials: number[]): void {
  if (events.length !== trials.length) {
    throw new RangeError(
      `logisticRegression: trials must have ${events.length} entries, found ${trials.length}`,
    );
  }
  for (const [i, n] of trials.entries()) {
    const k = events[i]!;
    if (!(Number.isSafeInteger(n) && Number.isSafeInteger(k) && k >= 0 && k <= n)) {
      throw new RangeError(`logisticRegression: row ${i} can't have ${k} events in ${n} trials`);
    }
  }
}
