import type { SlopeFit } from './change-scan.ts';

export interface CrossingInput {
  /** Best slope, and the slopes from all other places that explain the values nearly as well. */
  best: SlopeFit;
  slopes: readonly SlopeFit[];
  /** Variance of a value that a slow movement sees. */
  unit: number;
  /** Last day of the series. */
  now: number;
  /** The limit on the series' scale. */
  limit: number;
  /** Bound of the profile: gain that a place or a crossing may lose against the best. */
  bound: number;
}

/** Days from the last value to the limit; `high` is null where the record sets no upper bound, `days` where the line does not reach the limit. */
export interface Crossing {
  days: number | null;
  low: number;
  high: number | null;
}

/** Crossings farther away than this are not told apart from none. */
export const FARTHEST_DAYS = 730;

/**
 * Days until a straight line reaches a limit, with an interval from the profile of the sum of squares: all crossing days D for which some slope (from any place) passes
 * through the limit on day D and explains the values nearly as well as the best one. So level, rate and place of the beginning are all uncertain.
 *
 * Assumes that the line goes on; a drift that speeds up or stops is not covered. 0 where the line is past the limit already.
 *
 * Source: interval by inverting a test of the crossing: Fieller, JRSS B 16 (1954) 175-185, for a known place; the profile over places is our own.
 */
export function daysToLimit(input: CrossingInput): Crossing {
  const { best, slopes, unit, now, limit, bound } = input;
  const loss = (day: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const of of slopes) {
      const own = (of.sse - best.sse) / unit;
      if (own > bound) continue;
      const reach = now + day - of.knot;
      const off = limit - of.level - of.slope * reach;
      const variance = of.levelVariance + reach * reach * of.slopeVariance + 2 * reach * of.covariance;
      least = Math.min(least, own + (off * off) / (variance * unit));
    }
    return least;
  };
  const straight = best.slope === 0 ? null : best.knot + (limit - best.level) / best.slope - now;
  // A crossing before the slope began is none: the line runs away from the limit.
  const days = straight === null || straight < best.knot - now ? null : Math.max(0, straight);
  const inside = (day: number) => loss(day) <= bound;
  const start = days === null ? FARTHEST_DAYS : Math.min(FARTHEST_DAYS, Math.round(days));
  let low = start;
  while (low > 0 && inside(low - 1)) low--;
  let high = start;
  while (high < FARTHEST_DAYS && inside(high + 1)) high++;
  return {
    days: days === null || days > FARTHEST_DAYS ? null : days,
    low: Math.max(0, Math.min(low, days ?? low)),
    high: high >= FARTHEST_DAYS ? null : Math.max(high, days ?? high),
  };
}

/** Interval of the rate over all places of the beginning that explain the values nearly as well, per day. */
export function rateInterval(
  best: SlopeFit,
  slopes: readonly SlopeFit[],
  unit: number,
  bound: number,
): { low: number; high: number } {
  let [low, high] = [best.slope, best.slope];
  for (const of of slopes) {
    const left = bound - (of.sse - best.sse) / unit;
    if (left < 0) continue;
    const half = Math.sqrt(left * unit * of.slopeVariance);
    low = Math.min(low, of.slope - half);
    high = Math.max(high, of.slope + half);
  }
  return { low, high };
}
