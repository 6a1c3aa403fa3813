/**
 * Benjamini-Hochberg control of the false discovery rate over a family of tests.
 *
 * Done: the i-th smallest of m p-values is rejected if it, or a larger one, is at or under (i / m) level; the
 * adjusted p-value is the least level at which that holds. Assumed: independent tests, or positive dependence
 * (Benjamini & Yekutieli 2001).
 *
 * Edges: an empty family gives empty lists; ties get equal adjusted values; adjusted values are at most 1.
 * Equality counts as rejected, with a relative tolerance of 1e-12 for rounding. Results stand in the order of
 * the input.
 *
 * @param pValues - of the whole family, each in [0, 1]
 * @param level - false discovery rate, in (0, 1); default 0.05
 * @throws RangeError for a p-value outside [0, 1], NaN included, or a level outside (0, 1)
 *
 * Source: Y. Benjamini & Y. Hochberg, JRSS B 57 (1995) 289-300.
 *
 * @example benjaminiHochberg([0.04, 0.01]) gives adjusted [0.04, 0.02], rejected [true, true]
 */
export function benjaminiHochberg(
  pValues: readonly number[],
  level = 0.05,
): { method: string; level: number; adjusted: number[]; rejected: boolean[] } {
  if (!(level > 0 && level < 1))
    throw new RangeError(`benjaminiHochberg: level must lie in (0, 1), found ${level}`);
  for (const p of pValues) {
    if (!(p >= 0 && p <= 1))
      throw new RangeError(`benjaminiHochberg: p-values must lie in [0, 1], found ${p}`);
  }
  const order = pValues.map((_, i) => i).sort((a, b) => pValues[b]! - pValues[a]!);
  const adjusted = new Array<number>(pValues.length);
  let least = 1;
  order.forEach((index, fromTop) => {
    const rank = pValues.length - fromTop;
    least = Math.min(least, pValues[index]! * (pValues.length / rank));
    adjusted[index] = least;
  });
  return {
    method: 'Benjamini-Hochberg',
    level,
    adjusted,
    rejected: adjusted.map((p) => p <= level * (1 + 1e-12)),
  };
}
