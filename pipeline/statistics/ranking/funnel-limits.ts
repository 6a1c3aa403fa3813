import { binomialTail } from '../distributions/beta.ts';
import { poissonTail } from '../distributions/gamma.ts';
import { binomialLogProbability, poissonLogProbability } from '../distributions/saddle-point.ts';
import { computed, notComputable, type Outcome } from '../result.ts';

export interface FunnelLimits {
  low: number;
  high: number;
  /** Probability beyond each limit if the unit is at the target. */
  tail: number;
}

/**
 * Exact control limits of a funnel plot for a proportion or a rate, interpolated between whole counts.
 *
 * Done: for a unit of this size at the target, the interpolated binomial (proportion) or Poisson (rate)
 * quantiles at `tail` and 1 - `tail`, over the size. Assumed: independent trials or Poisson events, no spread
 * between units beyond chance. The tails 0.025 and 0.001 stand for the two and three sigma lines; these are
 * exact tails, not two and three standard errors. Many units make many chances to fall outside.
 *
 * Edges: limits are clipped at 0, and at 1 for a proportion. Size 0, or a target of 0 (or 1 for a
 * proportion), is not computable.
 *
 * @param target - the proportion in [0, 1], or the rate per unit of size, of all units together
 * @param size - trials (whole number), or exposure for a rate
 * @param options - `kind`; `tail` beyond each limit, in (0, 0.5), default 0.025
 * @throws RangeError for a target, size or tail that can't be
 *
 * Source: D. J. Spiegelhalter, Statistics in Medicine 24 (2005) 1185-1202, Appendix A.1.1.
 *
 * @example Target 0.1, 50 trials: 0.01386 to 0.17972 (the normal approximation says 0.01685 to 0.18315)
 */
export function funnelLimits(
  target: number,
  size: number,
  options: { kind: 'proportion' | 'rate'; tail?: number },
): Outcome<FunnelLimits> {
  const { kind, tail = 0.025 } = options;
  const method = `funnel limits, interpolated exact ${kind === 'proportion' ? 'binomial' : 'Poisson'} quantiles`;
  if (!(tail > 0 && tail < 0.5))
    throw new RangeError(`funnelLimits: tail must lie in (0, 0.5), found ${tail}`);
  const most = kind === 'proportion' ? 1 : Number.MAX_VALUE;
  if (!(target >= 0 && target <= most))
    throw new RangeError(`funnelLimits: target can't be ${target} for a ${kind}`);
  if (
    !(size >= 0 && size < Number.POSITIVE_INFINITY) ||
    (kind === 'proportion' && !Number.isSafeInteger(size))
  ) {
    throw new RangeError(`funnelLimits: size can't be ${size} for a ${kind}`);
  }
  if (size === 0) return notComputable(method, 'The size is 0.');
  if (target === 0 || (target === 1 && kind === 'proportion')) {
    return notComputable(method, `A target of ${target} leaves no room for chance.`);
  }
  const mean = target * size;
  // No count of interest lies 40 standard deviations out.
  const highest = kind === 'proportion' ? size : Math.ceil(mean + 40 * Math.sqrt(mean) + 1000);
  const lower = (r: number) =>
    kind === 'proportion' ? binomialTail(r, size, target, 'lower') : poissonTail(r, mean, 'lower');
  /** P(R > r). */
  const beyond = (r: number) =>
    kind === 'proportion' ? binomialTail(r + 1, size, target, 'upper') : poissonTail(r + 1, mean, 'upper');
  const at = (r: number) =>
    Math.exp(
      kind === 'proportion' ? binomialLogProbability(r, size, target) : poissonLogProbability(r, mean),
    );
  const low = firstCount(highest, (r) => lower(r) >= tail);
  const high = firstCount(highest, (r) => beyond(r) <= tail);
  return computed(method, {
    low: Math.max(0, (low - (lower(low) - tail) / at(low)) / size),
    high: Math.min(most, (high - (tail - beyond(high)) / at(high)) / size),
    tail,
  });
}

/** The least whole number from 0 to `highest` for which `holds` is true; it stays true beyond. */
function firstCount(highest: number, holds: (r: number) => boolean): number {
  let [low, high] = [0, highest];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
