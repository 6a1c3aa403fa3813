import { plottedPoints, type Signal, type ZSeries } from './signal.ts';

/**
 * Six plotted points in a row, each strictly above the one before (or each strictly below): five steps. Two
 * equal neighbours break the run. On a chart whose limits vary from point to point this reads z, not the
 * plotted value.
 *
 * @param z distances in standard deviations, null where a period has no point; returned positions are 0-based
 *
 * Source: Nelson, "The Shewhart control chart: tests for special causes", Journal of Quality Technology 16
 * (1984) 237-239, test 3.
 */
export function sixRisingOrFalling(z: ZSeries): Signal[] {
  const points = plottedPoints(z);
  const signals: Signal[] = [];
  let steps = 0;
  for (let at = 1; at < points.length; at += 1) {
    const direction = Math.sign(points[at]!.z - points[at - 1]!.z);
    if (direction === 0) steps = 0;
    else steps = Math.sign(steps) === direction ? steps + direction : direction;
    if (Math.abs(steps) < 5) continue;
    signals.push({ index: points[at]!.index, from: points[at - 5]!.index, side: steps > 0 ? 'high' : 'low' });
  }
  return signals;
}
