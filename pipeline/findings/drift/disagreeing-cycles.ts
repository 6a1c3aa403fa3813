import type { Day } from '../../site/day.ts';
import { median, robustSpread } from './robust.ts';

/** Values of one kind of cycle by day in order of time, on the probe's scale and at the level of the reference kind. */
export type LevelledValues = ReadonlyMap<Day, number>;

/** Distance between two cycles of a day, in its usual spread, beyond which one of them is taken to be off. */
const FAR = 2.5;
/** Days with both kinds, on either side, with which a day is compared; and fewest in all. */
const NEAR = 4;
const LEAST_PAIRS = 10;

/**
 * Days on which one of two cycles is off, for each kind: those on which the two lie much farther apart than on the days around, of which the one that lies farther from the days around is off.
 * What happens to the unit shows in both cycles of a day, so that a step, a drift or a season leaves none out; and a lasting change of one kind alone is soon the usual distance.
 *
 * No days where the usual distance can't be told: with fewer than ten pairs, or where most of them are equal (coarse records).
 *
 * Source: values farther from the median than some median absolute deviations (Hampel identifier): Davies and Gather, JASA 88 (1993) 782-792; in a window that moves with time: Pearson,
 * IEEE Transactions on Control Systems Technology 10 (2002) 55-63. Both from memory.
 */
export function disagreeingCycles(
  reference: LevelledValues,
  other: LevelledValues,
): { reference: Set<Day>; other: Set<Day> } {
  const off = { reference: new Set<Day>(), other: new Set<Day>() };
  const pairs = [...other].flatMap(([day, y]) => {
    const beside = reference.get(day);
    return beside === undefined ? [] : [{ day, apart: y - beside, middle: (y + beside) / 2 }];
  });
  if (pairs.length < LEAST_PAIRS) return off;
  const spread = robustSpread(pairs.map((of) => of.apart)) ?? 0;
  if (!(spread > 0)) return off;
  for (const [i, { day, apart }] of pairs.entries()) {
    const near = [...pairs.slice(Math.max(0, i - NEAR), i), ...pairs.slice(i + 1, i + 1 + NEAR)];
    if (Math.abs(apart - median(near.map((of) => of.apart))!) <= FAR * spread) continue;
    const usual = median(near.map((of) => of.middle))!;
    const [own, beside] = [other.get(day)!, reference.get(day)!];
    off[Math.abs(own - usual) > Math.abs(beside - usual) ? 'other' : 'reference'].add(day);
  }
  return off;
}
