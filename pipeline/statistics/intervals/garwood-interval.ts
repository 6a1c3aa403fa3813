import { gammaQuantile } from '../distributions/gamma.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { checkLevel } from './check-proportion.ts';

/**
 * Exact (Garwood) interval for a Poisson rate: the rates that neither one-sided Poisson test rejects at (1 -
 * level) / 2.
 *
 * Estimated: events / exposure, per unit of exposure. Assumed: Poisson count, constant rate. Coverage is at
 * least the level.
 *
 * Edges: 0 events start at exactly 0 and end at the two-sided limit (3.689 / exposure at 95 %, not the
 * one-sided 2.996); no exposure is not computable.
 *
 * @param events - whole number, 0 or more
 * @param exposure - time or chances over which they were counted, any unit, 0 or more; 1 gives the interval
 *   of the mean count
 * @param level - of the two-sided interval, in (0, 1)
 * @throws RangeError for counts, exposures or levels that can't be, and for events in no exposure
 *
 * Source: F. Garwood, Biometrika 28 (1936) 437-442.
 *
 * @example 5 events in exposure 1: 1.623 to 11.668
 */
export function garwoodInterval(
  events: number,
  exposure: number,
  level = 0.95,
): Outcome<{ estimate: number; interval: Interval }> {
  const method = 'Garwood exact Poisson interval';
  if (!Number.isSafeInteger(events) || events < 0) {
    throw new RangeError(`garwoodInterval: events must be a whole number of at least 0, found ${events}`);
  }
  if (!(exposure >= 0 && exposure < Number.POSITIVE_INFINITY) || (exposure === 0 && events > 0)) {
    throw new RangeError(
      `garwoodInterval: exposure must be finite, and above 0 where events occurred, found ${exposure}`,
    );
  }
  checkLevel(level, 'garwoodInterval');
  if (exposure === 0) return notComputable(method, 'There is no exposure.');
  const alpha = (1 - level) / 2;
  return computed(method, {
    estimate: events / exposure,
    interval: {
      low: events === 0 ? 0 : gammaQuantile(alpha, events, 'lower') / exposure,
      high: gammaQuantile(alpha, events + 1, 'upper') / exposure,
      level,
    },
  });
}
