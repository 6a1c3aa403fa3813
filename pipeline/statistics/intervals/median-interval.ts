import { binomialTail } from '../distributions/beta.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';

/**
 * Median with a distribution-free interval: the pair of order statistics, as far in as the level allows.
 *
 * Assumes independent values of one distribution and nothing of its shape; with ties the coverage is at least what is stated. With fewer values than the level
 * needs (6 for 95 %) there is none, and the outcome says so.
 *
 * @param values finite numbers, in any order; not changed
 * @param level coverage that is wanted at least, in (0, 1)
 * @throws RangeError for values or levels that can't be
 *
 * Source: W. J. Conover, Practical Nonparametric Statistics, 3rd edition (1999), section 3.2, confidence interval for a quantile.
 *
 * @example
 * medianInterval([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]); // interval 2 to 9, coverage 0.978515625
 */
export function medianInterval(
  values: readonly number[],
  level = 0.95,
): Outcome<{ estimate: number; interval: Interval; coverage: number; n: number }> {
  const method = 'interval of a median by order statistics';
  if (!(level > 0 && level < 1))
    throw new RangeError(`medianInterval: level must lie in (0, 1), found ${level}`);
  for (const value of values)
    if (!Number.isFinite(value))
      throw new RangeError(`medianInterval: values must be finite, found ${value}`);
  const n = values.length;
  // Below the r-th smallest value lie fewer than r values: on each side the chance is that of at most r - 1 of n.
  let rank = 0;
  while (rank + 1 <= n / 2 && 2 * binomialTail(rank, n, 0.5, 'lower') <= 1 - level) rank++;
  if (rank === 0) return notComputable(method, `${n} values are too few for an interval at level ${level}.`);
  const sorted = values.toSorted((a, b) => a - b);
  const middle = n >> 1;
  return computed(method, {
    estimate: n % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2,
    interval: { low: sorted[rank - 1]!, high: sorted[n - rank]!, level },
    coverage: 1 - 2 * binomialTail(rank - 1, n, 0.5, 'lower'),
    n,
  });
}
