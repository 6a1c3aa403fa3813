import erfc from '@stdlib/math-base-special-erfc';
import normalQuantileOfLibrary from '@stdlib/stats-base-dists-normal-quantile';
import type { Tail } from './tail.ts';

/**
 * Tail probability of the standard normal distribution at `z` (in standard deviations): P(Z <= z) or P(Z >=
 * z). Relative accuracy 1e-14 down to 1e-300 in either tail. Edges: z = Infinity and -Infinity give 0 and 1.
 */
export function normalTail(z: number, tail: Tail): number {
  return 0.5 * erfc((tail === 'upper' ? z : -z) / Math.SQRT2);
}

/** Two-sided p-value of a standard normal statistic: P(|Z| >= |z|). */
export function normalTwoSided(z: number): number {
  return Math.min(1, erfc(Math.abs(z) / Math.SQRT2));
}

/**
 * The z whose tail probability is `p` (0 <= p <= 1). The library's start is good to 4e-7 only (at p = 1e-12);
 * Halley steps on the tail itself bring it to full precision. Edges: p = 0 and 1 give the infinite ends.
 */
export function normalQuantile(p: number, tail: Tail): number {
  if (p > 0.5) return -normalQuantile(1 - p, tail);
  let z = normalQuantileOfLibrary(p, 0, 1);
  if (Number.isFinite(z)) {
    for (let i = 0; i < 3; i++) {
      const tailHere = normalTail(z, 'lower');
      const density = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
      const newton = (tailHere - p) / density;
      z -= newton / (1 + (z * newton) / 2);
    }
  }
  return tail === 'lower' ? z : -z;
}

/** Two-sided standard normal multiplier for an interval of this level, 1.959964 for 0.95. */
export function normalMultiplier(level: number): number {
  return normalQuantile((1 - level) / 2, 'upper');
}
