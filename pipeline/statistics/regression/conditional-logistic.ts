import { checkLevel } from '../intervals/check-proportion.ts';
import { notComputable, type Outcome } from '../result.ts';
import { type ConditionalStratum, stratumLikelihood } from './conditional-stratum.ts';
import { type Covariates, centred, checkedNames, collinearity } from './design.ts';
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
  checkStrata(data);
  const { used, given } = usedStrata(data);
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
  return { ...fit, strataUsed: used.length, strataGiven: given, cases };
}

interface UsedStratum {
  stratum: ConditionalStratum;
  cluster: string | number | undefined;
}

function checkStrata(data: ConditionalLogisticData): void {
  if (data.strata.length !== data.cases.length) {
    throw new RangeError(
      `conditionalLogistic: strata must have ${data.cases.length} entries, found ${data.strata.length}`,
    );
  }
}

/** What speaks of each stratum with cases and non-cases, in order of first appearance, and how many strata there are. */
function usedStrata(data: ConditionalLogisticData): { used: UsedStratum[]; given: number } {
  const groups = new Map<string | number, { places: number[]; cases: number }>();
  for (let i = 0; i < data.cases.length; i++) {
    const flag = data.cases[i]!;
    if (flag !== 0 && flag !== 1) {
      throw new RangeError(`conditionalLogistic: cases must be 0 or 1, found ${flag} in row ${i}`);
    }
    const name = data.strata[i]!;
    const group = groups.get(name) ?? { places: [], cases: 0 };
    const [cluster, first] = [data.clusters?.[i], data.clusters?.[group.places[0] ?? i]];
    if (cluster !== first) {
      throw new RangeError(
        `conditionalLogistic: stratum ${name} must lie in one cluster, found ${first} and ${cluster}`,
      );
    }
    group.places.push(i);
    group.cases += flag;
    groups.set(name, group);
  }
  const used = [...groups.values()]
    .filter(({ places, cases }) => cases > 0 && cases < places.length)
    .map(({ places, cases }) => ({
      stratum: {
        rows: centred(places.map((i) => data.covariates[i]!)),
        isCase: places.map((i) => data.cases[i] === 1),
        cases,
      },
      cluster: data.clusters?.[places[0]!],
    }));
  return { used, given: groups.size };
}
