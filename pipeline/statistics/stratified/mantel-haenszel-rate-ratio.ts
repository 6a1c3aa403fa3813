import { chiSquareTail } from '../distributions/gamma.ts';
import { checkLevel } from '../intervals/check-proportion.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { logIntervalOf, type MantelHaenszelRatio } from './mantel-haenszel-odds-ratio.ts';
import { checkRateStratum, isInformative, type RateStratum } from './rate-stratum.ts';

/**
 * Mantel-Haenszel rate ratio over strata of events and time, with the Greenland-Robins interval and the score
 * test.
 *
 * Estimated: a rate ratio common to all strata, as a weighted mean of theirs. Tested: ratio 1, by the exposed
 * events in excess of those expected given each stratum's events, over their binomial variance. Assumed:
 * Poisson counts, a common ratio (for the estimate), enough events in all for the normal limit.
 *
 * Edges: strata without events or with time in one group alone are left out; none left is not computable. No
 * exposed event gives 0, no unexposed event Infinity, without an interval from this method. Swapped groups
 * give the reciprocal; the unit of time changes nothing.
 *
 * @param strata - events (whole numbers) and time (any unit, the same for both groups of a stratum)
 * @param options - `level` of the interval, default 0.95; `continuityCorrection` of the test, default `none`,
 *   `half` takes 0.5 off (never below 0)
 * @throws RangeError for events, times or levels that can't be
 *
 * Source: S. Greenland & J. M. Robins, Biometrics 41 (1985) 55-68; Rothman, Greenland & Lash, Modern
 * Epidemiology, 3rd ed. (2008) ch. 15.
 *
 * @example British doctors, coronary deaths by age (Table 15-2): estimate 1.4247, interval 1.1547 to 1.7578,
 *   chi-square 11.0162
 */
export function mantelHaenszelRateRatio(
  strata: readonly RateStratum[],
  options: { level?: number; continuityCorrection?: 'none' | 'half' } = {},
): Outcome<MantelHaenszelRatio> {
  const { level = 0.95, continuityCorrection = 'none' } = options;
  const method = `Mantel-Haenszel rate ratio, Greenland-Robins interval, continuity correction ${continuityCorrection}`;
  for (const stratum of strata) checkRateStratum(stratum, 'mantelHaenszelRateRatio');
  checkLevel(level, 'mantelHaenszelRateRatio');
  const used = strata.filter(isInformative);
  if (used.length === 0)
    return notComputable(method, 'No stratum has time in both groups and at least one event.');
  let [r, s, excess, variance] = [0, 0, 0, 0];
  for (const stratum of used) {
    const time = stratum.exposedTime + stratum.unexposedTime;
    const events = stratum.exposedEvents + stratum.unexposedEvents;
    const share = stratum.exposedTime / time;
    const rest = stratum.unexposedTime / time;
    r += stratum.exposedEvents * rest;
    s += stratum.unexposedEvents * share;
    excess += stratum.exposedEvents - events * share;
    variance += events * share * rest;
  }
  const corrected = Math.max(0, Math.abs(excess) - (continuityCorrection === 'half' ? 0.5 : 0));
  const chiSquare = (corrected * corrected) / variance;
  const logStandardError = r > 0 && s > 0 ? Math.sqrt(variance / (r * s)) : undefined;
  return computed(method, {
    estimate: r / s,
    logStandardError,
    interval: logIntervalOf(r / s, logStandardError, level),
    chiSquare,
    pValue: Math.max(Number.MIN_VALUE, chiSquareTail(chiSquare, 1, 'upper')),
    continuityCorrection,
    strataUsed: used.length,
    strataGiven: strata.length,
  });
}
