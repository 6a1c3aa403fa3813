import { plottedPoints, type Signal, type ZSeries } from './signal.ts';

/**
 * Fourteen plotted points in a row alternating up and down: thirteen steps, each of the opposite sign to the
 * one before. Two equal neighbours break the run. Typical of two sources plotted in turn.
 *
 * @param z distances in standard deviations, null where a period has no point; returned positions are 0-based
 *
 * Source: Nelson, "The Shewhart control chart: tests for special causes", Journal of Quality Technology 16
 * (1984) 237-239, test 4.
 */
export function fourteenAlternating(z: ZSeries): Signal[] {
  const points = plottedPoints(z);
  const signals: Signal[] = [];
  let steps = 0;
  let previous = 0;
  for (let at = 1; at < points.length; at += 1) {
    const direction = Math.sign(points[at]!.z - points[at - 1]!.z);
    if (direction === 0) steps = 0;
    else steps = direction === -previous ? steps + 1 : 1;
    previous = direction;
    if (steps >= 13) signals.push({ index: points[at]!.index, from: points[at - 13]!.index, side: 'both' });
  }
  return signals;
}
