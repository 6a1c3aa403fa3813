import { normalMultiplier } from '../distributions/normal.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { checkProportion } from './check-proportion.ts';

/**
 * Wilson's score interval for a proportion, without continuity correction.
 *
 * Estimated: events / trials. Assumed: independent trials with one probability. The interval holds the
 * probabilities that the score test does not reject; its coverage is near the level on average, not at least
 * the level for each probability.
 *
 * Edges: 0 events start at exactly 0, all events end at exactly 1; no trials is not computable.
 *
 * @param events - whole number, 0 to trials
 * @param trials - whole number
 * @param level - of the two-sided interval, in (0, 1)
 * @throws RangeError for counts or levels that can't be
 *
 * Source: E. B. Wilson, JASA 22 (1927) 209-212; method 3 in R. G. Newcombe, Statistics in Medicine 17 (1998)
 * 857-872.
 *
 * @example 81 of 263: 0.2553 to 0.3662
 */
export function wilsonInterval(
  events: number,
  trials: number,
  level = 0.95,
): Outcome<{ estimate: number; interval: Interval }> {
  const method = 'Wilson score interval';
  checkProportion(events, trials, level, 'wilsonInterval');
  if (trials === 0) return notComputable(method, 'There are no trials.');
  const z = normalMultiplier(level);
  const missed = trials - events;
  const half = z * Math.sqrt((events * missed) / trials + (z * z) / 4);
  const centre = events + (z * z) / 2;
  return computed(method, {
    estimate: events / trials,
    interval: {
      // The root with the difference is written as product over sum, so that few events lose no digits.
      low: events === 0 ? 0 : (events * events) / trials / (centre + half),
      high: missed === 0 ? 1 : (centre + half) / (trials + z * z),
      level,
    },
  });
}
