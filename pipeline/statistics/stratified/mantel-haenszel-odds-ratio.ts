import { chiSquareTail } from '../distributions/gamma.ts';
import { normalMultiplier } from '../distributions/normal.ts';
import { checkLevel } from '../intervals/check-proportion.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { checkTwoByTwo, isInformative, type TwoByTwo } from './two-by-two.ts';

export interface MantelHaenszelRatio {
  estimate: number;
  /** Standard error of the log ratio; undefined where the estimate is 0 or Infinity. */
  logStandardError: number | undefined;
  /** Undefined where the estimate is 0 or Infinity: the exact method then gives one. */
  interval: Interval | undefined;
  chiSquare: number;
  /** Two-sided p-value of ratio 1, chi-square with one degree of freedom. */
  pValue: number;
  continuityCorrection: 'none' | 'half';
  strataUsed: number;
  strataGiven: number;
}

/**
 * Mantel-Haenszel odds ratio over two-by-two tables, with the Robins-Breslow-Greenland interval and the
 * Cochran-Mantel-Haenszel test.
 *
 * Estimated: an odds ratio common to all strata, as a weighted mean of theirs; consistent both for few large
 * and for many thin strata. Tested: ratio 1, by the exposed events in excess of those expected given the
 * margins, over their hypergeometric variance with n^2 (n - 1). Assumed: independent trials, a common ratio
 * (for the estimate), enough events in all for the normal limit.
 *
 * Edges: tables without both groups, events and non-events are left out; none left is not computable. Where
 * no table has an exposed event with an unexposed non-event the estimate is 0 (mirrored: Infinity) and has no
 * interval from this method. Swapped groups give the reciprocal.
 *
 * @param strata - one table per stratum, whole numbers
 * @param options - `level` of the interval, default 0.95; `continuityCorrection` of the test, default `none`,
 *   `half` takes 0.5 off (never below 0)
 * @throws RangeError for counts or levels that can't be
 *
 * Source: N. Mantel & W. Haenszel, JNCI 22 (1959) 719-748; J. Robins, N. Breslow & S. Greenland, Biometrics
 * 42 (1986) 311-323.
 *
 * @example Tolbutamide (Rothman et al. 2008, Table 15-1), level 0.9: estimate 1.4031, interval 0.8411 to
 *   2.3409, chi-square 1.1914
 */
export function mantelHaenszelOddsRatio(
  strata: readonly TwoByTwo[],
  options: { level?: number; continuityCorrection?: 'none' | 'half' } = {},
): Outcome<MantelHaenszelRatio> {
  const { level = 0.95, continuityCorrection = 'none' } = options;
  const method = `Mantel-Haenszel odds ratio, Robins-Breslow-Greenland interval, continuity correction ${continuityCorrection}`;
  for (const table of strata) checkTwoByTwo(table, 'mantelHaenszelOddsRatio');
  checkLevel(level, 'mantelHaenszelOddsRatio');
  const used = strata.filter(isInformative);
  if (used.length === 0) {
    return notComputable(
      method,
      'No stratum has both groups, at least one event and at least one non-event.',
    );
  }
  let [r, s, pr, cross, qs, excess, variance] = [0, 0, 0, 0, 0, 0, 0];
  for (const t of used) {
    const n = t.exposedTotal + t.unexposedTotal;
    const events = t.exposedEvents + t.unexposedEvents;
    const [a, b] = [t.exposedEvents, t.exposedTotal - t.exposedEvents];
    const [c, d] = [t.unexposedEvents, t.unexposedTotal - t.unexposedEvents];
    const [ri, si, pi, qi] = [(a * d) / n, (b * c) / n, (a + d) / n, (b + c) / n];
    r += ri;
    s += si;
    pr += pi * ri;
    cross += pi * si + qi * ri;
    qs += qi * si;
    excess += a - (t.exposedTotal * events) / n;
    variance += (t.exposedTotal / n) * (t.unexposedTotal / n) * events * ((n - events) / (n - 1));
  }
  const corrected = Math.max(0, Math.abs(excess) - (continuityCorrection === 'half' ? 0.5 : 0));
  const chiSquare = (corrected * corrected) / variance;
  const estimate = r / s;
  const bounded = r > 0 && s > 0;
  const logStandardError = bounded
    ? Math.sqrt(pr / (2 * r * r) + cross / (2 * r * s) + qs / (2 * s * s))
    : undefined;
  return computed(method, {
    estimate,
    logStandardError,
    interval: logIntervalOf(estimate, logStandardError, level),
    chiSquare,
    pValue: Math.max(Number.MIN_VALUE, chiSquareTail(chiSquare, 1, 'upper')),
    continuityCorrection,
    strataUsed: used.length,
    strataGiven: strata.length,
  });
}

/** Interval of a ratio, normal on the log scale; undefined without a standard error. */
export function logIntervalOf(
  ratio: number,
  logStandardError: number | undefined,
  level: number,
): Interval | undefined {
  if (logStandardError === undefined) return undefined;
  const factor = Math.exp(normalMultiplier(level) * logStandardError);
  return { low: ratio / factor, high: ratio * factor, level };
}
