import type { Rules } from '../../site/rules.ts';
import { circularShiftTest } from '../../statistics/permutation/circular-shift-test.ts';
import type { ShiftDesign } from '../../statistics/permutation/shift-segment.ts';
import { type CountedOutcome, type Side, type Stratified, sumSide } from './strata.ts';
import { type StratifiedRatio, stratifiedRatio } from './stratified-ratio.ts';

/** What the days in strata say of an exposure and an outcome, before any verdict. */
export interface Measurement {
  stratified: Stratified;
  exposed: Side;
  unexposed: Side;
  ratio: StratifiedRatio;
  /** p of the shift test; null where no shift changes anything. */
  p: number | null;
  shifts: number;
  varianceInflation: number | null;
}

/**
 * Measures: ratio within strata with its interval, and the shift test, which allows for spells.
 *
 * @param scope `unit` measures exactly, `fleet` by Mantel-Haenszel
 */
export function measure(
  stratified: Stratified,
  outcome: CountedOutcome,
  scope: 'unit' | 'fleet',
  rules: Rules['comparison'],
): Measurement {
  const { strata } = stratified;
  const shift = circularShiftTest(
    strata.map((stratum) => stratum.series),
    { design: designOf(outcome), maxShifts: rules.shifts, seed: rules.seed },
  );
  return {
    stratified,
    exposed: sumSide(strata, 'exposed'),
    unexposed: sumSide(strata, 'unexposed'),
    ratio: stratifiedRatio(strata, outcome, scope, rules.level),
    p: shift.computable ? shift.pValue : null,
    shifts: shift.computable ? shift.shifts : 0,
    varianceInflation: shift.computable ? shift.varianceInflation : null,
  };
}

/** A test day fails or not; aborts are counted over production cycles. */
export const designOf = (outcome: CountedOutcome): ShiftDesign =>
  outcome === 'failed_test' ? 'events-of-trials' : 'events-over-time';
