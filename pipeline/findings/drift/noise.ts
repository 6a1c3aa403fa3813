import { scanChanges } from './change-scan.ts';
import type { DayValue } from './day-values.ts';
import { median, robustSpread } from './robust.ts';

/** Noise of one series around its level, its best step or its best slope. */
export interface Residuals {
  /** Standard deviation of a usual day's value. */
  spread: number;
  /** Values tamed: those farther than 3 standard deviations from the fit are drawn in to that distance. */
  y: number[];
  values: number;
  /** What is left of the tamed values, each brought to weight 1. */
  rest: number[];
  /** Sums of products of residuals at lags 0 to LAGS, for the autocorrelation. */
  products: number[];
  pairs: number[];
}

export const LAGS = 10;
const TAME_AT = 3;
/** Level, place and size of the change that is taken away. */
const FITTED = 3;

/** Variance of a value as a slow movement sees it: that of independent values whose mean varies as much. */
export const slowVariance = ({
  spread,
  autocorrelation,
}: {
  spread: number;
  autocorrelation: number;
}): number => (spread * spread * (1 + autocorrelation)) / (1 - autocorrelation);

/**
 * Noise of a series: standard deviation and autocovariances of what is left after the better of a step and a slope (or neither) is taken away, so that a drift that
 * is under way doesn't count as noise. Values far off are found by the median absolute deviation and drawn in; the standard deviation is then that of what is left, if that is larger: by the median
 * alone it would be too small where tails are heavy, and hardly known from a few dozen values.
 */
export function residuals(values: readonly DayValue[], floor: number): Residuals {
  const t = values.map((of) => of.day);
  const w = values.map((of) => of.weight);
  let y = values.map((of) => of.y);
  let spread = floor;
  let rest: number[] = [];
  for (let round = 0; round < 2; round++) {
    const fitted = bestFit(t, y, w);
    rest = values.map((of, i) => (of.y - fitted[i]!) * Math.sqrt(w[i]!));
    const freedom = values.length / Math.max(1, values.length - FITTED);
    spread = Math.max(floor, (robustSpread(rest, 0) ?? 0) * Math.sqrt(freedom));
    const bound = TAME_AT * spread;
    y = values.map((of, i) => {
      const reach = bound / Math.sqrt(w[i]!);
      return Math.min(fitted[i]! + reach, Math.max(fitted[i]! - reach, of.y));
    });
    rest = rest.map((value) => Math.min(bound, Math.max(-bound, value)));
    const squares = rest.reduce((sum, value) => sum + value * value, 0);
    spread = Math.max(spread, Math.sqrt((squares / Math.max(1, values.length)) * freedom));
  }
  const products = new Array<number>(LAGS + 1).fill(0);
  const pairs = new Array<number>(LAGS + 1).fill(0);
  for (let lag = 0; lag <= LAGS; lag++) {
    for (let i = lag; i < rest.length; i++) {
      products[lag]! += rest[i]! * rest[i - lag]!;
      pairs[lag]! += 1;
    }
  }
  // What is left of a fit is opposed to itself a little: each product is short by a variance for each thing fitted.
  const short = (FITTED * products[0]!) / Math.max(1, values.length - FITTED);
  for (let lag = 0; lag <= LAGS; lag++)
    products[lag]! += short * Math.max(0, 1 - lag / Math.max(1, values.length));
  const scale = spread * spread || 1;
  return { spread, y, values: values.length, rest, products: products.map((sum) => sum / scale), pairs };
}

function bestFit(t: readonly number[], y: readonly number[], w: readonly number[]): number[] {
  const middle = median(y) ?? 0;
  if (y.length < 12) return y.map(() => middle);
  const { step, slope, constant } = scanChanges(
    { t, y, w },
    {
      before: 5,
      afterStep: 3,
      afterKnot: 5,
      daysAfterKnot: 1,
      wholeSlope: true,
    },
  );
  const best = Math.min(step?.sse ?? constant.sse, slope?.sse ?? constant.sse);
  if (slope && slope.sse === best)
    return t.map((day) => slope.level + slope.slope * Math.max(0, day - slope.knot));
  if (step && step.sse === best) return t.map((_, i) => (i < step.index ? step.before : step.after));
  return t.map(() => constant.level);
}

/**
 * Autocorrelation that matters for slow movements: that of the AR(1) series whose mean varies as much as this one's. From the autocorrelations up to lag 10
 * with falling weights; never less than that of neighbours, nor under 0, nor over 0.8.
 *
 * Source: Newey and West, Econometrica 55 (1987) 703-708 (weights); the mean of an AR(1) series has (1 + phi)/(1 - phi) times the variance of independent values.
 */
export function slowAutocorrelation(parts: readonly Pick<Residuals, 'products' | 'pairs'>[]): number {
  const at = (lag: number) => {
    const product = parts.reduce((sum, of) => sum + of.products[lag]!, 0);
    const pairs = parts.reduce((sum, of) => sum + of.pairs[lag]!, 0);
    return pairs === 0 ? 0 : product / pairs;
  };
  const variance = at(0);
  if (!(variance > 0)) return 0;
  let inflation = 1;
  for (let lag = 1; lag <= LAGS; lag++) inflation += 2 * (1 - lag / (LAGS + 1)) * (at(lag) / variance);
  const slow = (inflation - 1) / (inflation + 1);
  return Math.min(0.8, Math.max(0, slow, at(1) / variance));
}
