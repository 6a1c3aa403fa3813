/**
 * Draws a baseline from a series, then hands on the values after it, standardised by the baseline's mean and
 * standard deviation (divisor n - 1); with `baselineValues` undefined the values are handed on as they are
 * (centre 0 and sigma 1 known).
 */
export function standardised(next: () => number, baselineValues: number | undefined): () => number {
  if (baselineValues === undefined) return next;
  let mean = 0;
  let squares = 0;
  for (let i = 1; i <= baselineValues; i += 1) {
    const value = next();
    const off = value - mean;
    mean += off / i;
    squares += off * (value - mean);
  }
  const sd = Math.sqrt(squares / (baselineValues - 1));
  return () => (next() - mean) / sd;
}
