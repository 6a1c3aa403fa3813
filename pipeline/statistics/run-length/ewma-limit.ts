import { EwmaVariance } from '../control-charts/ewma-variance.ts';
import { findRoot } from '../distributions/find-root.ts';
import { normalQuantile } from '../distributions/normal.ts';
import { computed, type Outcome } from '../result.ts';
import { ewmaRunLength } from './ewma-run-length.ts';

export interface EwmaLimitInput {
  lambda: number;
  /** Wanted in-control average run length, in values. */
  runLength: number;
  /** Correlation of neighbouring values (AR(1)), from -0.9 to 0.95; default 0. */
  autocorrelation?: number;
  /** Default 'time-varying', as `ewmaChart` draws them. */
  limits?: 'time-varying' | 'asymptotic';
}

export interface EwmaLimit {
  /**
   * L: half-width in standard deviations of the EWMA, for `ewmaChart` with the same lambda and
   * autocorrelation.
   */
  limit: number;
  /** The same in standard deviations of a value, once the limits have settled. */
  limitInSigma: number;
  /**
   * Average and median run length in control that this limit has. The median is what "half of all quiet
   * charts have alarmed by then" means.
   */
  average: number;
  median: number;
}

const known = new Map<string, Outcome<EwmaLimit>>();

/**
 * Limit of a two-sided EWMA chart that gives a wanted in-control average run length for values with a stated
 * autocorrelation.
 *
 * Solves `ewmaRunLength` for the limit (to 1e-6). Positive autocorrelation makes the EWMA wider, which the
 * exact standard deviation in `ewmaChart` takes care of, and slower, so that L is smaller than for
 * independent values; it matters that both use the same autocorrelation.
 *
 * Assumes normal values with known centre, sigma and autocorrelation. A chart whose centre and sigma come
 * from a short baseline alarms sooner: with lambda 0.2, run length 500 and autocorrelation 0.3 half of the
 * quiet charts have alarmed by value 346 if both are known, but by about 210 from a baseline of 60 values
 * (`simulateRunLength`). `limitForFalseAlarms` takes the baseline into account.
 *
 * Results are kept per process, since a review asks for the same few designs again and again. Time grows as
 * lambda falls and autocorrelation rises: milliseconds for independent values, seconds at lambda 0.05 with
 * 0.9.
 *
 * @throws RangeError if runLength isn't in [10, 1e6], or as `ewmaRunLength`
 *
 * Source: as `ewmaRunLength`. By Šidák's inequality (Journal of the American Statistical Association 62
 * (1967) 626-633) dependence only lengthens runs, so the limit for independent EWMA values, 2(1 - Phi(L)) =
 * 1/ARL, is an upper bound; the search starts there.
 *
 * @example
 * ewmaLimitForRunLength({ lambda: 0.1, runLength: 500, limits: 'asymptotic' }); // limit 2.814
 */
export function ewmaLimitForRunLength(input: EwmaLimitInput): Outcome<EwmaLimit> {
  const { lambda, runLength, autocorrelation = 0, limits = 'time-varying' } = input;
  if (!(runLength >= 10 && runLength <= 1e6)) {
    throw new RangeError(
      `ewmaLimitForRunLength: runLength must be 10 to 1 000 000 values, found ${runLength}.`,
    );
  }
  const key = [lambda, runLength, autocorrelation, limits].join(' ');
  const kept = known.get(key);
  if (kept !== undefined) return kept;

  const at = (limit: number) => ewmaRunLength({ lambda, limit, autocorrelation, limits });
  const excess = (limit: number) => {
    const result = at(limit);
    return result.computable ? Math.log(result.average / runLength) : Number.POSITIVE_INFINITY;
  };
  const widest = normalQuantile(0.5 / runLength, 'upper') + 1e-9;
  let narrow = widest - 0.25;
  while (narrow > 0.05 && excess(narrow) > 0) narrow -= 0.25;
  const limit = findRoot(excess, Math.max(narrow, 0.01), Math.min(widest, narrow + 0.25 + 1e-9), 1e-6);
  const reached = at(limit);
  const outcome = reached.computable
    ? computed(`EWMA limit for a run length, ${limits} limits`, {
        limit,
        limitInSigma: limit * Math.sqrt(EwmaVariance.limit(lambda, autocorrelation)),
        average: reached.average,
        median: reached.median,
      })
    : reached;
  known.set(key, outcome);
  return outcome;
}
