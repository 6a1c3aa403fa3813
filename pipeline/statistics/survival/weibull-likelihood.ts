import type { SurvivalData } from './survival-data.ts';

export interface WeibullInput extends SurvivalData {
  /** Case weights, 0 or more (how many subjects a row stands for); default 1. */
  weights?: readonly number[];
  /** Stratum of each subject: strata share the shape and have a scale each; default one stratum, 'all'. */
  strata?: readonly string[];
  /** Of the intervals, default 0.95. */
  level?: number;
}

/**
 * One stratum's contribution to the Weibull log-likelihood, with times divided by the longest one so that
 * powers never overflow.
 */
export interface WeibullStratum {
  name: string;
  subjects: number;
  events: number;
  /** Weighted number of events. */
  weight: number;
  /** Longest duration, the unit of the scaled times. */
  longest: number;
  /** Weighted sum of scaled log event times. */
  logTimes: number;
  /** Longest time less entry, weighted and scaled: time at risk. */
  ends: { log: number; weight: number }[];
  entries: { log: number; weight: number }[];
}

export function weibullStrata(input: WeibullInput): WeibullStratum[] {
  const { durations, observed, entry, weights, strata } = input;
  const names = [...new Set(durations.map((_, i) => strata?.[i] ?? 'all'))];
  return names.map((name): WeibullStratum => {
    const members = durations.map((_, i) => i).filter((i) => (strata?.[i] ?? 'all') === name);
    const longest = Math.max(...members.map((i) => durations[i]!));
    const log = (time: number) => Math.log(time / longest);
    const weightOf = (i: number) => weights?.[i] ?? 1;
    const failed = members.filter((i) => observed[i] === 1 && weightOf(i) > 0);
    return {
      name,
      subjects: members.length,
      events: failed.length,
      weight: failed.reduce((sum, i) => sum + weightOf(i), 0),
      longest,
      logTimes: failed.reduce((sum, i) => sum + weightOf(i) * log(durations[i]!), 0),
      ends: members.map((i) => ({ log: log(durations[i]!), weight: weightOf(i) })),
      entries: members
        .filter((i) => (entry?.[i] ?? 0) > 0)
        .map((i) => ({ log: log(entry![i]!), weight: weightOf(i) })),
    };
  });
}

/** Sum over the stratum of weight x (t^k - entry^k) (log t)^power, in scaled times. */
export function powerSum(stratum: WeibullStratum, shape: number, power: 0 | 1 | 2): number {
  let sum = 0;
  for (const { log, weight } of stratum.ends) sum += weight * Math.exp(shape * log) * log ** power;
  for (const { log, weight } of stratum.entries) sum -= weight * Math.exp(shape * log) * log ** power;
  return sum;
}

/**
 * Log-likelihood at a shape with the stratum's best scale for it; 0 for a stratum without events, whose best
 * scale is infinite.
 */
export function profileAt(stratum: WeibullStratum, shape: number): number {
  const { weight, logTimes, longest } = stratum;
  if (weight === 0) return 0;
  const best = Math.log(weight) - Math.log(powerSum(stratum, shape, 0)) - 1;
  return weight * (Math.log(shape) + best - Math.log(longest)) + (shape - 1) * logTimes;
}

/** Log-likelihood at a shape and a scale in the unit of the durations. */
export function likelihoodAt(stratum: WeibullStratum, shape: number, scale: number): number {
  const { weight, logTimes, longest } = stratum;
  const logScale = Math.log(scale / longest);
  const hazard = powerSum(stratum, shape, 0) * Math.exp(-shape * logScale);
  return weight * (Math.log(shape) - shape * logScale - Math.log(longest)) + (shape - 1) * logTimes - hazard;
}

export function bestScale(stratum: WeibullStratum, shape: number): number | null {
  if (stratum.weight === 0) return null;
  return stratum.longest * (powerSum(stratum, shape, 0) / stratum.weight) ** (1 / shape);
}
