/** Factor that makes the median absolute deviation of normal values their standard deviation: 1/0.67449 (Hampel, JASA 69 (1974) 383-393). */
const MAD_FACTOR = 1.4826;

/** Median; undefined for no values. */
export function median(values: readonly number[]): number | undefined {
  if (values.length === 0) return undefined;
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
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
