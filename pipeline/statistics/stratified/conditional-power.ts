import {
  binomialCount,
  type ConditionalCount,
  hypergeometricCount,
} from '../distributions/conditional-count.ts';
import { normalMultiplier, normalTail } from '../distributions/normal.ts';
import { tiltedMoments } from '../distributions/tilted-sum.ts';

/** Margins of one stratum: all that was observed except how the events fell to the groups. */
export interface StratumMargins {
  /** Trials (whole numbers) in the `events-of-trials` design, time in `events-over-time`. */
  exposed: number;
  unexposed: number;
  /** Events of both groups together, a whole number. */
  events: number;
}

export interface PowerOptions {
  /**
   * `events-of-trials`: odds ratio, hypergeometric counts. `events-over-time`: rate ratio, binomial counts.
   */
  design: 'events-of-trials' | 'events-over-time';
  /** Two-sided level of the test, in (0, 1); default 0.05. */
  alpha?: number;
  /** Power asked for, in (0.5, 1); default 0.8. */
  power?: number;
  /** Factor of at least 1 on all variances, for series whose days are not independent; default 1. */
  varianceInflation?: number;
}

/** The design of a comparison, ready for power calculations. */
export interface PowerSetting {
  /** Counts of the strata that carry information. */
  counts: ConditionalCount[];
  events: number;
  alpha: number;
  power: number;
  varianceInflation: number;
  /** Standard normal multiplier of the two-sided test. */
  multiplier: number;
  /** Moments of the exposed events at ratio 1, the variance inflated. */
  null: { mean: number; variance: number };
  /**
   * False where even the most extreme outcome in favour of a ratio above 1 (below 1) has an exact one-sided p
   * above alpha / 2.
   */
  attainable: { above: boolean; below: boolean };
}

/**
 * Checks the margins and options and prepares them.
 *
 * @throws RangeError for margins or options that can't be
 */
export function powerSetting(
  strata: readonly StratumMargins[],
  options: PowerOptions,
  caller: string,
): PowerSetting {
  const { design, alpha = 0.05, power = 0.8, varianceInflation = 1 } = options;
  if (!(alpha > 0 && alpha < 1)) throw new RangeError(`${caller}: alpha must lie in (0, 1), found ${alpha}`);
  if (!(power > 0.5 && power < 1))
    throw new RangeError(`${caller}: power must lie in (0.5, 1), found ${power}`);
  if (!(varianceInflation >= 1 && varianceInflation < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${caller}: varianceInflation must be at least 1, found ${varianceInflation}`);
  }
  const counts: ConditionalCount[] = [];
  let events = 0;
  for (const stratum of strata) {
    checkMargins(stratum, design, caller);
    if (stratum.exposed === 0 || stratum.unexposed === 0 || stratum.events === 0) continue;
    const count =
      design === 'events-of-trials'
        ? hypergeometricCount(stratum.events, stratum.exposed, stratum.unexposed)
        : binomialCount(stratum.events, stratum.exposed, stratum.unexposed);
    if (count.low === count.high) continue;
    counts.push(count);
    events += stratum.events;
  }
  const reaches = (end: 'low' | 'high') =>
    counts.length > 0 &&
    counts.reduce((sum, count) => sum + count.logProbability(count[end]), 0) <= Math.log(alpha / 2);
  return {
    counts,
    events,
    alpha,
    power,
    varianceInflation,
    multiplier: normalMultiplier(1 - alpha),
    null: momentsOfSum(counts, 0, varianceInflation),
    attainable: { above: reaches('high'), below: reaches('low') },
  };
}

/** Mean and inflated variance of the exposed events at this log ratio. */
export function momentsOfSum(counts: ConditionalCount[], logRatio: number, varianceInflation: number) {
  const sum = { mean: 0, variance: 0 };
  for (const count of counts) {
    const { mean, variance } = tiltedMoments(count, logRatio);
    sum.mean += mean;
    sum.variance += variance * varianceInflation;
  }
  return sum;
}

/** Chance that the two-sided score test rejects on the side of this ratio (normal limit). */
export function powerAt(setting: PowerSetting, logRatio: number): number {
  const there = momentsOfSum(setting.counts, logRatio, setting.varianceInflation);
  const distance =
    Math.abs(there.mean - setting.null.mean) - setting.multiplier * Math.sqrt(setting.null.variance);
  if (there.variance === 0) return distance > 0 ? 1 : 0;
  return normalTail(distance / Math.sqrt(there.variance), 'lower');
}

function checkMargins(stratum: StratumMargins, design: PowerOptions['design'], caller: string): void {
  const { exposed, unexposed, events } = stratum;
  const whole = design === 'events-of-trials' ? [exposed, unexposed, events] : [events];
  const valid =
    [exposed, unexposed, events].every((x) => x >= 0 && x < Number.POSITIVE_INFINITY) &&
    whole.every((x) => Number.isSafeInteger(x)) &&
    (design === 'events-over-time' || events <= exposed + unexposed);
  if (!valid) throw new RangeError(`${caller}: margins can't be ${JSON.stringify(stratum)} for ${design}`);
}
