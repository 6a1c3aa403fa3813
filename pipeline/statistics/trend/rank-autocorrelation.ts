import { midRanks } from './mid-ranks.ts';
import { theilSen } from './theil-sen.ts';

/** Values of evenly spaced periods in time order; null where a period has none. */
export type SpacedSeries = readonly (number | null)[];

/** Number of values that aren't missing. */
export function countPresent(values: SpacedSeries): number {
  return values.filter((value) => value !== null).length;
}

/**
 * Autocorrelation of the ranks of a series at any lag, its Theil-Sen slope taken out first on request.
 *
 * Missing periods keep their place: a lag pairs only periods that both have a value, and the sum is scaled up
 * to the number of pairs of a full series. Returns null where the ranks don't vary.
 */
export function rankAutocorrelation(
  values: SpacedSeries,
  detrend: 'none' | 'theil-sen',
): ((lag: number) => number) | null {
  const positions = values.flatMap((value, i) => (value === null ? [] : [i]));
  const present = positions.map((i) => values[i]!);
  const n = present.length;
  let slope = 0;
  if (detrend === 'theil-sen') {
    const trend = theilSen({ times: positions, values: present });
    if (!trend.computable) return null;
    slope = trend.slope;
  }
  const ranks = midRanks(present.map((value, k) => value - slope * positions[k]!));
  const centred = new Map(positions.map((i, k) => [i, ranks[k]! - (n + 1) / 2]));
  const spread = [...centred.values()].reduce((sum, r) => sum + r * r, 0);
  if (spread === 0) return null;
  return (lag) => {
    let product = 0;
    let pairs = 0;
    for (const [i, rank] of centred) {
      const earlier = centred.get(i - lag);
      if (earlier === undefined) continue;
      product += rank * earlier;
      pairs += 1;
    }
    return pairs === 0 ? 0 : (product * (n - lag)) / pairs / spread;
  };
}
