/** Factor that makes the median absolute deviation of normal values their standard deviation: 1/0.67449 (Hampel, JASA 69 (1974) 383-393). */
export const MAD_FACTOR = 1.4826;

/**
 * The median of `statistics`; undefined for no values. Short lists, of which the site's days are made, are sorted by insertion, longer ones only as far as the middle: several times faster.
 */
export function median(values: ArrayLike<number>): number | undefined {
  const n = values.length;
  if (n === 0) return undefined;
  const middle = n >> 1;
  if (n > SHORT) {
    const partly = Float64Array.from(values);
    select(partly, middle);
    if (n % 2 === 1) return partly[middle]!;
    let below = partly[0]!;
    for (let i = 1; i < middle; i++) if (partly[i]! > below) below = partly[i]!;
    return (below + partly[middle]!) / 2;
  }
  const sorted = inserted(values);
  return n % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Puts the value of a rank in its place, smaller ones before it and larger ones after it. Source: Hoare, Communications of the ACM 4 (1961) 321-322 (FIND). */
function select(values: Float64Array, rank: number): void {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[rank]!;
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const kept = values[i]!;
      values[i++] = values[j]!;
      values[j--] = kept;
    }
    if (j < rank) left = i;
    if (i > rank) right = j;
  }
}

const SHORT = 24;

function inserted(values: ArrayLike<number>): number[] {
  const sorted: number[] = [];
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    let i = sorted.length;
    while (i > 0 && sorted[i - 1]! > value) {
      sorted[i] = sorted[i - 1]!;
      i--;
    }
    sorted[i] = value;
  }
  return sorted;
}

/** Standard deviation by the median absolute deviation from the median (or from a stated centre); undefined for no values. */
export function robustSpread(values: readonly number[], centre = median(values)): number | undefined {
  if (centre === undefined) return undefined;
  const off = median(values.map((value) => Math.abs(value - centre)));
  return off === undefined ? undefined : MAD_FACTOR * off;
}

/** Four significant digits, so that files stay small and the same on every machine. */
export function rounded(value: number): number {
  return Number(value.toPrecision(4));
}
