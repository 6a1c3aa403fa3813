import { findRoot } from '../distributions/find-root.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { ageReplacementRates } from './age-replacement-rates.ts';

export interface AgeReplacementInput {
  /** Weibull shape and scale of the age at failure. */
  shape: number;
  scale: number;
  /**
   * Cost of a planned replacement and of a failure with the replacement it brings, same currency, both above
   * 0.
   */
  plannedCost: number;
  failureCost: number;
  /** Costs within this share of the best count as good enough; default 0.05. */
  tolerance?: number;
}

export interface ReplacementOptimum {
  age: number;
  /** Cost per unit of time at that age. */
  costRate: number;
  /** Probability of reaching that age without failure. */
  survival: number;
  /** What it saves against run to failure, as a share of the cost of run to failure. */
  saving: number;
  /** Ages whose cost lies within the tolerance of the best; `high` is Infinity where run to failure does. */
  goodEnough: { low: number; high: number; tolerance: number };
}

export interface AgeReplacement {
  optimum: ReplacementOptimum | null;
  /** Why there is none: planned replacement at no age beats run to failure. */
  noOptimum: string | null;
  runToFailureCostRate: number;
}

/**
 * Best age for planned replacement under a Weibull age at failure: the one with the least long-run cost per
 * unit of time.
 *
 * C(t) = [planned R(t) + failure F(t)] / integral of R from 0 to t. The optimum solves h(t) integral R - F(t)
 * = planned/(failure - planned), and C there is (failure - planned) h(t). Assumes the rates of
 * `ageReplacementRates` (every replacement makes as good as new) and constant costs.
 *
 * The cost is flat around the optimum: read the range of ages that are good enough rather than the age. Shape
 * and scale are taken as known; repeat with the ends of their intervals.
 *
 * Edges: shape at or under 1 (the hazard doesn't rise) or a failure that costs no more than a planned
 * replacement has no finite optimum, which is returned as such together with the cost of run to failure. An
 * optimum over a million scales away, where nothing survives, counts as none.
 *
 * @throws RangeError if shape, scale, a cost or tolerance isn't above 0, or one isn't finite
 *
 * Source: Barlow and Hunter, "Optimum preventive maintenance policies", Operations Research 8 (1960) 90-100;
 * Barlow and Proschan, Mathematical Theory of Reliability (1965), chapter 4.
 *
 * @example
 * ageReplacement({ shape: 2.5, scale: 1000, plannedCost: 1, failureCost: 5 }); // age 493.05, cost rate 0.003462
 */
export function ageReplacement(input: AgeReplacementInput): Outcome<AgeReplacement> {
  const { shape, scale, plannedCost, failureCost, tolerance = 0.05 } = input;
  const method = 'age replacement (Barlow-Hunter), Weibull ages';
  for (const [name, value] of Object.entries({ shape, scale, plannedCost, failureCost, tolerance })) {
    if (!(value > 0) || !Number.isFinite(value)) {
      throw new RangeError(`ageReplacement: ${name} must be above 0 and finite, found ${value}.`);
    }
  }
  const costRate = (age: number) => {
    const rates = ageReplacementRates({ shape, scale, age });
    return plannedCost * rates.planned + failureCost * rates.failures;
  };
  const runToFailureCostRate = costRate(Number.POSITIVE_INFINITY);
  if (!(runToFailureCostRate > 0 && Number.isFinite(runToFailureCostRate))) {
    return notComputable(method, `The mean age at failure can't be computed for shape ${shape}.`);
  }
  const none = (noOptimum: string) => computed(method, { optimum: null, noOptimum, runToFailureCostRate });
  if (shape <= 1)
    return none(
      'The shape is not above 1: the hazard does not rise with age, so replacing earlier does not pay.',
    );
  if (failureCost <= plannedCost) return none('A failure costs no more than a planned replacement.');

  const wanted = plannedCost / (failureCost - plannedCost);
  // In units of the scale and on the logarithm of age; rises with age from -wanted.
  const excess = (logAge: number) => {
    const age = Math.exp(logAge);
    const { meanCycle, failures } = ageReplacementRates({ shape, scale: 1, age });
    return shape * age ** (shape - 1) * meanCycle - failures * meanCycle - wanted;
  };
  const farthest = Math.log(1e6);
  if (excess(farthest) < 0)
    return none('The hazard rises so slowly that planned replacement pays at no practical age.');
  let low = 0;
  while (excess(low) > 0) low -= 1;
  const age = scale * Math.exp(findRoot(excess, low, farthest, 1e-14));
  const best = costRate(age);
  const over = (logAge: number) => costRate(scale * Math.exp(logAge)) / best - 1 - tolerance;
  const at = Math.log(age / scale);
  let below = at - 0.5;
  while (over(below) < 0) below -= 0.5;
  let high = Number.POSITIVE_INFINITY;
  if (runToFailureCostRate / best - 1 > tolerance) {
    let above = at + 0.5;
    while (over(above) < 0) above += 0.5;
    high = scale * Math.exp(findRoot(over, at, above, 1e-12));
  }
  const goodEnough = { low: scale * Math.exp(findRoot(over, below, at, 1e-12)), high, tolerance };
  const { survival } = ageReplacementRates({ shape, scale, age });
  const saving = 1 - best / runToFailureCostRate;
  return computed(method, {
    optimum: { age, costRate: best, survival, saving, goodEnough },
    noOptimum: null,
    runToFailureCostRate,
  });
}
