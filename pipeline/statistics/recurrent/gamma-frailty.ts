import { sumOfLogs } from '../distributions/rising-sums.ts';

/** Counts of clusters with their exposures: a cluster's count is Poisson with mean rate x frailty x exposure. */
export interface FrailCounts {
  events: Float64Array;
  exposure: Float64Array;
}

/**
 * Largest log marginal likelihood over the rate, at a given spread of the frailties (gamma, mean 1, standard deviation `spread`), and the log rate
 * there. Terms that depend neither on rate nor on spread are left out. There must be an event, and exposure wherever one is.
 *
 * @param start log rate from which to search
 */
export function bestRate(
  counts: FrailCounts,
  spread: number,
  start: number,
): { logRate: number; logLikelihood: number } {
  const { events, exposure } = counts;
  const dispersion = spread * spread;
  let logRate = start;
  for (let step = 0; step < 60; step++) {
    const rate = Math.exp(logRate);
    let slope = 0;
    let information = 0;
    for (let i = 0; i < events.length; i++) {
      const mean = rate * exposure[i]!;
      const drag = 1 + dispersion * mean;
      slope += (events[i]! - mean) / drag;
      information += (mean * (1 + dispersion * events[i]!)) / (drag * drag);
    }
    // The slope falls with the log rate; steps are held to 2 where the information is all but gone.
    const move = Math.max(-2, Math.min(2, slope / Math.max(information, 1e-12)));
    logRate += move;
    if (Math.abs(move) < 1e-11) break;
  }
  return { logRate, logLikelihood: frailLogLikelihood(counts, spread, logRate) };
}

/** Log marginal likelihood of the counts, without terms that depend neither on rate nor on spread. */
export function frailLogLikelihood(
  { events, exposure }: FrailCounts,
  spread: number,
  logRate: number,
): number {
  const dispersion = spread * spread;
  const rate = Math.exp(logRate);
  let sum = 0;
  for (let i = 0; i < events.length; i++) {
    const d = events[i]!;
    const mean = rate * exposure[i]!;
    sum += d * logRate;
    if (dispersion === 0) sum -= mean;
    else sum += sumOfLogs(1, dispersion, d) - (d + 1 / dispersion) * Math.log1p(dispersion * mean);
  }
  return sum;
}

/** Largest spread looked at: a standard deviation of five times the mean. */
const LARGEST_SPREAD = 5;

/** Largest log marginal likelihood over rate and spread. A gain of under 1e-9 over no spread is rounding: no spread. */
export function bestRateAndSpread(
  counts: FrailCounts,
  start: number,
): { logRate: number; spread: number; logLikelihood: number } {
  const none = { ...bestRate(counts, 0, start), spread: 0 };
  if (counts.events.length < 2) return none;
  const at = (spread: number) => ({ ...bestRate(counts, spread, none.logRate), spread });
  let best = none;
  const steps = [0.1, 0.2, 0.35, 0.5, 0.75, 1, 1.4, 2, 3, LARGEST_SPREAD];
  for (const spread of steps) {
    const tried = at(spread);
    if (tried.logLikelihood > best.logLikelihood) best = tried;
  }
  const index = steps.indexOf(best.spread);
  let low = index <= 0 ? 0 : steps[index - 1]!;
  let high = steps[Math.min(steps.length - 1, index + 1)]!;
  const share = (Math.sqrt(5) - 1) / 2;
  let left = at(high - share * (high - low));
  let right = at(low + share * (high - low));
  for (let i = 0; i < 45; i++) {
    if (left.logLikelihood >= right.logLikelihood) {
      high = right.spread;
      right = left;
      left = at(high - share * (high - low));
    } else {
      low = left.spread;
      left = right;
      right = at(low + share * (high - low));
    }
  }
  const top = left.logLikelihood >= right.logLikelihood ? left : right;
  if (top.logLikelihood > best.logLikelihood) best = top;
  return best.logLikelihood > none.logLikelihood + 1e-9 ? best : none;
}
