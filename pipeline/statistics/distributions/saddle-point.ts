import gammaln from '@stdlib/math-base-special-gammaln';

const LOG_SQRT_TWO_PI = 0.9189385332046728;

/** Error of Stirling's formula for log(n!), n > 0: log(n!) - log(sqrt(2 pi n) (n/e)^n). */
export function stirlingError(n: number): number {
  if (n <= 15) return gammaln(n + 1) - (n + 0.5) * Math.log(n) + n - LOG_SQRT_TWO_PI;
  const s = n * n;
  return (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / s) / s) / s) / s) / n;
}

/** Deviance part x log(x/m) + m - x, for x >= 0 and m > 0, without cancellation where x is near m. */
export function deviancePart(x: number, m: number): number {
  if (x === 0) return m;
  if (Math.abs(x - m) >= 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const v = (x - m) / (x + m);
  let sum = (x - m) * v;
  let term = 2 * x * v;
  for (let j = 1; j < 1000; j++) {
    term *= v * v;
    const next = sum + term / (2 * j + 1);
    if (next === sum) return sum;
    sum = next;
  }
  return sum;
}

/**
 * Log of the Poisson probability e^-m m^x / x!, for real x >= 0 and mean m > 0 in counts.
 *
 * Loader's saddle-point form: relative accuracy of the probability near 1e-15 also for counts of a million,
 * where the textbook form loses nine digits. Edge: x = 0 gives -m.
 *
 * Source: C. Loader, "Fast and accurate computation of binomial probabilities" (2000); the algorithm behind
 * R's dpois, dbinom.
 */
export function poissonLogProbability(x: number, m: number): number {
  if (x === 0) return -m;
  return -stirlingError(x) - deviancePart(x, m) - LOG_SQRT_TWO_PI - 0.5 * Math.log(x);
}

/**
 * Log of the binomial probability of x successes in n trials (0 <= x <= n, real values allowed), each with
 * probability p in (0, 1). Pass `q` = 1 - p where it is known without cancellation. Accuracy, edges and
 * source as `poissonLogProbability`.
 */
export function binomialLogProbability(x: number, n: number, p: number, q = 1 - p): number {
  if (x === 0) return n === 0 ? 0 : p < 0.1 ? -deviancePart(n, n * q) - n * p : n * Math.log(q);
  if (x === n) return q < 0.1 ? -deviancePart(n, n * p) - n * q : n * Math.log(p);
  const fit = stirlingError(n) - stirlingError(x) - stirlingError(n - x);
  const distance = deviancePart(x, n * p) + deviancePart(n - x, n * q);
  return fit - distance - LOG_SQRT_TWO_PI - 0.5 * (Math.log(x) + Math.log1p(-x / n));
}
