import { stirlingError } from './saddle-point.ts';

/**
 * Sum of log(a + j step) for j = 0 .. n - 1, for a > 0, step >= 0: the logarithm of a rising factorial, as in
 * the negative binomial and beta-binomial distributions. Exact also where step goes to 0 (n log a), and fast
 * for n of a million.
 */
export function sumOfLogs(a: number, step: number, n: number): number {
  const z = a / step;
  if (n === 0) return 0;
  if (!(z < 1e300)) return n * Math.log(a);
  // log gamma(z + n) - log gamma(z), by Stirling's formula with its error, the leading parts taken together.
  return n * Math.log(a) + (z + n - 0.5) * Math.log1p(n / z) - n + stirlingError(z + n) - stirlingError(z);
}

/**
 * Sum of 1 / (a + j step) for j = 0 .. n - 1: the derivative of `sumOfLogs` in a. Euler-Maclaurin beyond
 * fifty terms, to 1e-12.
 */
export function sumOfReciprocals(a: number, step: number, n: number): number {
  const direct = Math.min(n, 50);
  let sum = 0;
  for (let j = 0; j < direct; j++) sum += 1 / (a + j * step);
  if (n === direct) return sum;
  const [start, end] = [a + direct * step, a + n * step];
  const count = n - direct;
  const integral = step * count < 1e-12 * start ? count / start : Math.log1p((count * step) / start) / step;
  const ends = (1 / start - 1 / end) / 2 + (step / 12) * (1 / start ** 2 - 1 / end ** 2);
  return sum + integral + ends - (step ** 3 / 120) * (1 / start ** 4 - 1 / end ** 4);
}
