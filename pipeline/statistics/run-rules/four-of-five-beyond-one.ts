import { kOfMBeyond } from './k-of-m-beyond.ts';
import type { Signal, ZSeries } from './signal.ts';

/**
 * Four of five consecutive plotted points strictly beyond 1 sigma on the same side. The newest point must
 * itself be beyond; four points in a row are enough at the start of the series.
 *
 * @param z distances in standard deviations, null where a period has no point; returned positions are 0-based
 *
 * Source: Western Electric, Statistical Quality Control Handbook (1956), test 3; Nelson, Journal of Quality
 * Technology 16 (1984) 237-239, test 6.
 */
export function fourOfFiveBeyondOne(z: ZSeries): Signal[] {
  return kOfMBeyond(z, 4, 5, 1);
}
