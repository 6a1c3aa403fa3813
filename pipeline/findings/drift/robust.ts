/** Factor that makes the median absolute deviation of normal values their standard deviation: 1/0.67449 (Hampel, JASA 69 (1974) 383-393). */
const MAD_FACTOR = 1.4826;

/** Median; undefined for no values. Short lists, of which the site's days are made, are sorted by insertion, which is several times faster. */
export function median(values: readonly number[]): number | undefined {
  const n = values.length;
  if (n === 0) return undefined;
  const sorted = n <= SHORT ? inserted(values) : Float64Array.from(values).sort();
  const middle = n >> 1;
  return n % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

const SHORT = 24;

function inserted(values: readonly number[]): number[] {
  const sorted: number[] = [];
  for (const value of values) {
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
