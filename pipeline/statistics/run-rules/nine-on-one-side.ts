import { runOf } from './run-of.ts';
import { sideOfCentre } from './side-of-centre.ts';
import type { Signal, ZSeries } from './signal.ts';

/**
 * Nine plotted points in a row on one side of the centre line; fires at the ninth and at each further one. A
 * point on the line breaks the run.
 *
 * @param z distances in standard deviations, null where a period has no point; returned positions are 0-based
 *
 * Source: Nelson, "The Shewhart control chart: tests for special causes", Journal of Quality Technology 16
 * (1984) 237-239, test 2.
 */
export function nineOnOneSide(z: ZSeries): Signal[] {
  return runOf(z, 9, sideOfCentre);
}
