import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { finiteOrNull } from '../finite-or-null.ts';
import type { Comparison, Exposure, OutcomeName } from '../review-schema.ts';
import type { Reading } from './exposure.ts';
import { stratify } from './strata.ts';
import { stratifiedRatio } from './stratified-ratio.ts';

/** What becomes of an exposure's ratio when days are compared only with days that are alike in another exposure. */
export type Beside = Comparison['beside'][number];
export type Measured = Omit<Beside, 'adjusted_p' | 'finding'>;

/**
 * Sets two exposures against each other, since what is missed together can't be told apart by looking at one: each one's ratio within strata that are
 * split by the other as well.
 */
export function besideOther(
  rows: readonly UnitDay[],
  exposure: Exposure,
  other: Exposure,
  outcome: OutcomeName,
  reading: Reading,
  scope: 'unit' | 'fleet',
  level: number,
): Measured {
  const ratioOf = (of: Exposure, splitBy: Exposure) =>
    stratifiedRatio(stratify(rows, of, outcome, reading, splitBy).strata, outcome, scope, level);
  const own = ratioOf(exposure, other);
  const others = ratioOf(other, exposure);
  return {
    exposure: other,
    ratio: finiteOrNull(own.ratio),
    low: own.low,
    high: finiteOrNull(own.high),
    p: own.p,
    other_ratio: finiteOrNull(others.ratio),
    other_low: others.low,
    other_high: finiteOrNull(others.high),
  };
}

/**
 * `holds`: the interval stays above 1, and p adjusted by Holm over all such tests lies under the line (where one exposure carries the effect, each unit
 * gives the others a chance to seem to hold, and most of these tests have nothing to find). `carried_by_other`: it does not hold, and the other's interval stays above 1. `not_told_apart`: neither.
 */
export function findingOf(of: Measured, adjustedP: number | null, alpha: number): Beside['finding'] {
  if ((of.low ?? 0) > 1 && adjustedP !== null && adjustedP <= alpha) return 'holds';
  return (of.other_low ?? 0) > 1 ? 'carried_by_other' : 'not_told_apart';
}
