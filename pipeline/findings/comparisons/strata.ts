import type { ShiftSegment } from '../../statistics/permutation/shift-segment.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Exposure, OutcomeName } from '../review-schema.ts';
import { type DaysInStrata, daysInStrata, type StratumDays, sortDays } from './days-in-strata.ts';
import type { Reading } from './exposure.ts';

export type CountedOutcome = OutcomeName | 'unrelated_abort';

export interface Side {
  days: number;
  trials: number;
  events: number;
}

/** One unit's days at risk in one stratum, with known exposure: counts of both sides, and the series in order of day for the shift test. */
export interface Stratum {
  unit: string;
  era: number;
  stratum: number;
  first_date: string;
  last_date: string;
  exposed: Side;
  unexposed: Side;
  series: ShiftSegment;
}

/** The strata of a set of panel rows, and the days that were left out and why. */
export interface Stratified {
  strata: Stratum[];
  notAtRisk: number;
  exposureUnknown: number;
}

/** Events and chances of a day: 1 test, or its production cycles. */
function countsOf(row: UnitDay, outcome: CountedOutcome): { events: number; trials: number } {
  if (outcome === 'failed_test') return { events: row.failed ?? 0, trials: 1 };
  const events = outcome === 'cleanliness_abort' ? row.cleanliness_aborts : row.unrelated_aborts;
  return { events, trials: row.production_cycles };
}

/**
 * Sorts days at risk into strata (unit, era, part of the era of about half a year). Only days at risk enter, whatever the outcome.
 *
 * @param rows panel rows in order of unit and day
 * @param beside another exposure by which each stratum is split once more, so that it can't speak for this one; days on which it is not known
 *   are then left out too
 */
export function stratify(
  rows: readonly UnitDay[],
  exposure: Exposure,
  outcome: CountedOutcome,
  reading: Reading,
  beside?: Exposure,
): Stratified {
  return countIn(daysInStrata(rows, exposure, reading, beside), outcome);
}

/** As {@link stratify}, for an exposure that the panel does not hold: 1 exposed, 0 not, null not known. */
export function stratifyBy(
  rows: readonly UnitDay[],
  exposure: (row: UnitDay) => 0 | 1 | null,
  outcome: CountedOutcome,
): Stratified {
  return countIn(sortDays(rows, exposure), outcome);
}

/** Counts an outcome on days that were sorted. */
export function countIn(
  { groups, notAtRisk, exposureUnknown }: DaysInStrata,
  outcome: CountedOutcome,
): Stratified {
  return { strata: groups.map((group) => stratumOf(group, outcome)), notAtRisk, exposureUnknown };
}

function stratumOf({ rows, exposure }: StratumDays, outcome: CountedOutcome): Stratum {
  const exposed = { days: 0, trials: 0, events: 0 };
  const unexposed = { days: 0, trials: 0, events: 0 };
  const series = {
    exposure,
    events: new Uint32Array(rows.length),
    trials: new Uint32Array(rows.length),
  };
  for (const [index, row] of rows.entries()) {
    const { events, trials } = countsOf(row, outcome);
    const side = exposure[index] === 1 ? exposed : unexposed;
    side.days += 1;
    side.trials += trials;
    side.events += events;
    series.events[index] = events;
    series.trials[index] = trials;
  }
  const { unit, era, stratum, date } = rows[0]!;
  return { unit, era, stratum, first_date: date, last_date: rows.at(-1)!.date, exposed, unexposed, series };
}

/** One side summed over strata. */
export function sumSide(strata: readonly Stratum[], side: 'exposed' | 'unexposed'): Side {
  const total = { days: 0, trials: 0, events: 0 };
  for (const stratum of strata) {
    total.days += stratum[side].days;
    total.trials += stratum[side].trials;
    total.events += stratum[side].events;
  }
  return total;
}
