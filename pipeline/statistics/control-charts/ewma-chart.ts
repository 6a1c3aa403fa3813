import { computed, notComputable, type Outcome } from '../result.ts';
import type { ChartPoint } from './chart-result.ts';
import { EwmaVariance } from './ewma-variance.ts';
import { type Reference, type ReferenceUsed, resolveReference, type Series } from './reference-level.ts';

export interface EwmaInput {
  values: Series;
  /** Weight of the newest value, in (0, 1]. */
  lambda: number;
  /** Half-width of the limits in standard deviations of the EWMA (L). */
  limit: number;
  /** Centre and sigma given, or a frozen baseline; default: all values, sigma by standard deviation. */
  reference?: Reference;
  /** Correlation of neighbouring values for which the limits are drawn, in (-1, 1); default 0. */
  autocorrelation?: number;
}

export interface EwmaChart {
  /**
   * `value` is the EWMA, `sigma` its standard deviation at that point, `z` its distance from the centre in
   * those; limits at +- `limit` of z.
   */
  points: ChartPoint[];
  reference: ReferenceUsed;
  lambda: number;
  limit: number;
  autocorrelation: number;
  /** 0-based positions strictly outside the limits. */
  signals: number[];
}

/**
 * EWMA chart: a weighted mean that forgets by the factor 1 - lambda per value, for small lasting shifts and
 * slow drifts.
 *
 * Z_i = (1 - lambda) Z_(i-1) + lambda x_i from Z_0 = centre; limits centre +- L sd(Z_i) with the exact,
 * time-varying standard deviation (narrow at the start). With `autocorrelation` that is the one of an AR(1)
 * series (`EwmaVariance`); take L from `ewmaLimitForRunLength` with the same value, since autocorrelation
 * changes the run length even at correct sd.
 *
 * Assumes centre and sigma known: on a short baseline false alarms come more often than L promises. Under
 * positive autocorrelation sigma must be by standard deviation (the default here), not by moving range.
 *
 * Edges: null is a missing value: value and z are null, the EWMA holds its level. Signals don't restart the
 * EWMA. A baseline without usable sigma is a stated outcome.
 *
 * @throws RangeError if lambda isn't in (0, 1], limit isn't above 0, autocorrelation isn't in (-1, 1), a
 * value isn't finite or null, or the baseline lies outside
 *
 * Source: Lucas and Saccucci, Technometrics 32 (1990) 1-12; NIST/SEMATECH e-Handbook 6.3.2.4; Schmid (1997)
 * for AR(1) values.
 */
export function ewmaChart(input: EwmaInput): Outcome<EwmaChart> {
  const { values, lambda, limit, reference: given = {}, autocorrelation = 0 } = input;
  const method = 'EWMA chart, time-varying limits';
  if (!(lambda > 0 && lambda <= 1))
    throw new RangeError(`ewmaChart: lambda must be in (0, 1], found ${lambda}.`);
  if (!(limit > 0)) throw new RangeError(`ewmaChart: limit must be above 0, found ${limit}.`);
  if (!(Math.abs(autocorrelation) < 1)) {
    throw new RangeError(`ewmaChart: autocorrelation must be in (-1, 1), found ${autocorrelation}.`);
  }
  const reference = resolveReference('ewmaChart', values, given, 'standard-deviation');
  if (typeof reference === 'string') return notComputable(method, reference);
  const { centre, sigma } = reference;
  const variance = new EwmaVariance(lambda, autocorrelation);
  const points: ChartPoint[] = [];
  const signals: number[] = [];
  let level = centre;
  for (const [index, value] of values.entries()) {
    if (value === null) {
      variance.afterGap();
      points.push({
        index,
        value,
        centre,
        lower: null,
        upper: null,
        sigma: null,
        z: null,
        missing: 'no value',
      });
      continue;
    }
    level += lambda * (value - level);
    const sd = sigma * Math.sqrt(variance.afterValue());
    const z = (level - centre) / sd;
    points.push({
      index,
      value: level,
      centre,
      lower: centre - limit * sd,
      upper: centre + limit * sd,
      sigma: sd,
      z,
    });
    if (Math.abs(z) > limit) signals.push(index);
  }
  return computed(method, { points, reference, lambda, limit, autocorrelation, signals });
}
