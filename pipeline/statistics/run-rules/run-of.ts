import { plottedPoints, type Signal, type ZSeries } from './signal.ts';

/**
 * Fires at each point that ends an unbroken run of at least `length` plotted points of the same class.
 * `classOf` names a point's class, or null where it belongs to none and breaks the run. The rules named after
 * this pattern fix length and class.
 */
export function runOf(z: ZSeries, length: number, classOf: (z: number) => Signal['side'] | null): Signal[] {
  const points = plottedPoints(z);
  const signals: Signal[] = [];
  let run = 0;
  let previous: Signal['side'] | null = null;
  for (const [at, point] of points.entries()) {
    const side = classOf(point.z);
    if (side === null) run = 0;
    else run = side === previous ? run + 1 : 1;
    previous = side;
    if (side !== null && run >= length) {
      signals.push({ index: point.index, from: points[at - length + 1]!.index, side });
    }
  }
  return signals;
}
