import { runOf } from './run-of.ts';
import { sideOfCentre } from './side-of-centre.ts';
import type { Signal, ZSeries } from './signal.ts';

/**
 * Eight plotted points in a row on one side of the centre line; fires at the eighth and at each further one.
 * A point on the line breaks the run.
 *
 * Nelson's rule wants nine: `nineOnOneSide`. The two are often mixed up.
 *
 * @param z distances in standard deviations, null where a period has no point; returned positions are 0-based
 *
 * Source: Western Electric, Statistical Quality Control Handbook (1956), test 4.
 */
export function eightOnOneSide(z: ZSeries): Signal[] {
  return runOf(z, 8, sideOfCentre);
}
