import { checkLevel } from '../intervals/check-proportion.ts';
import { notComputable, type Outcome } from '../result.ts';
import { type ConditionalStratum, conditionalStratum, stratumLikelihood } from './conditional-stratum.ts';
import { type Covariates, centred, checkedNames } from './design.ts';
import { fitWithinStrata, type StratumRows } from './fit-within-strata.ts';
import type { RegressionFit } from './regression-result.ts';

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
  const { used, given } = usedStrata(data);
  if (used.length === 0) return notComputable(method, 'No stratum has both cases and non-cases.');
  const fit = fitWithinStrata<UsedStratum>({
    method,
    names,
    level,
    used,
    likelihoodOf: stratumLikelihood,
    recedes({ isCase }, along, slack) {
      let [leastCase, mostOther] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
      for (const [i, place] of along.entries()) {
        if (isCase[i]) leastCase = Math.min(leastCase, place);
        else mostOther = Math.max(mostOther, place);
      }
      return leastCase >= mostOther - slack;
    },
    clustered: data.clusters !== undefined,
  });
  if (!fit.computable) return fit;
  const cases = used.reduce((sum, of) => sum + of.cases, 0);
  return { ...fit, strataUsed: used.length, strataGiven: given, cases };
}

type UsedStratum = ConditionalStratum & StratumRows;

/** What speaks of each stratum with cases and non-cases, in order of first appearance, and how many strata there are. */
function usedStrata(data: ConditionalLogisticData): { used: UsedStratum[]; given: number } {
  if (data.strata.length !== data.cases.length) {
    throw new RangeError(
      `conditionalLogistic: strata must have ${data.cases.length} entries, found ${data.strata.length}`,
    );
  }
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
    .map(({ places }) => ({
      ...conditionalStratum(
        centred(places.map((i) => data.covariates[i]!)),
        places.map((i) => data.cases[i] === 1),
      ),
      cluster: data.clusters?.[places[0]!],
    }));
  return { used, given: groups.size };
}
