import { computed, notComputable, type Outcome } from '../result.ts';
import { type Reference, type ReferenceUsed, resolveReference, type Series } from './reference-level.ts';

export interface CusumPoint {
  index: number;
  /** The plotted value itself, null where missing. */
  value: number | null;
  /** Upper and lower sums, in sigma, both 0 or more; held at a missing value. */
  high: number;
  low: number;
  /**
   * 0-based position of the first value since the sum was last 0: the usual estimate of when the shift began;
   * null while the sum is 0. With a head start a sum may hold nothing else at first.
   */
  highSince: number | null;
  lowSince: number | null;
  signal: 'high' | 'low' | 'both' | null;
}

export interface CusumInput {
  values: Series;
  /** Allowance k in sigma: half the shift to be found fast. */
  allowance: number;
  /** Decision interval h in sigma. */
  decision: number;
  /** Start of both sums as a share of h, in [0, 1); 0.5 is the usual fast initial response; default 0. */
  headStart?: number;
  /** Centre and sigma given, or a frozen baseline; default: all values, sigma by standard deviation. */
  reference?: Reference;
}

export interface CusumChart {
  points: CusumPoint[];
  reference: ReferenceUsed;
  allowance: number;
  decision: number;
  headStart: number;
  signals: number[];
}

/**
 * Tabular CUSUM, both sides: high_i = max(0, high_(i-1) + z_i - k), low_i = max(0, low_(i-1) - z_i - k) with
 * z_i = (x_i - centre)/sigma; a signal is a sum strictly above h.
 *
 * Assumes known centre and sigma and independent values; for AR(1) values take h from
 * `cusumLimitForRunLength`.
 *
 * Edges: a signal doesn't reset the sums. A null value holds both sums. A baseline without usable sigma is a
 * stated outcome.
 *
 * @throws RangeError if allowance is negative, decision isn't above 0, headStart isn't in [0, 1), a value
 * isn't finite or null, or the baseline lies outside
 *
 * Source: Page, Biometrika 41 (1954) 100-115; Lucas and Crosier, Technometrics 24 (1982) 199-205 (head
 * start); NIST/SEMATECH e-Handbook 6.3.2.3.
 */
export function cusumChart(input: CusumInput): Outcome<CusumChart> {
  const { values, allowance, decision, headStart = 0, reference: given = {} } = input;
  const method = 'tabular CUSUM, two-sided';
  if (!(allowance >= 0)) throw new RangeError(`cusumChart: allowance must be 0 or more, found ${allowance}.`);
  if (!(decision > 0)) throw new RangeError(`cusumChart: decision must be above 0, found ${decision}.`);
  if (!(headStart >= 0 && headStart < 1)) {
    throw new RangeError(`cusumChart: headStart must be in [0, 1), found ${headStart}.`);
  }
  const reference = resolveReference('cusumChart', values, given, 'standard-deviation');
  if (typeof reference === 'string') return notComputable(method, reference);
  const points: CusumPoint[] = [];
  let [high, low] = [headStart * decision, headStart * decision];
  let highSince: number | null = null;
  let lowSince: number | null = null;
  for (const [index, value] of values.entries()) {
    if (value !== null) {
      const z = (value - reference.centre) / reference.sigma;
      high = Math.max(0, high + z - allowance);
      low = Math.max(0, low - z - allowance);
      highSince = high === 0 ? null : (highSince ?? index);
      lowSince = low === 0 ? null : (lowSince ?? index);
    }
    points.push({
      index,
      value,
      high,
      low,
      highSince,
      lowSince,
      signal: value === null ? null : side(high, low, decision),
    });
  }
  const signals = points.filter((p) => p.signal !== null).map((p) => p.index);
  return computed(method, { points, reference, allowance, decision, headStart, signals });
}

function side(high: number, low: number, decision: number): CusumPoint['signal'] {
  if (high > decision) return low > decision ? 'both' : 'high';
  return low > decision ? 'low' : null;
}
