import { normalQuantile } from '../distributions/normal.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { type BaselineRange, type BaselineUsed, type ChartPoint, resolveBaseline } from './chart-result.ts';

/** Probability beyond each 3-sigma limit of a normal distribution. */
const NORMAL_TAIL_AT_THREE = 0.00135;

export interface GChart {
  points: ChartPoint[];
  centre: number;
  centreIs: 'fitted median' | 'mean';
  meanGap: number;
  limits: 'probability' | 'three-sigma';
  /**
   * Probability that the in-control geometric law puts strictly below the lower and strictly above the upper
   * limit: what a signal on either side means.
   */
  falseAlarm: { low: number; high: number };
  baseline: BaselineUsed;
}

/**
 * g chart: number of cases (cycles, days) BETWEEN rare events, so that a gap may be 0.
 *
 * Model: geometric, P(gap >= g) = q^g with q = mean / (1 + mean), mean over the baseline (maximum
 * likelihood). Default limits are its quantiles at `tail` and 1 - `tail`, where the lower one is the smallest
 * gap with P(gap <= g) >= tail: a point strictly below has probability under `tail`, a point strictly above
 * at most `tail`. The centre is then the fitted median (m with q^(m+1) = 1/2, about 0.69 of the mean). On
 * request mean +- 3 sqrt(mean (1 + mean)), clipped at 0, with the mean as centre (Benneyan).
 *
 * More trouble gives SHORTER gaps: the alarm side is down. With a mean under about 740 the lower limit is 0
 * and no single short gap can signal (`falseAlarm.low` is 0): add a run rule. `z` is the normal score of the
 * gap's mid-probability P(< g) + P(= g)/2 for probability limits, and (gap - mean)/sigma for three-sigma
 * limits.
 *
 * Assumes independent cases with one probability in control. Gaps that count up to and INCLUDING the event
 * must be shifted by 1 first. The gap still running after the last event isn't complete and isn't an input.
 *
 * Edges: fewer than two gaps in the baseline, or only gaps of 0, is a stated outcome.
 *
 * @param input.gaps whole numbers of 0 or more, in time order
 * @param input.baseline 0-based positions, both ends included; default all
 * @param input.limits default 'probability'
 * @param input.tail probability for each side of the probability limits, default 0.00135
 * @throws RangeError if a gap isn't a whole number of 0 or more, `tail` isn't in (0, 0.5), or the baseline
 * lies outside
 *
 * Source: Benneyan, Health Care Management Science 4 (2001) 305-318; Montgomery, Introduction to Statistical
 * Quality Control, section 7.3.
 */
export function gChart(input: {
  gaps: readonly number[];
  baseline?: BaselineRange;
  limits?: 'probability' | 'three-sigma';
  tail?: number;
}): Outcome<GChart> {
  const { gaps, limits = 'probability', tail = NORMAL_TAIL_AT_THREE } = input;
  const method =
    limits === 'probability'
      ? 'g chart, probability limits, gap 0 counts'
      : 'g chart, 3-sigma limits, gap 0 counts';
  for (const [i, gap] of gaps.entries()) {
    if (!Number.isInteger(gap) || gap < 0) {
      throw new RangeError(`gChart: gaps[${i}] must be a whole number of 0 or more, found ${gap}.`);
    }
  }
  if (!(tail > 0 && tail < 0.5))
    throw new RangeError(`gChart: tail must be between 0 and 0.5, found ${tail}.`);
  const range = resolveBaseline('gChart', gaps.length, input.baseline);
  const used = gaps.slice(range.first, range.last + 1);
  if (used.length < 2)
    return notComputable(method, `The baseline has ${used.length} gaps; at least 2 are needed.`);
  const meanGap = used.reduce((a, b) => a + b, 0) / used.length;
  if (meanGap === 0) return notComputable(method, 'Every gap of the baseline is 0: each case was an event.');

  const logQ = -Math.log1p(1 / meanGap);
  const cumulative = (g: number) => (g < 0 ? 0 : -Math.expm1((g + 1) * logQ));
  const quantile = (p: number) => {
    const g = Math.max(0, Math.ceil(Math.log1p(-p) / logQ) - 1);
    return g > 0 && cumulative(g - 1) >= p ? g - 1 : g;
  };
  const sigma = Math.sqrt(meanGap * (1 + meanGap));
  const byQuantile = limits === 'probability';
  const centre = byQuantile ? Math.max(0, -Math.LN2 / logQ - 1) : meanGap;
  const lower = byQuantile ? quantile(tail) : Math.max(0, meanGap - 3 * sigma);
  const upper = byQuantile ? quantile(1 - tail) : meanGap + 3 * sigma;
  const points = gaps.map((value, index): ChartPoint => {
    // The smaller tail of the two is used, so that a very long gap keeps its score.
    const above = Math.exp((value + 1) * logQ) + (Math.exp(value * logQ) - Math.exp((value + 1) * logQ)) / 2;
    const score = above < 0.5 ? normalQuantile(above, 'upper') : normalQuantile(1 - above, 'lower');
    return { index, value, centre, lower, upper, sigma, z: byQuantile ? score : (value - meanGap) / sigma };
  });
  return computed(method, {
    points,
    centre,
    centreIs: byQuantile ? ('fitted median' as const) : ('mean' as const),
    meanGap,
    limits,
    falseAlarm: {
      low: cumulative(Math.ceil(lower) - 1),
      high: Math.exp((Math.floor(upper) + 1) * logQ),
    },
    baseline: { ...range, points: used.length },
  });
}
