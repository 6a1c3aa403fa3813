import { betaQuantile } from '../distributions/beta.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { checkProportion } from './check-proportion.ts';

/**
 * Exact (Clopper-Pearson) interval for a proportion: the probabilities that neither one-sided binomial test
 * rejects at (1 - level) / 2.
 *
 * Estimated: events / trials. Assumed: independent trials with one probability. Coverage is at least the
 * level, often more.
 *
 * Edges: 0 events start at exactly 0, all events end at exactly 1, the other end stays at (1 - level) / 2; no
 * trials is not computable.
 *
 * @param events - whole number, 0 to trials
 * @param trials - whole number
 * @param level - of the two-sided interval, in (0, 1)
 * @throws RangeError for counts or levels that can't be
 *
 * Source: C. J. Clopper & E. S. Pearson, Biometrika 26 (1934) 404-413; method 5 in Newcombe, Statistics in
 * Medicine 17 (1998) 857-872.
 *
 * @example 0 of 20: 0 to 0.1684
 */
export function clopperPearsonInterval(
  events: number,
  trials: number,
  level = 0.95,
): Outcome<{ estimate: number; interval: Interval }> {
  const method = 'Clopper-Pearson exact interval';
  checkProportion(events, trials, level, 'clopperPearsonInterval');
  if (trials === 0) return notComputable(method, 'There are no trials.');
  const alpha = (1 - level) / 2;
  return computed(method, {
    estimate: events / trials,
    interval: {
      low: events === 0 ? 0 : betaQuantile(alpha, events, trials - events + 1, 'lower'),
      high: events === trials ? 1 : betaQuantile(alpha, events + 1, trials - events, 'upper'),
      level,
    },
  });
}
