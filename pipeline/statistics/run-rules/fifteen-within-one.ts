import { runOf } from './run-of.ts';
import type { Signal, ZSeries } from './signal.ts';

/**
 * Fifteen plotted points in a row within 1 sigma of the centre line, either side: the limits are too wide for
 * the data (rounding, strata averaged away, or a sigma from noisier days). A point on the 1-sigma line is
 * within, since it isn't beyond.
 *
 * @param z distances in standard deviations, null where a period has no point; returned positions are 0-based
 *
 * Source: Nelson, "The Shewhart control chart: tests for special causes", Journal of Quality Technology 16
 * (1984) 237-239, test 7.
 */
export function fifteenWithinOne(z: ZSeries): Signal[] {
  return runOf(z, 15, (value) => (Math.abs(value) <= 1 ? 'both' : null));
}
