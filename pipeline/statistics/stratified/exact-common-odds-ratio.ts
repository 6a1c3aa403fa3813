import { hypergeometricCount } from '../distributions/conditional-count.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { conditionalInference, type TailRule } from './conditional-inference.ts';
import { checkTwoByTwo, isInformative, type TwoByTwo } from './two-by-two.ts';

export interface ExactCommonRatio {
  /** Conditional maximum-likelihood ratio; 0 or Infinity at the ends of its range. */
  estimate: number;
  interval: Interval;
  /** Central two-sided p-value of ratio 1: twice the smaller tail, at most 1. */
  pValue: number;
  /** One-sided p-values: `pGreater` against a ratio above 1, `pLess` below 1. */
  pGreater: number;
  pLess: number;
  /** Strata that carry information, and all strata given. */
  strataUsed: number;
  strataGiven: number;
  tails: TailRule;
}

/**
 * Exact inference for an odds ratio common to several two-by-two tables.
 *
 * Estimated: the odds of an event in the exposed group over those in the unexposed group, the same in each
 * stratum; by the conditional likelihood given each table's margins. Test and central interval come from the
 * exact distribution of the total of exposed events. Assumed: independent trials within a stratum,
 * independent strata, one common odds ratio. One table: Fisher's exact test.
 *
 * Edges: tables without both groups, events and non-events say nothing and are left out (`strataUsed`); none
 * left is not computable. No exposed event where one was possible: estimate 0, interval from 0; the most
 * possible: Infinity. Order of strata and rows changes nothing. Swapped groups give the reciprocal.
 *
 * @param strata - one table per stratum, whole numbers
 * @param options - `level` of the interval, default 0.95; `tails`, default `exact`; `mid-p` takes half of the
 *   observed total's probability
 * @throws RangeError for counts that can't be (negative, not whole, more events than trials) or a level
 *   outside (0, 1)
 *
 * Source: Gart, Biometrika 57 (1970) 471-475; Breslow & Day, Statistical Methods in Cancer Research I (1980)
 * sections 4.2 to 4.4.
 *
 * @example Fisher's tea tasting: estimate 6.4083, interval 0.21174 to 626.24, pValue 0.4857
 * exactCommonOddsRatio([{ exposedEvents: 3, exposedTotal: 4, unexposedEvents: 1, unexposedTotal: 4 }])
 */
export function exactCommonOddsRatio(
  strata: readonly TwoByTwo[],
  options: { level?: number; tails?: TailRule } = {},
): Outcome<ExactCommonRatio> {
  const { level = 0.95, tails = 'exact' } = options;
  const method = `exact conditional common odds ratio, central, ${tails} tails`;
  for (const table of strata) checkTwoByTwo(table, 'exactCommonOddsRatio');
  const used = strata.filter(isInformative);
  if (used.length === 0) {
    return notComputable(
      method,
      'No stratum has both groups, at least one event and at least one non-event.',
    );
  }
  const counts = used.map((t) =>
    hypergeometricCount(t.exposedEvents + t.unexposedEvents, t.exposedTotal, t.unexposedTotal),
  );
  const observed = used.reduce((sum, t) => sum + t.exposedEvents, 0);
  const inference = conditionalInference(counts, observed, level, tails);
  if (inference === undefined) {
    return notComputable(
      method,
      'Too many events for the exact distribution; the Mantel-Haenszel method fits such counts.',
    );
  }
  const { pCentral, ...rest } = inference;
  return computed(method, {
    ...rest,
    pValue: pCentral,
    strataUsed: used.length,
    strataGiven: strata.length,
    tails,
  });
}
