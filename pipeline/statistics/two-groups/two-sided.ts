import type { ConditionalCount } from '../distributions/conditional-count.ts';
import { minimumLikelihood } from '../distributions/minimum-likelihood.ts';
import type { Interval } from '../result.ts';
import { conditionalInference } from '../stratified/conditional-inference.ts';

/** How the two-sided p-value is made from the two tails. */
export type TwoSidedRule = 'central' | 'minimum-likelihood';

/**
 * Correction for discreteness. `mid-p` takes off half of the observed value's probability; `mid-p-of-ties`
 * (only with `minimum-likelihood`) half of the probability of all values as likely as the observed one.
 */
export type Discreteness = 'exact' | 'mid-p' | 'mid-p-of-ties';

export interface TwoGroupOptions {
  /** Of the interval, in (0, 1); default 0.95. */
  level?: number;
  /** Default `central`: twice the smaller tail, at most 1, so that p-value and interval agree. */
  twoSided?: TwoSidedRule;
  /** Default `exact`. */
  discreteness?: Discreteness;
}

export interface TwoGroupRatio {
  estimate: number;
  interval: Interval;
  /** Two-sided, by the rule asked for. */
  pValue: number;
  pGreater: number;
  pLess: number;
  twoSided: TwoSidedRule;
  discreteness: Discreteness;
}

/** Ratio, interval and p-values from one conditional count; undefined where its distribution is too wide. */
export function twoGroupRatio(
  count: ConditionalCount,
  observed: number,
  options: TwoGroupOptions,
  caller: string,
): TwoGroupRatio | undefined {
  const { level = 0.95, twoSided = 'central', discreteness = 'exact' } = options;
  if (discreteness === 'mid-p-of-ties' && twoSided === 'central') {
    throw new RangeError(`${caller}: mid-p-of-ties is defined for the minimum-likelihood p-value alone`);
  }
  const inference = conditionalInference(
    [count],
    observed,
    level,
    discreteness === 'exact' ? 'exact' : 'mid-p',
  );
  if (inference === undefined) return undefined;
  const { pCentral, ...rest } = inference;
  if (twoSided === 'central') return { ...rest, pValue: pCentral, twoSided, discreteness };
  const { pValue, own, tied } = minimumLikelihood(count, observed);
  const off = discreteness === 'exact' ? 0 : discreteness === 'mid-p' ? own / 2 : tied / 2;
  return { ...rest, pValue: Math.max(Number.MIN_VALUE, pValue - off), twoSided, discreteness };
}
