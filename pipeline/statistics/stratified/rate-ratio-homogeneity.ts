import { chiSquareTail } from '../distributions/gamma.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { mantelHaenszelRateRatio } from './mantel-haenszel-rate-ratio.ts';
import type { Homogeneity } from './odds-ratio-homogeneity.ts';
import { checkRateStratum, isInformative, type RateStratum } from './rate-stratum.ts';

/**
 * Do the rate ratios of the strata differ?
 *
 * Tested: one rate ratio for all strata. `inverse-variance` (the default): squares of the log ratios about
 * the log of the Mantel-Haenszel ratio, weight 1 / (1 / a + 1 / b); `score`: squared distance of each
 * stratum's exposed events from those expected under the Mantel-Haenszel ratio, over their binomial variance,
 * which also uses strata where one group has no event. Assumed: each stratum large enough for the normal
 * limit.
 *
 * Edges: `inverse-variance` leaves out strata where one group has no event, for they have no log ratio
 * (`strataUsed`); fewer than two left, or a Mantel-Haenszel ratio of 0 or Infinity, is not computable.
 *
 * @param strata - events (whole numbers) and time
 * @param options - `statistic`
 * @throws RangeError for events or times that can't be
 *
 * Source: Breslow & Day, Statistical Methods in Cancer Research II (1987) section 3.6; Rothman, Greenland &
 * Lash (2008) ch. 15.
 *
 * @example British doctors, coronary deaths by age: chi-square 10.41 on 4 degrees of freedom, p 0.034
 */
export function rateRatioHomogeneity(
  strata: readonly RateStratum[],
  options: { statistic?: 'inverse-variance' | 'score' } = {},
): Outcome<Homogeneity> {
  const { statistic = 'inverse-variance' } = options;
  const method = `homogeneity of rate ratios, ${statistic}`;
  for (const stratum of strata) checkRateStratum(stratum, 'rateRatioHomogeneity');
  const common = mantelHaenszelRateRatio(strata);
  const used = strata.filter(
    (s) => isInformative(s) && (statistic === 'score' || (s.exposedEvents > 0 && s.unexposedEvents > 0)),
  );
  if (used.length < 2) return notComputable(method, 'Fewer than two strata carry information.');
  if (!common.computable || common.interval === undefined) {
    return notComputable(method, 'The common rate ratio is 0 or infinite.');
  }
  const distance = statistic === 'score' ? scoreDistance : logDistance;
  const chiSquare = used.reduce((sum, stratum) => sum + distance(stratum, common.estimate), 0);
  const degreesOfFreedom = used.length - 1;
  return computed(method, {
    chiSquare,
    commonRatio: common.estimate,
    degreesOfFreedom,
    pValue: Math.max(Number.MIN_VALUE, chiSquareTail(chiSquare, degreesOfFreedom, 'upper')),
    strataUsed: used.length,
    strataGiven: strata.length,
  });
}

/** Squared log of the stratum's ratio over the common one, times its inverse variance. */
function logDistance(stratum: RateStratum, common: number): number {
  const log = Math.log(
    stratum.exposedEvents / stratum.exposedTime / (stratum.unexposedEvents / stratum.unexposedTime),
  );
  const weight = 1 / (1 / stratum.exposedEvents + 1 / stratum.unexposedEvents);
  return weight * (log - Math.log(common)) ** 2;
}

/**
 * Squared excess of the stratum's exposed events over those the common ratio gives, over its binomial
 * variance.
 */
function scoreDistance(stratum: RateStratum, common: number): number {
  const events = stratum.exposedEvents + stratum.unexposedEvents;
  const weighted = common * stratum.exposedTime;
  const share = weighted / (weighted + stratum.unexposedTime);
  const rest = stratum.unexposedTime / (weighted + stratum.unexposedTime);
  return (stratum.exposedEvents - events * share) ** 2 / (events * share * rest);
}
