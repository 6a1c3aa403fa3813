/** Sizes of the groups of equal values, groups of one left out. */
export function tieSizes(values: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].filter((size) => size > 1);
}

/**
 * Variance of Kendall's S for n independent pairs without association, ties on either or both sides allowed.
 *
 * With ties on one side it is the usual [n(n-1)(2n+5) - sum t(t-1)(2t+5)] / 18.
 *
 * Source: Kendall, Rank Correlation Methods, 4th ed. (1970), equation 4.3.
 */
export function kendallVariance(
  n: number,
  tiesOfOne: readonly number[],
  tiesOfOther: readonly number[] = [],
): number {
  const sum = (ties: readonly number[], term: (t: number) => number) => ties.reduce((a, t) => a + term(t), 0);
  const triple = (t: number) => t * (t - 1) * (2 * t + 5);
  const pairs = (t: number) => t * (t - 1);
  const threes = (t: number) => t * (t - 1) * (t - 2);
  let variance = (triple(n) - sum(tiesOfOne, triple) - sum(tiesOfOther, triple)) / 18;
  if (n > 2) variance += (sum(tiesOfOne, threes) * sum(tiesOfOther, threes)) / (9 * threes(n));
  if (n > 1) variance += (sum(tiesOfOne, pairs) * sum(tiesOfOther, pairs)) / (2 * pairs(n));
  return variance;
}
