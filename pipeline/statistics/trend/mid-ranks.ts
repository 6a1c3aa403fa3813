/** Ranks from 1 in rising order; equal values share the mean of their ranks. */
export function midRanks(values: readonly number[]): number[] {
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  const ranks = new Array<number>(values.length).fill(0);
  let start = 0;
  while (start < order.length) {
    let end = start;
    while (end < order.length && values[order[end]!] === values[order[start]!]) end += 1;
    for (let k = start; k < end; k += 1) ranks[order[k]!] = (start + 1 + end) / 2;
    start = end;
  }
  return ranks;
}
