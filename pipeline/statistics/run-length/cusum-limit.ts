import { findRoot } from '../distributions/find-root.ts';
import { computed, type Outcome } from '../result.ts';
import { cusumRunLength } from './cusum-run-length.ts';

export interface CusumLimitInput {
  /** Allowance k, in standard deviations of a value. */
  allowance: number;
  /** Wanted in-control average run length of the two-sided chart, in values. */
  runLength: number;
  /** Start of both sums as a share of h, in [0, 1); default 0. */
  headStart?: number;
  /** Correlation of neighbouring values (AR(1)), from -0.9 to 0.95; default 0. */
  autocorrelation?: number;
}

const known = new Map<string, Outcome<{ limit: number; average: number }>>();

/**
 * Decision interval h of a two-sided CUSUM that gives a wanted in-control average run length for values with
 * a stated autocorrelation.
 *
 * Solves `cusumRunLength` for h (to 1e-6). Under autocorrelation h grows fast: at allowance 0.5 and a run
 * length of 500 it is 5.07 for independent values. An allowance meant as half the shift to be found should be
 * read in standard deviations of a value, as always.
 *
 * Assumes normal values with known centre, sigma and autocorrelation; on a short baseline alarms come sooner
 * (`limitForFalseAlarms`). Results are kept per process.
 *
 * @returns `limit`: h in standard deviations of a value; `average`: the run length that it has
 * @throws RangeError if runLength isn't in [10, 1e6], or as `cusumRunLength`
 *
 * Source: as `cusumRunLength`.
 *
 * @example
 * cusumLimitForRunLength({ allowance: 0.5, runLength: 500 }); // limit 5.071
 */
export function cusumLimitForRunLength(input: CusumLimitInput): Outcome<{ limit: number; average: number }> {
  const { allowance, runLength, headStart = 0, autocorrelation = 0 } = input;
  if (!(runLength >= 10 && runLength <= 1e6)) {
    throw new RangeError(
      `cusumLimitForRunLength: runLength must be 10 to 1 000 000 values, found ${runLength}.`,
    );
  }
  const key = [allowance, runLength, headStart, autocorrelation].join(' ');
  const kept = known.get(key);
  if (kept !== undefined) return kept;

  const at = (decision: number) => cusumRunLength({ allowance, decision, headStart, autocorrelation });
  const excess = (decision: number) => {
    const result = at(decision);
    return result.computable ? Math.log(result.average / runLength) : Number.POSITIVE_INFINITY;
  };
  let wide = 1;
  while (excess(wide) < 0) wide *= 1.6;
  let narrow = wide / 1.6;
  while (excess(narrow) > 0) narrow /= 1.6;
  const limit = findRoot(excess, narrow, wide, 1e-6);
  const reached = at(limit);
  const outcome = reached.computable
    ? computed('CUSUM decision interval for a run length', { limit, average: reached.average })
    : reached;
  known.set(key, outcome);
  return outcome;
}
