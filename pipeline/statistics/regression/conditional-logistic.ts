import { checkLevel } from '../intervals/check-proportion.ts';
import { notComputable, type Outcome } from '../result.ts';
import { type ConditionalStratum, stratumLikelihood } from './conditional-stratum.ts';
import { type Covariates, checkedNames, collinearity } from './design.ts';
import { fitRegression } from './fit.ts';
import type { Likelihood } from './maximise.ts';
import type { RegressionFit } from './regression-result.ts';
import { dot, zeros } from './solve.ts';

/** Rows of a conditional logistic regression, in any order. */
export interface ConditionalLogisticData extends Covariates {
  /** 1 for an event, 0 for none, per row. */
  cases: ArrayLike<number>;
  /** Stratum of each row. A cluster must hold whole strata. */
  strata: ArrayLike<string | number>;
}

export interface ConditionalLogisticFit extends RegressionFit {
  /** Strata with cases and non-cases, and all strata given. */
  strataUsed: number;
  strataGiven: number;
  cases: number;
}

/**
 * Conditional logistic regression with the exact likelihood, several cases per stratum allowed.
 *
 * Estimated: log odds ratios per unit of each covariate, common to all strata; each stratum has its own
 * level, removed by conditioning on its number of cases. The score test with one covariate of 0 and 1 is the
 * Mantel-Haenszel test. Assumed: rows of a stratum independent given the covariates (with `clusters`,
 * independence between clusters only for the robust errors); enough cases in all for the normal limit.
 *
 * Edges, each stated as not computable: no stratum with cases and non-cases; a covariate that does not vary
 * within such strata, or is there a linear combination of others (named); monotone likelihood, where a
 * coefficient has no finite estimate (an exact method still gives a one-sided interval). Strata with cases
 * only or non-cases only say nothing and are left out.
 *
 * @param data - rows; see `ConditionalLogisticData`
 * @param options - `level` of the intervals, default 0.95
 * @throws RangeError for arrays that do not fit together, cases other than 0 and 1, or a stratum in two
 *   clusters
 *
 * Source: M. H. Gail, J. H. Lubin & L. V. Rubinstein, Biometrika 68 (1981) 703-707; Breslow & Day,
 * Statistical Methods in Cancer Research I (1980) ch. 7.
 *
 * @example R's infert (Trichopoulos et al. 1976): spontaneous 1.9859 (0.3524), induced 1.4090 (0.3607)
 */
export function conditionalLogistic(
  data: ConditionalLogisticData,
  options: { level?: number } = {},
): Outcome<ConditionalLogisticFit> {
  const { level = 0.95 } = options;
  const method = 'conditional logistic regression, exact likelihood';
  checkLevel(level, 'conditionalLogistic');
  const names = checkedNames(data, data.cases.length, 'conditionalLogistic');
  if (names.length === 0) throw new RangeError('conditionalLogistic: there must be at least one covariate');
  const groups = groupRows(data);
  const used = groups.filter(({ stratum }) => stratum.cases > 0 && stratum.cases < stratum.rows.length);
  if (used.length === 0) return notComputable(method, 'No stratum has both cases and non-cases.');
  const design = used.flatMap(({ stratum }) => stratum.rows);
  const dependent = collinearity(design, names);
  if (dependent !== undefined) return notComputable(method, `Within the strata: ${dependent}`);
  const likelihood: Likelihood = {
    at(beta) {
      const sum = { logLikelihood: 0, score: beta.map(() => 0), information: zeros(beta.length) };
      for (const { stratum } of used) {
        const part = stratumLikelihood(stratum, beta);
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
      return used.every(({ stratum }) => {
        let [leastCase, mostOther] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
        for (const [i, x] of stratum.rows.entries()) {
          const along = dot(x, direction);
          if (stratum.isCase[i]) leastCase = Math.min(leastCase, along);
          else mostOther = Math.max(mostOther, along);
        }
        return leastCase >= mostOther - slack;
      });
    },
  };
  const zero = names.map(() => 0);
  const fit = fitRegression({
    method,
    likelihood,
    names,
    start: zero,
    nullBeta: zero,
    firstTested: 0,
    level,
    robust: data.clusters && {
      scores: (beta) => used.map(({ stratum }) => stratumLikelihood(stratum, beta).score),
      clusters: used.map(({ cluster }) => cluster!),
    },
  });
  if (!fit.computable) return fit;
  const cases = used.reduce((sum, { stratum }) => sum + stratum.cases, 0);
  return { ...fit, strataUsed: used.length, strataGiven: groups.length, cases };
}

/** Rows by stratum, in order of first appearance, covariates centred within the stratum. */
function groupRows(data: ConditionalLogisticData) {
  if (data.strata.length !== data.cases.length) {
    throw new RangeError(
      `conditionalLogistic: strata must have ${data.cases.length} entries, found ${data.strata.length}`,
    );
  }
  const groups = new Map<
    string | number,
    { stratum: ConditionalStratum; cluster: string | number | undefined }
  >();
  for (let i = 0; i < data.cases.length; i++) {
    const flag = data.cases[i]!;
    if (flag !== 0 && flag !== 1) {
      throw new RangeError(`conditionalLogistic: cases must be 0 or 1, found ${flag} in row ${i}`);
    }
    const cluster = data.clusters?.[i];
    const group = groups.get(data.strata[i]!) ?? { stratum: { rows: [], isCase: [], cases: 0 }, cluster };
    if (group.cluster !== cluster) {
      throw new RangeError(
        `conditionalLogistic: stratum ${data.strata[i]} must lie in one cluster, found ${group.cluster} and ${cluster}`,
      );
    }
    group.stratum.rows.push([...data.covariates[i]!]);
    group.stratum.isCase.push(flag === 1);
    group.stratum.cases += flag;
    groups.set(data.strata[i]!, group);
  }
  for (const { stratum } of groups.values()) {
    for (let j = 0; j < (stratum.rows[0]?.length ?? 0); j++) {
      // Taken off one row's value first, so that a covariate that is constant in the stratum becomes exactly
      // 0.
      const from = stratum.rows[0]![j]!;
      const mean = stratum.rows.reduce((sum, x) => sum + (x[j]! - from), 0) / stratum.rows.length;
      for (const x of stratum.rows) x[j] = x[j]! - from - mean;
    }
  }
  return [...groups.values()];
}
