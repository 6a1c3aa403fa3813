/**
 * A column whose part independent of the earlier ones is under this share of its length counts as dependent.
 */
const SHARE = 1e-8;

/**
 * The first column that is (to rounding) a linear combination of those before it, or 0 throughout; undefined
 * if there is none. Modified Gram-Schmidt, done twice for accuracy.
 *
 * @param rows - the design, one array of covariates per row, after any centring
 */
export function dependentColumn(rows: readonly (readonly number[])[]): number | undefined {
  const width = rows[0]?.length ?? 0;
  const basis: number[][] = [];
  for (let j = 0; j < width; j++) {
    const column = rows.map((row) => row[j]!);
    const length = lengthOf(column);
    if (length === 0) return j;
    for (let pass = 0; pass < 2; pass++) {
      for (const direction of basis) {
        const along = column.reduce((sum, x, i) => sum + x * direction[i]!, 0);
        for (let i = 0; i < column.length; i++) column[i]! -= along * direction[i]!;
      }
    }
    const rest = lengthOf(column);
    if (rest <= SHARE * length) return j;
    basis.push(column.map((x) => x / rest));
  }
  return undefined;
}

/** Euclidean length, scaled so that neither squares nor long columns overflow. */
function lengthOf(column: readonly number[]): number {
  const largest = column.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  if (largest === 0) return 0;
  return largest * Math.sqrt(column.reduce((sum, x) => sum + (x / largest) ** 2, 0));
}
