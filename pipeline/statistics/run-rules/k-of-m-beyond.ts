import { plottedPoints, type Signal, type ZSeries } from './signal.ts';

/**
 * Fires at a point strictly beyond `limit` standard deviations when, of it and the `m - 1` plotted points
 * before it, at least `k` lie beyond the limit on that same side. The newest point must itself be beyond;
 * fewer than m points are enough if k of them are beyond. The rules named after this pattern fix k, m and
 * limit.
 */
export function kOfMBeyond(z: ZSeries, k: number, m: number, limit: number): Signal[] {
  const points = plottedPoints(z);
  const signals: Signal[] = [];
  for (const [at, point] of points.entries()) {
    if (Math.abs(point.z) <= limit) continue;
    const sign = Math.sign(point.z);
    const beyond = points.slice(Math.max(0, at - m + 1), at + 1).filter((p) => p.z * sign > limit);
    if (beyond.length < k) continue;
    signals.push({
      index: point.index,
      from: beyond.at(-k)!.index,
      side: sign > 0 ? 'high' : 'low',
    });
  }
  return signals;
}
