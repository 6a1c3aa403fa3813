import type { ConditionalCount } from './conditional-count.ts';

/** Relative tolerance within which two probabilities are a tie: that of R's fisher.test and binom.test. */
const TIE = 1e-7;

/** Two-sided "minimum-likelihood" p-value of a count at ratio 1, with what its mid-p variants subtract. */
export interface MinimumLikelihood {
  /** Probability of all values no likelier than the observed one. */
  pValue: number;
  /** Probability of the observed value. */
  own: number;
  /** Probability of all values exactly as likely as the observed one, itself included. */
  tied: number;
}

/**
 * Sums the probabilities of all values no likelier than the observed one. The distribution has one mode, so
 * those are two tails; each is summed from its inner end outwards.
 *
 * @param count - a conditional count with at least two possible values
 * @param observed - its observed value
 *
 * Source: G. H. Freeman & J. H. Halton, Biometrika 38 (1951) 141-149; tie tolerance as in R 4.2.2.
 */
export function minimumLikelihood(count: ConditionalCount, observed: number): MinimumLikelihood {
  const limit = count.logProbability(observed) + Math.log1p(TIE);
  const tieFloor = count.logProbability(observed) + Math.log1p(-TIE);
  const atMost = (k: number) => count.logProbability(k) <= limit;
  // The mode parts the range: log probabilities rise up to it and fall after it.
  const mode = firstWhere(count.low, count.high, (k) => count.nextOverThis(k) <= 1);
  const firstAbove = firstWhere(count.low, mode + 1, (k) => k > mode || !atMost(k));
  const firstBelow = Math.max(
    firstAbove,
    firstWhere(mode, count.high + 1, (k) => k > mode && atMost(k)),
  );
  const left = tailFrom(count, firstAbove - 1, -1, tieFloor);
  const right = tailFrom(count, firstBelow, 1, tieFloor);
  return {
    pValue: Math.min(1, Math.max(Number.MIN_VALUE, left.sum + right.sum)),
    own: Math.exp(count.logProbability(observed)),
    tied: left.tied + right.tied,
  };
}

/** The first k in start..end for which `holds` is true; `end` if for none. `holds` must not change back. */
function firstWhere(start: number, end: number, holds: (k: number) => boolean): number {
  let [low, high] = [start, end];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function tailFrom(count: ConditionalCount, start: number, step: 1 | -1, tieFloor: number) {
  let [sum, tied] = [0, 0];
  if (start < count.low || start > count.high) return { sum, tied };
  let p = Math.exp(count.logProbability(start));
  const innermost = p;
  for (let k = start; k >= count.low && k <= count.high && p > innermost * 1e-20; k += step) {
    sum += p;
    if (Math.log(p) >= tieFloor) tied += p;
    if (step === 1) p *= k < count.high ? count.nextOverThis(k) : 0;
    else p /= k > count.low ? count.nextOverThis(k - 1) : Number.POSITIVE_INFINITY;
  }
  return { sum, tied };
}
