import { computed, notComputable, type Outcome } from '../result.ts';
import { combineDrawn } from './combine-drawn.ts';
import { type ShiftScores, shiftScores } from './shift-scores.ts';
import type { ShiftDesign, ShiftSegment } from './shift-segment.ts';

export interface CircularShiftResult {
  /**
   * The statistic that is compared over shifts: exposed events in excess of those expected, summed over
   * strata (with a dose: of dose times events).
   */
  excess: number;
  /** Its variance if steps were independent (hypergeometric or Poisson), given the record as it stands. */
  nullVariance: number;
  pGreater: number;
  pLess: number;
  /** Central two-sided p-value: twice the smaller one, at most 1. */
  pValue: number;
  /** Shifts compared with the record as it stands, which is not counted among them. */
  shifts: number;
  /** Whether these were all shifts that exist, or drawn. */
  coverage: 'all' | 'drawn';
  /**
   * Variance of the excess over shifts, divided by its mean null variance; about 1 where days are
   * independent.
   */
  varianceInflation: number;
  /** Segments whose shifts change the excess, and all segments given. */
  segmentsUsed: number;
  segmentsGiven: number;
}

/**
 * Test of association between two series that both come in spells, by shifting one against the other.
 *
 * Tested: that events do not depend on exposure. Each segment's exposure is rotated, wrapping round, against
 * its events, trials and strata, so that each series keeps its own autocorrelation. Statistic: the
 * Mantel-Haenszel score, exposed events in excess of those expected given each stratum's margins, summed over
 * strata and segments. It is not divided by its null standard deviation, which changes with the shift: in
 * simulated years of daily tests both forms kept their level, and the undivided one had up to three points
 * more power (tests/statistics/reference/shift-statistic.ts). p = (1 + shifts as extreme) / (1 + shifts),
 * never 0.
 *
 * Assumed: within a segment at least one of the two series is stationary. Slow drifts of both fool it (Harris
 * 2020): use it within an era, with strata. Segments are independent. With all shifts of one segment of n
 * steps p can't fall below 1 / n.
 *
 * Edges: segments without events or with constant exposure say nothing; with none left, or where no shift
 * changes anything, the outcome is not computable. Ties count as extreme (tolerance 1e-9).
 *
 * @param segments - one per unit and era
 * @param options - `design`; `maxShifts` (default 9999, at least 999): all combinations of shifts if there
 *   are no more than that, else so many drawn, with replacement, each segment by itself; `seed`, a whole
 *   number, default 1
 * @throws RangeError for arrays of unequal length, negative numbers, events above trials (events-of-trials)
 *   or in no trials, or fewer than 999 draws
 *
 * Source: H. W. Lotwick & B. W. Silverman, JRSS B 44 (1982) 406-413 (shifts); J. Besag & P. Clifford,
 * Biometrika 76 (1989) 633-642 (p-value); K. D. Harris, bioRxiv 2020.11.29.402719 (limits).
 *
 * @example Exposure 0011100000, events 0002110001, one trial a day, one stratum, events-over-time: pGreater =
 *   2 / 10
 */
export function circularShiftTest(
  segments: readonly ShiftSegment[],
  options: { design: ShiftDesign; maxShifts?: number; seed?: number },
): Outcome<CircularShiftResult> {
  const { design, maxShifts = 9999, seed = 1 } = options;
  const method = `circular shifts of the Mantel-Haenszel score, ${design}`;
  if (!(maxShifts >= 999))
    throw new RangeError(`circularShiftTest: maxShifts must be at least 999, found ${maxShifts}`);
  const used = segments
    .map((segment) => shiftScores(segment, design))
    .filter((scores) => scores !== undefined);
  const combinations = used.reduce((product, scores) => product * scores.excess.length, 1);
  if (combinations === 1) {
    return notComputable(
      method,
      'No segment has both events and an exposure that varies, so no shift changes anything.',
    );
  }
  const coverage = combinations - 1 <= maxShifts ? 'all' : 'drawn';
  const sums = coverage === 'all' ? combineAll(used, combinations) : combineDrawn(used, maxShifts, seed);
  const excess = used.reduce((sum, scores) => sum + scores.excess[0]!, 0);
  let [above, below, total, squares, variances] = [0, 0, 0, 0, 0];
  const shifts = sums.excess.length;
  for (let i = 0; i < shifts; i++) {
    const shifted = sums.excess[i]!;
    if (shifted >= excess - 1e-9) above++;
    if (shifted <= excess + 1e-9) below++;
    total += shifted;
    squares += shifted * shifted;
    variances += sums.variance[i]!;
  }
  if (variances === 0)
    return notComputable(method, 'No shift leaves exposed and unexposed trials in a stratum with events.');
  const pGreater = (1 + above) / (1 + shifts);
  const pLess = (1 + below) / (1 + shifts);
  return computed(method, {
    excess,
    nullVariance: used.reduce((sum, scores) => sum + scores.variance[0]!, 0),
    pGreater,
    pLess,
    pValue: Math.min(1, 2 * Math.min(pGreater, pLess)),
    shifts,
    coverage,
    varianceInflation: Math.max(0, squares - total ** 2 / shifts) / variances,
    segmentsUsed: used.length,
    segmentsGiven: segments.length,
  });
}

/** Every combination of shifts but the record as it stands. */
function combineAll(used: ShiftScores[], combinations: number): ShiftScores {
  const sums = { excess: new Float64Array(combinations - 1), variance: new Float64Array(combinations - 1) };
  for (let i = 1; i < combinations; i++) {
    let rest = i;
    for (const scores of used) {
      const shift = rest % scores.excess.length;
      rest = Math.floor(rest / scores.excess.length);
      sums.excess[i - 1]! += scores.excess[shift]!;
      sums.variance[i - 1]! += scores.variance[shift]!;
    }
  }
  return sums;
}
