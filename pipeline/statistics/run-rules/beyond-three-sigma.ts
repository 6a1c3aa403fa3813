import { kOfMBeyond } from './k-of-m-beyond.ts';
import type { Signal, ZSeries } from './signal.ts';

/**
 * One point strictly beyond 3 sigma. A point on the limit does not fire.
 *
 * @param z distances in standard deviations, null where a period has no point; returned positions are 0-based
 *
 * Source: Western Electric, Statistical Quality Control Handbook (1956), test 1; Nelson, Journal of Quality
 * Technology 16 (1984) 237-239, test 1.
 */
export function beyondThreeSigma(z: ZSeries): Signal[] {
  return kOfMBeyond(z, 1, 1, 3);
}
