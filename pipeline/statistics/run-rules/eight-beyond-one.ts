import { runOf } from './run-of.ts';
import type { Signal, ZSeries } from './signal.ts';

/**
 * Eight plotted points in a row strictly beyond 1 sigma, on either side: typical of two populations on one
 * chart.
 *
 * @param z distances in standard deviations, null where a period has no point; returned positions are 0-based
 *
 * Source: Nelson, "The Shewhart control chart: tests for special causes", Journal of Quality Technology 16
 * (1984) 237-239, test 8.
 */
export function eightBeyondOne(z: ZSeries): Signal[] {
  return runOf(z, 8, (value) => (Math.abs(value) > 1 ? 'both' : null));
}
