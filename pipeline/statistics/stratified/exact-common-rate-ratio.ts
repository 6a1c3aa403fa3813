import { binomialCount } from '../distributions/conditional-count.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { conditionalInference, type TailRule } from './conditional-inference.ts';
import type { ExactCommonRatio } from './exact-common-odds-ratio.ts';
import { checkRateStratum, isInformative, type RateStratum } from './rate-stratum.ts';

/**
 * Exact inference for a rate ratio common to several strata of events over time.
 *
 * Estimated: the rate of events in the exposed group over that in the unexposed group, the same in each
 * stratum, by the conditional likelihood given each stratum's events. Test and central interval come from the
 * exact distribution of the total of exposed events (a sum of binomials). Assumed: Poisson counts,
 * independent strata, one common ratio. One stratum: the exact comparison of two Poisson rates.
 *
 * Edges: strata without events or with time in one group alone say nothing and are left out (`strataUsed`);
 * none left is not computable. No exposed event: estimate 0, interval from 0; no unexposed event: Infinity.
 * Order of strata changes nothing, nor does the unit of time. Swapped groups give the reciprocal.
 *
 * @param strata - events (whole numbers) and time (any unit, the same for both groups of a stratum)
 * @param options - `level` of the interval, default 0.95; `tails`, default `exact`; `mid-p` takes half of the
 *   observed total's probability
 * @throws RangeError for events that are not whole numbers, negative times, or a level outside (0, 1)
 *
 * Source: Rothman, Greenland & Lash, Modern Epidemiology, 3rd ed. (2008) ch. 14 and 15; Breslow & Day,
 * Statistical Methods in Cancer Research II (1987) section 3.4.
 *
 * @example Boice & Monson's breast cancers: estimate 1.855759, interval 1.005684 to 3.609300
 * exactCommonRateRatio([{ exposedEvents: 41, exposedTime: 28010, unexposedEvents: 15, unexposedTime: 19017 }])
 */
export function exactCommonRateRatio(
  strata: readonly RateStratum[],
  options: { level?: number; tails?: TailRule } = {},
): Outcome<ExactCommonRatio> {
  const { level = 0.95, tails = 'exact' } = options;
  const method = `exact conditional common rate ratio, central, ${tails} tails`;
  for (const stratum of strata) checkRateStratum(stratum, 'exactCommonRateRatio');
  const used = strata.filter(isInformative);
  if (used.length === 0)
    return notComputable(method, 'No stratum has time in both groups and at least one event.');
  const counts = used.map((s) =>
    binomialCount(s.exposedEvents + s.unexposedEvents, s.exposedTime, s.unexposedTime),
  );
  const observed = used.reduce((sum, s) => sum + s.exposedEvents, 0);
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
