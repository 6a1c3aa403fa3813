import { EwmaVariance } from '../control-charts/ewma-variance.ts';

/** A chart whose limit is left open: its statistic is compared with the limit. */
export type ChartKind = { kind: 'ewma'; lambda: number } | { kind: 'cusum'; allowance: number };

/** Takes standardised values one by one and returns the statistic that signals when above the limit. */
export type Monitor = (z: number) => number;

/**
 * Starts monitors of one kind: |EWMA| in its exact, time-varying standard deviation under this
 * autocorrelation, or the larger of the two CUSUM sums in sigma. `start` is the head start of both sums, in
 * sigma (CUSUM only).
 *
 * @throws RangeError if lambda isn't in (0, 1] or allowance is negative
 */
export function monitors(chart: ChartKind, autocorrelation: number, start = 0): () => Monitor {
  if (chart.kind === 'cusum') {
    const { allowance } = chart;
    if (!(allowance >= 0)) throw new RangeError(`monitors: allowance must be 0 or more, found ${allowance}.`);
    return () => {
      let high = start;
      let low = start;
      return (z) => {
        high = Math.max(0, high + z - allowance);
        low = Math.max(0, low - z - allowance);
        return Math.max(high, low);
      };
    };
  }
  const { lambda } = chart;
  if (!(lambda > 0 && lambda <= 1))
    throw new RangeError(`monitors: lambda must be in (0, 1], found ${lambda}.`);
  const settled = Math.sqrt(EwmaVariance.limit(lambda, autocorrelation));
  const variance = new EwmaVariance(lambda, autocorrelation);
  const sds: number[] = [];
  while (sds.length === 0 || Math.abs(sds.at(-1)! / settled - 1) > 1e-10)
    sds.push(Math.sqrt(variance.afterValue()));
  return () => {
    let level = 0;
    let at = 0;
    return (z) => {
      level += lambda * (z - level);
      const sd = sds[at] ?? settled;
      at += 1;
      return Math.abs(level) / sd;
    };
  };
}
