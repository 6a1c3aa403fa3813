/**
 * P(S >= s) of Kendall's S for n values without ties in random order, exact.
 *
 * S = n(n-1)/2 - 2 x inversions; the distribution of inversions is built value by value.
 *
 * Source: Kendall, Rank Correlation Methods, 4th ed. (1970), section 5.2.
 */
export function kendallUpperTail(s: number, n: number): number {
  const pairs = (n * (n - 1)) / 2;
  let probabilities = new Float64Array(pairs + 1);
  probabilities[0] = 1;
  let most = 0;
  for (let size = 2; size <= n; size += 1) {
    const next = new Float64Array(pairs + 1);
    // A new value adds 0 to size - 1 inversions, each with the same probability.
    let window = 0;
    most += size - 1;
    for (let k = 0; k <= most; k += 1) {
      window += probabilities[k]! - (k >= size ? probabilities[k - size]! : 0);
      next[k] = window / size;
    }
    probabilities = next;
  }
  const mostInversions = Math.floor((pairs - s) / 2);
  let tail = 0;
  for (let k = 0; k <= Math.min(mostInversions, pairs); k += 1) tail += probabilities[k]!;
  return Math.min(1, tail);
}
