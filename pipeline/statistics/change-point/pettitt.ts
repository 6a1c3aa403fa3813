import { computed, notComputable, type Outcome } from '../result.ts';
import { median } from '../trend/check-series.ts';
import { midRanks } from '../trend/mid-ranks.ts';

export interface Pettitt {
  /** Largest |U_t|. */
  k: number;
  /** U at the change: below 0 where values are higher after it. */
  u: number;
  /** 0-based position of the last value before the change; the first of several equal ones. */
  lastBefore: number;
  /** Approximate two-sided p-value 2 exp(-6 K^2 / (n^3 + n^2)), at most 1. */
  pValue: number;
  medianBefore: number;
  medianAfter: number;
  n: number;
}

/**
 * Pettitt's test for one change of level at an unknown place, by ranks.
 *
 * Tested: that all values come from one distribution, against a shift after the position t where |U_t| is
 * largest, with U_t = 2 x sum of ranks up to t - t(n + 1). Outliers count by rank only.
 *
 * Assumes independent values: autocorrelation or a slope inflates K, and a slope is then "found" as a change
 * in its middle. `stepOrSlope` tells them apart. The p-value is an approximation, good for small p (it is
 * conservative near 1, where it is capped).
 *
 * Edges: fewer than 4 values or a constant series is a stated outcome; equal values share midranks.
 *
 * @param input.values in time order
 * @throws RangeError if a value isn't finite
 *
 * Source: Pettitt, "A non-parametric approach to the change-point problem", Applied Statistics 28 (1979)
 * 126-135.
 */
export function pettitt(input: { values: readonly number[] }): Outcome<Pettitt> {
  const method = 'Pettitt change point';
  const { values } = input;
  const n = values.length;
  for (const [i, value] of values.entries()) {
    if (!Number.isFinite(value))
      throw new RangeError(`pettitt: values[${i}] must be a finite number, found ${value}.`);
  }
  if (n < 4) return notComputable(method, `${n} values are too few for a change; 4 are needed.`);
  if (values.every((value) => value === values[0])) return notComputable(method, 'All values are equal.');
  const ranks = midRanks(values);
  let sum = 0;
  let u = 0;
  let lastBefore = 0;
  for (let t = 0; t < n - 1; t += 1) {
    sum += 2 * ranks[t]! - (n + 1);
    if (Math.abs(sum) > Math.abs(u)) {
      u = sum;
      lastBefore = t;
    }
  }
  const k = Math.abs(u);
  return computed(method, {
    k,
    u,
    lastBefore,
    pValue: Math.min(1, 2 * Math.exp((-6 * k * k) / (n ** 3 + n ** 2))),
    medianBefore: median(values.slice(0, lastBefore + 1)),
    medianAfter: median(values.slice(lastBefore + 1)),
    n,
  });
}
