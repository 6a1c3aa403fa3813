/**
 * Holm's control of the chance of any false rejection in a family of tests.
 *
 * Done: the i-th smallest of m p-values, times m - i + 1, made monotone from the smallest up and capped at 1. Rejecting where that is at or
 * under a level keeps the chance of one false rejection or more at or under it, however the tests depend on each other.
 *
 * Edges: an empty family gives an empty list; ties get equal adjusted values. Results stand in the order of the input.
 *
 * @param pValues - of the whole family, each in [0, 1]
 * @throws RangeError for a p-value outside [0, 1], NaN included
 *
 * Source: S. Holm, Scandinavian Journal of Statistics 6 (1979) 65-70.
 *
 * @example holm([0.04, 0.01]) gives adjusted [0.04, 0.02]
 */
export function holm(pValues: readonly number[]): { method: string; adjusted: number[] } {
  for (const p of pValues) {
    if (!(p >= 0 && p <= 1)) throw new RangeError(`holm: p-values must lie in [0, 1], found ${p}`);
  }
  const order = pValues.map((_, i) => i).sort((a, b) => pValues[a]! - pValues[b]!);
  const adjusted = new Array<number>(pValues.length);
  let most = 0;
  order.forEach((index, rank) => {
    most = Math.max(most, Math.min(1, pValues[index]! * (pValues.length - rank)));
    adjusted[index] = most;
  });
  return { method: 'Holm', adjusted };
}
