import type { ConditionalCount } from '../distributions/conditional-count.ts';
import { findRoot } from '../distributions/find-root.ts';
import { logRatioOfMean, type TiltedMass, tiltedSum } from '../distributions/tilted-sum.ts';
import type { Interval } from '../result.ts';

/** `exact` counts the observed value wholly in each tail, `mid-p` half of its probability. */
export type TailRule = 'exact' | 'mid-p';

/** What the conditional distribution of a sum of counts says about their common ratio. */
export interface ConditionalInference {
  /** Conditional maximum-likelihood ratio; 0 or Infinity where the sum lies at an end of its range. */
  estimate: number;
  interval: Interval;
  /** Tail of the sum at or above the observed one, at ratio 1. */
  pGreater: number;
  /** Tail at or below it. */
  pLess: number;
  /** Twice the smaller of the two, at most 1. */
  pCentral: number;
}

/**
 * Exact inference for one ratio common to independent conditional counts, from the distribution of their sum.
 *
 * Model: P(sum = s) proportional to weight(s) ratio^s, the margins of each stratum fixed; counts are
 * independent and the ratio is the same in each. The interval holds the ratios that neither one-sided test
 * rejects at (1 - level) / 2, so it agrees with the central p-value. All sums run over the distribution
 * tilted to the observed sum, so tails of 1e-100 keep their digits; a p-value below the least positive number
 * is returned as that number, never as 0.
 *
 * Edges: sum at the lower end gives estimate 0 and interval from 0, at the upper end Infinity both; the other
 * end is still at (1 - level) / 2.
 *
 * @param counts - informative counts (low < high each), at least one
 * @param observed - their observed sum
 * @param level - of the interval, in (0, 1)
 * @returns undefined where the distribution is too wide to be convolved (see `tiltedSum`)
 *
 * Source: M. H. Gart, "Point and interval estimation of the common odds ratio in the combination of 2 x 2
 * tables with fixed marginals", Biometrika 57 (1970) 471-475; C. R. Mehta, N. R. Patel & R. Gray, JASA 80
 * (1985) 969-973.
 */
export function conditionalInference(
  counts: ConditionalCount[],
  observed: number,
  level: number,
  rule: TailRule,
): ConditionalInference | undefined {
  if (!(level > 0 && level < 1))
    throw new RangeError(`conditionalInference: level must lie in (0, 1), found ${level}`);
  const low = counts.reduce((sum, count) => sum + count.low, 0);
  const high = counts.reduce((sum, count) => sum + count.high, 0);
  const target = Math.min(high - 0.5, Math.max(low + 0.5, observed));
  const sum = tiltedSum(counts, logRatioOfMean(counts, target));
  if (sum === undefined) return undefined;
  const atNull = tailsAtNull(sum, observed, rule);
  const alpha = (1 - level) / 2;
  return {
    estimate: observed === low ? 0 : observed === high ? Number.POSITIVE_INFINITY : Math.exp(sum.logRatio),
    interval: {
      low: observed === low ? 0 : Math.exp(logRatioOfTail(sum, observed, alpha, rule, 'upper')),
      high:
        observed === high
          ? Number.POSITIVE_INFINITY
          : Math.exp(logRatioOfTail(sum, observed, alpha, rule, 'lower')),
      level,
    },
    pGreater: atNull.upper,
    pLess: atNull.lower,
    pCentral: Math.min(1, 2 * Math.min(atNull.upper, atNull.lower)),
  };
}

/** Both tails at ratio 1; the one on the observed side is summed, the other is its complement. */
function tailsAtNull(sum: TiltedMass, observed: number, rule: TailRule): { upper: number; lower: number } {
  const above = sum.logRatio >= 0;
  const at = observed - sum.first;
  // q(s) exp(-logRatio (s - observed)): terms shrink away from the observed sum.
  let beyond = 0;
  for (let i = at + (above ? 1 : -1); i >= 0 && i < sum.probability.length; i += above ? 1 : -1) {
    beyond += sum.probability[i]! * Math.exp(-sum.logRatio * (i - at));
  }
  const scale = Math.exp(sum.logNorm - sum.logRatio * observed);
  const own = sum.probability[at]! * scale;
  const kept = rule === 'mid-p' ? 0.5 : 1;
  const near = clampProbability(beyond * scale + kept * own);
  const other = clampProbability(1 - beyond * scale - (1 - kept) * own);
  return above ? { upper: near, lower: other } : { upper: other, lower: near };
}

function clampProbability(p: number): number {
  return Math.min(1, Math.max(Number.MIN_VALUE, p));
}

/** The log ratio at which this tail of the observed sum has probability alpha. */
function logRatioOfTail(
  sum: TiltedMass,
  observed: number,
  alpha: number,
  rule: TailRule,
  tail: 'upper' | 'lower',
): number {
  const logs = sum.probability.map((p) => Math.log(p));
  const at = observed - sum.first;
  const kept = rule === 'mid-p' ? 0.5 : 1;
  const excess = (logRatio: number) => {
    const tilt = logRatio - sum.logRatio;
    let most = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < logs.length; i++) most = Math.max(most, logs[i]! + tilt * (i - at));
    let [below, above] = [0, 0];
    for (let i = 0; i < logs.length; i++) {
      const weight = Math.exp(logs[i]! + tilt * (i - at) - most);
      if (i < at) below += weight;
      else if (i > at) above += weight;
    }
    const own = Math.exp(logs[at]! - most);
    return ((tail === 'upper' ? above : below) + kept * own) / (below + own + above) - alpha;
  };
  const away = tail === 'upper' ? -1 : 1;
  let [near, far] = [sum.logRatio - away, sum.logRatio + away];
  while (excess(near) <= 0) near -= away * 2;
  while (excess(far) > 0) far += away * (Math.abs(far - sum.logRatio) + 1);
  return findRoot(excess, near, far, 1e-14);
}
