import { findRoot } from './find-root.ts';
import { normalQuantile } from './normal.ts';
import { poissonLogProbability } from './saddle-point.ts';
import type { Tail } from './tail.ts';

/**
 * Tail probability of the gamma distribution with this shape (> 0) and scale 1 at `x`: P(X <= x) or P(X >=
 * x).
 *
 * Power series below shape + 1, continued fraction above it (the smaller tail is the one computed, the other
 * is its complement), each times the Poisson probability in saddle-point form. The library's incomplete gamma
 * function is not used: it returns 0.50027 instead of 0.49987 at shape = x = 1e6. Edges: x <= 0 and Infinity
 * give 0 and 1.
 *
 * Source: Abramowitz & Stegun (1964) 6.5.29 and 6.5.31, Lentz's evaluation; prefactor Loader (2000).
 */
export function gammaTail(x: number, shape: number, tail: Tail): number {
  if (x <= 0) return tail === 'lower' ? 0 : 1;
  if (x === Number.POSITIVE_INFINITY) return tail === 'lower' ? 1 : 0;
  const below = x < shape + 1;
  const smaller = below ? lowerBySeries(x, shape) : upperByFraction(x, shape);
  return below === (tail === 'lower') ? smaller : 1 - smaller;
}

function lowerBySeries(x: number, shape: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > sum * 1e-17; n++) {
    term *= x / (shape + n);
    sum += term;
  }
  return sum * Math.exp(poissonLogProbability(shape, x));
}

function upperByFraction(x: number, shape: number): number {
  const tiny = 1e-300;
  let b = x + 1 - shape;
  let c = 1 / tiny;
  let d = 1 / (Math.abs(b) < tiny ? tiny : b);
  let h = d;
  for (let i = 1; i < 10_000_000; i++) {
    const a = -i * (i - shape);
    b += 2;
    d = a * d + b;
    d = 1 / (Math.abs(d) < tiny ? tiny : d);
    c = b + a / c;
    if (Math.abs(c) < tiny) c = tiny;
    h *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return shape * Math.exp(poissonLogProbability(shape, x)) * h;
}

/**
 * The x whose tail probability is `p` (0 <= p <= 1) in the gamma distribution with this shape and scale 1,
 * solved on the logarithm of the tail asked for. Relative accuracy 1e-12. Edges: p = 0 and 1 give 0 or
 * Infinity.
 */
export function gammaQuantile(p: number, shape: number, tail: Tail): number {
  if (p === (tail === 'lower' ? 0 : 1)) return 0;
  if (p === (tail === 'lower' ? 1 : 0)) return Number.POSITIVE_INFINITY;
  const z = normalQuantile(p, tail);
  const start = shape * (1 - 1 / (9 * shape) + z / (3 * Math.sqrt(shape))) ** 3;
  const distance = (u: number) => Math.log(gammaTail(Math.exp(u), shape, tail) / p);
  const centre = Math.log(Math.max(start, 1e-3 * shape));
  let reach = 0.05;
  while (distance(centre - reach) * distance(centre + reach) > 0) reach *= 2;
  return Math.exp(findRoot(distance, centre - reach, centre + reach, 1e-15));
}

/**
 * Tail probability of the chi-square distribution with `df` degrees of freedom (> 0) at `x`; see `gammaTail`.
 */
export function chiSquareTail(x: number, df: number, tail: Tail): number {
  return gammaTail(x / 2, df / 2, tail);
}

/**
 * The x whose tail probability is `p` in the chi-square distribution with `df` degrees of freedom; see
 * `gammaQuantile`.
 */
export function chiSquareQuantile(p: number, df: number, tail: Tail): number {
  return 2 * gammaQuantile(p, df / 2, tail);
}

/**
 * Tail probability of a Poisson count with this mean (> 0): P(X <= k) for `lower`, P(X >= k) for `upper`, k a
 * whole number.
 */
export function poissonTail(k: number, mean: number, tail: Tail): number {
  if (tail === 'lower') return k < 0 ? 0 : gammaTail(mean, k + 1, 'upper');
  return k <= 0 ? 1 : gammaTail(mean, k, 'lower');
}
