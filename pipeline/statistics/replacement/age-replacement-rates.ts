import gammaln from '@stdlib/math-base-special-gammaln';
import { gammaTail } from '../distributions/gamma.ts';

export interface ReplacementPolicy {
  /** Weibull shape and scale of the age at failure; scale in the unit of the ages. */
  shape: number;
  scale: number;
  /** Age at which a planned replacement is made; Infinity is run to failure. */
  age: number;
}

export interface ReplacementRates {
  /** Mean time between replacements of either kind. */
  meanCycle: number;
  /** Failures and planned replacements per unit of time in the long run. */
  failures: number;
  planned: number;
  /** Probability of reaching the planned age. */
  survival: number;
}

/**
 * What a policy of replacement at an age (or at failure, if that comes first) does in the long run, under a
 * Weibull age at failure.
 *
 * Mean cycle = integral of survival from 0 to the age = scale Gamma(1 + 1/shape) P(1/shape,
 * (age/scale)^shape), P the regularised incomplete gamma function. Each replacement, planned or after a
 * failure, sets the age back to 0 (a cleaning that makes as good as new); the work itself takes no time on
 * this clock.
 *
 * @throws RangeError if shape, scale or age isn't above 0
 *
 * Source: Barlow and Proschan, Mathematical Theory of Reliability (1965), chapter 4, section 2.
 *
 * @example
 * ageReplacementRates({ shape: 1, scale: 10, age: 10 }); // mean cycle 6.32, failures 0.1
 */
export function ageReplacementRates(policy: ReplacementPolicy): ReplacementRates {
  const { shape, scale, age } = policy;
  for (const [name, value] of Object.entries({ shape, scale, age })) {
    if (!(value > 0)) throw new RangeError(`ageReplacementRates: ${name} must be above 0, found ${value}.`);
  }
  const x = (age / scale) ** shape;
  const meanLife = scale * Math.exp(gammaln(1 + 1 / shape));
  const meanCycle = meanLife * gammaTail(x, 1 / shape, 'lower');
  return {
    meanCycle,
    failures: -Math.expm1(-x) / meanCycle,
    planned: Math.exp(-x) / meanCycle,
    survival: Math.exp(-x),
  };
}
