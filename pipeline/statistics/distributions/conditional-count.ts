import { binomialLogProbability } from './saddle-point.ts';

/**
 * A count on low..high whose distribution tilts with a ratio: P(K = k) is proportional to weight(k) ratio^k.
 * The weights are those of ratio 1, and log-concave, so that each tilted distribution has one mode.
 */
export interface ConditionalCount {
  low: number;
  high: number;
  /** P(K = k + 1) / P(K = k) at ratio 1, for low <= k < high; falls with k. */
  nextOverThis(k: number): number;
  /** Log of P(K = k) at ratio 1. */
  logProbability(k: number): number;
}

/**
 * Exposed events of a two-by-two table given its margins (noncentral hypergeometric; the ratio is the odds
 * ratio).
 *
 * @param events - events in both groups together
 * @param exposedTotal - trials in the exposed group
 * @param unexposedTotal - trials in the other group; all whole numbers, events at most the sum of both totals
 *
 * Source: R. A. Fisher, "The logic of inductive inference", JRSS 98 (1935) 39-82.
 */
export function hypergeometricCount(
  events: number,
  exposedTotal: number,
  unexposedTotal: number,
): ConditionalCount {
  const total = exposedTotal + unexposedTotal;
  const low = Math.max(0, events - unexposedTotal);
  const high = Math.min(events, exposedTotal);
  const share = events / total;
  return {
    low,
    high,
    nextOverThis: (k) => ((exposedTotal - k) / (k + 1)) * ((events - k) / (unexposedTotal - events + k + 1)),
    logProbability: (k) =>
      low === high
        ? 0
        : binomialLogProbability(k, exposedTotal, share) +
          binomialLogProbability(events - k, unexposedTotal, share) -
          binomialLogProbability(events, total, share),
  };
}

/**
 * Exposed events of two Poisson counts given their sum (binomial; the ratio is the rate ratio).
 *
 * @param events - events in both groups together, a whole number
 * @param exposedTime - exposure of the first group, > 0, in any unit
 * @param unexposedTime - exposure of the other group, > 0, same unit
 *
 * Source: J. Przyborowski & H. Wilenski, "Homogeneity of results in testing samples from Poisson series",
 * Biometrika 31 (1940) 313-323.
 */
export function binomialCount(events: number, exposedTime: number, unexposedTime: number): ConditionalCount {
  const time = exposedTime + unexposedTime;
  return {
    low: 0,
    high: events,
    nextOverThis: (k) => ((events - k) / (k + 1)) * (exposedTime / unexposedTime),
    logProbability: (k) => binomialLogProbability(k, events, exposedTime / time, unexposedTime / time),
  };
}
