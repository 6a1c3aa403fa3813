import gammaln from '@stdlib/math-base-special-gammaln';
import { checkLevel } from '../intervals/check-proportion.ts';
import { notComputable, type Outcome } from '../result.ts';
import { type Covariates, checkedNames, collinearity } from './design.ts';
import { fitRegression } from './fit.ts';
import type { Likelihood } from './maximise.ts';
import type { RegressionFit } from './regression-result.ts';
import { addOuter, dot, invertSymmetric, multiply, zeros } from './solve.ts';

/** Rows of a Poisson regression. */
export interface PoissonData extends Covariates {
  /** Events per row, whole numbers. */
  events: ArrayLike<number>;
  /**
   * Time or chances per row, above 0 (its logarithm is the offset); a row with 0 and no events says nothing.
   */
  exposure: ArrayLike<number>;
}

export interface PoissonFit extends RegressionFit {
  deviance: number;
  /** Pearson's chi-square; much above `residualDegreesOfFreedom` means more spread than Poisson. */
  pearson: number;
  residualDegreesOfFreedom: number;
}

/**
 * Poisson regression of rates with a constant and an offset, by maximum likelihood.
 *
 * Estimated: log rate ratios per unit of each covariate. Model: log rate is linear in the covariates.
 * Assumed: independent Poisson counts (with `clusters`, independence between clusters only for the robust
 * errors). Strata as indicator covariates give the conditional estimates.
 *
 * Edges, each stated as not computable: no event; covariates that are linear combinations of others (named);
 * a covariate combination without any event, so that a coefficient has no finite estimate.
 *
 * @param data - rows; see `PoissonData`
 * @param options - `level` of the intervals, default 0.95
 * @throws RangeError for arrays that do not fit together, counts or exposures that can't be, and events in no
 *   exposure
 *
 * Source: McCullagh & Nelder, Generalized Linear Models, 2nd ed. (1989) ch. 6; Breslow & Day, Statistical
 * Methods in Cancer Research II (1987) ch. 4.
 *
 * @example British doctors, age as factor and smoking: exp(smoker) = 1.425519, deviance 12.13 on 4 degrees of
 *   freedom
 */
export function poissonRegression(data: PoissonData, options: { level?: number } = {}): Outcome<PoissonFit> {
  const { level = 0.95 } = options;
  const method = 'Poisson regression with offset, maximum likelihood';
  checkLevel(level, 'poissonRegression');
  const names = ['constant', ...checkedNames(data, data.events.length, 'poissonRegression')];
  checkCounts(data);
  const used = Array.from(data.events, (_, i) => i).filter((i) => data.exposure[i]! > 0);
  const rows = used.map((i) => ({
    x: [1, ...data.covariates[i]!],
    events: data.events[i]!,
    offset: Math.log(data.exposure[i]!),
  }));
  const totalEvents = rows.reduce((sum, row) => sum + row.events, 0);
  if (totalEvents === 0) return notComputable(method, 'There are no events.');
  const design = rows.map((row) => row.x);
  const dependent = collinearity(design, names);
  if (dependent !== undefined) return notComputable(method, dependent);
  const exposure = rows.reduce((sum, row) => sum + Math.exp(row.offset), 0);
  const fitted = (row: (typeof rows)[number], beta: readonly number[]) =>
    Math.exp(row.offset + dot(row.x, beta));
  const likelihood: Likelihood = {
    at(beta) {
      const score = beta.map(() => 0);
      const information = zeros(beta.length);
      let logLikelihood = 0;
      for (const row of rows) {
        const eta = row.offset + dot(row.x, beta);
        const mean = Math.exp(eta);
        logLikelihood += row.events * eta - mean - gammaln(row.events + 1);
        for (let j = 0; j < score.length; j++) score[j]! += (row.events - mean) * row.x[j]!;
        addOuter(information, row.x, mean);
      }
      return { logLikelihood, score, information };
    },
    reach: (step) => rows.reduce((most, row) => Math.max(most, Math.abs(dot(row.x, step))), 0),
    recedes(direction) {
      const along = rows.map((row) => dot(row.x, direction));
      const slack = 1e-5 * along.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
      return rows.every((row, i) => along[i]! <= slack && (row.events === 0 || along[i]! >= -slack));
    },
  };
  const clusters = data.clusters;
  const fit = fitRegression({
    method,
    likelihood,
    names,
    start: leastSquaresStart(rows),
    nullBeta: names.map((_, j) => (j === 0 ? Math.log(totalEvents / exposure) : 0)),
    firstTested: 1,
    level,
    robust: clusters && {
      scores: (beta) => rows.map((row) => row.x.map((x) => (row.events - fitted(row, beta)) * x)),
      clusters: used.map((i) => clusters[i]!),
    },
  });
  if (!fit.computable) return fit;
  const beta = fit.coefficients.map((coefficient) => coefficient.estimate);
  let [deviance, pearson] = [0, 0];
  for (const row of rows) {
    const mean = fitted(row, beta);
    deviance += 2 * ((row.events === 0 ? 0 : row.events * Math.log(row.events / mean)) - (row.events - mean));
    pearson += (row.events - mean) ** 2 / mean;
  }
  return { ...fit, deviance, pearson, residualDegreesOfFreedom: rows.length - names.length };
}

/**
 * Weighted least squares of the log of (events + 1/2) over exposure: near the maximum, whatever the units.
 */
function leastSquaresStart(rows: { x: number[]; events: number; offset: number }[]): number[] {
  const width = rows[0]!.x.length;
  const information = zeros(width);
  const right = new Array<number>(width).fill(0);
  for (const row of rows) {
    const weight = row.events + 0.5;
    addOuter(information, row.x, weight);
    const target = Math.log(row.events + 0.5) - row.offset;
    for (let j = 0; j < width; j++) right[j]! += weight * target * row.x[j]!;
  }
  const inverse = invertSymmetric(information);
  return inverse === undefined ? right.map(() => 0) : multiply(inverse, right);
}

function checkCounts(data: PoissonData): void {
  if (data.exposure.length !== data.events.length) {
    throw new RangeError(
      `poissonRegression: exposure must have ${data.events.length} entries, found ${data.exposure.length}`,
    );
  }
  for (let i = 0; i < data.events.length; i++) {
    const [k, time] = [data.events[i]!, data.exposure[i]!];
    const valid =
      Number.isSafeInteger(k) &&
      k >= 0 &&
      time >= 0 &&
      time < Number.POSITIVE_INFINITY &&
      (time > 0 || k === 0);
    if (!valid)
      throw new RangeError(`poissonRegression: row ${i} can't have ${k} events in exposure ${time}`);
  }
}
