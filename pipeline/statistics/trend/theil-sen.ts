import { normalMultiplier } from '../distributions/normal.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { checkTimesAndValues, median, medianOfSorted } from './check-series.ts';
import { kendallVariance, tieSizes } from './kendall-variance.ts';

export interface TheilSenInput {
  times: readonly number[];
  values: readonly number[];
  /** Default 0.95. */
  level?: number;
  /** How the two ranks of the interval are read where they aren't whole; default 'interpolated'. */
  ranks?: 'interpolated' | 'rounded';
  /**
   * Factor on the variance of S for autocorrelation, as `autoregressiveFactor` gives it; default 1
   * (independent values).
   */
  varianceFactor?: number;
}

export interface TheilSen {
  /** Median of the slopes of all pairs, in value per unit of time. */
  slope: number;
  /** Interval for the slope; an end is infinite where there are too few pairs for the level. */
  interval: Interval;
  /** Level of the line at time 0: median(values) - slope x median(times). */
  intercept: number;
  /** Number of pairs with different times. */
  slopes: number;
  n: number;
}

/**
 * Theil-Sen slope of a series: the median of the slopes of all pairs, with Sen's interval.
 *
 * Estimates a linear trend; unmoved by outliers in up to 29 % of the values. The interval assumes independent
 * deviations of one symmetric-or-not distribution; positive autocorrelation makes it too short, for which
 * `varianceFactor` is there.
 *
 * Conventions: pairs with equal times have no slope and are left out; the interval takes the ranks (N - C)/2
 * and (N + C)/2 + 1 among the N slopes, with C = z sqrt(var S), ties in times and values included in var S;
 * ranks are interpolated (Gilbert) or rounded (Sen). A rank outside 1 to N leaves that side unbounded.
 * Intercept by medians; the median of the residuals is another convention.
 *
 * Edges: fewer than two different times is a stated outcome. Values that are all equal have slope 0 with
 * interval 0 to 0. Order of the input is irrelevant. All N slopes are held and sorted: meant for up to about
 * 2000 values.
 *
 * @throws RangeError if lengths differ, a number isn't finite, level isn't in (0, 1) or varianceFactor isn't
 * above 0
 *
 * Source: Sen, Journal of the American Statistical Association 63 (1968) 1379-1389; Gilbert, Statistical
 * Methods for Environmental Pollution Monitoring (1987), section 16.5.
 *
 * @example
 * theilSen({ times: [1, 2, 3, 4, 10, 12, 18], values: [9, 15, 19, 20, 45, 55, 78], level: 0.93, ranks: 'rounded' });
 * // slope 4, interval 3.714 to 4.375, intercept 4
 */
export function theilSen(input: TheilSenInput): Outcome<TheilSen> {
  const { times, values, level = 0.95, ranks = 'interpolated', varianceFactor = 1 } = input;
  checkTimesAndValues('theilSen', times, values);
  if (!(level > 0 && level < 1))
    throw new RangeError(`theilSen: level must be between 0 and 1, found ${level}.`);
  if (!(varianceFactor > 0))
    throw new RangeError(`theilSen: varianceFactor must be above 0, found ${varianceFactor}.`);
  const method = `Theil-Sen slope, ${ranks} ranks`;
  const sorted = pairSlopes(times, values);
  const count = sorted.length;
  if (count === 0) return notComputable(method, 'Fewer than two values at different times.');
  const slope = medianOfSorted(sorted);
  const n = values.length;
  const variance = kendallVariance(n, tieSizes(times), tieSizes(values)) * varianceFactor;
  const half = normalMultiplier(level) * Math.sqrt(variance);
  const low = atRank(sorted, (count - half) / 2, ranks);
  const high = 0 - atRank(sorted.map((s) => 0 - s).reverse(), (count - half) / 2, ranks);
  return computed(method, {
    slope,
    interval: { low, high, level },
    intercept: median(values) - slope * median(times),
    slopes: count,
    n,
  });
}

function pairSlopes(times: readonly number[], values: readonly number[]): Float64Array {
  const slopes = new Float64Array((times.length * (times.length - 1)) / 2);
  let count = 0;
  for (let i = 1; i < times.length; i += 1) {
    for (let j = 0; j < i; j += 1) {
      if (times[i] === times[j]) continue;
      // Adding 0 turns a negative zero into 0.
      slopes[count] = (values[i]! - values[j]!) / (times[i]! - times[j]!) + 0;
      count += 1;
    }
  }
  return slopes.subarray(0, count).sort();
}

/**
 * Value at a rank counted from 1 in a rising list; -Infinity before the first. The upper end is the lower end
 * of the list turned round.
 */
function atRank(sorted: Float64Array, rank: number, ranks: 'interpolated' | 'rounded'): number {
  const exact = ranks === 'rounded' ? Math.round(rank) : rank;
  if (exact < 1) return Number.NEGATIVE_INFINITY;
  const below = Math.floor(exact);
  const share = exact - below;
  const value = sorted[below - 1]!;
  return share === 0 ? value : value + share * (sorted[below]! - value);
}
