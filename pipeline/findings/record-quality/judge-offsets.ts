import { binomialTail } from '../../statistics/distributions/beta.ts';
import type { Fit } from './offset-fit.ts';
import { OFFSETS, type Tried } from './try-offsets.ts';

/** Ahead by more than so many minutes may be a time of typing, such as the end of the shift. */
const LONG_AHEAD = 180;
const ZERO = OFFSETS.indexOf(0);
const PAUSE: Fit = 1;
const NEAR: Fit = 2;

/** So many records may contradict the log with no clock that is off (our choice). */
const CONTRADICTED_SHARE = 0.15;
/** Shares of the records that fit at an offset, and of those that are near a cycle as well, from which on it is a clock (our choice). */
const FIT_SHARE = 0.85;
const NEAR_SHARE = 0.5;
/** Line of the tests for a claim, over all offsets that are tried. */
const ALPHA = 0.01;
/** An offset whose count is lower than the best with this p or less is left out of the range. */
const RANGE_ALPHA = 0.05;
/** Parts of the records whose offsets differ by so much show a clock that changed. */
const CHANGE_MINUTES = 30;

export interface OffsetJudgement {
  /** Records that fit as they are. */
  fit: number;
  verdict: 'agree' | 'ahead' | 'behind' | 'cannot_tell';
  /**
   * Where the clock is ahead or behind: range of the offsets that are about as good as the best, minutes, and whether all in it are; records that fit at the best, p over all
   * offsets.
   */
  found: { low: number; high: number; whole: boolean; best: number; fit: number; p: number } | null;
}

/**
 * Whether another clock would explain that records stand in running cycles.
 *
 * Fitting better alone says little: a night without cycles takes in every record, also those of a clock that is right. So a clock is off only where (1) more records
 * stand in running cycles than 15 % and chance give, (2) at the best offset at least 85 % fit, and more than as they are (exact test of pairs, times the offsets tried),
 * (3) half of the records there have a cycle within 30 minutes, as work before the first cycle or after the last has, and (4) all offsets that are about as good lie on one side
 * of zero. An offset of more than three hours ahead must moreover (5) fit the cycles of the record's own day better than those of another week: what is typed at the end of each
 * shift lies about so far behind the work, and fits any day alike. Work that lies in a pause at the right and at the wrong time is never seen.
 *
 * @param tries how many sets of records are judged beside this one
 */
export function judgeOffsets(records: readonly Tried[], tries = 1): OffsetJudgement {
  const fit = records.filter(({ asItIs }) => asItIs >= PAUSE).length;
  const n = records.length;
  if (binomialTail(n - fit, n, CONTRADICTED_SHARE, 'upper') > ALPHA / tries)
    return { fit, verdict: 'agree', found: null };
  const near = OFFSETS.map((_, at) => count(records, at, NEAR));
  const best = bestOf(near);
  const range = OFFSETS.filter((_, at) => pairedP(records, best, at, NEAR) > RANGE_ALPHA);
  const low = range[0]!;
  const high = range.at(-1)!;
  const inside = OFFSETS.filter((offset) => offset >= low && offset <= high);
  const fitAtBest = count(records, best, PAUSE);
  const p = Math.min(1, pairedP(records, best, ZERO, PAUSE) * OFFSETS.length * tries);
  const shown = fitAtBest > fit && p <= ALPHA && fitAtBest >= FIT_SHARE * n && near[best]! >= NEAR_SHARE * n;
  const typedLate = high > LONG_AHEAD && !followsItsDay(records, OFFSETS[best]!);
  if (!shown || low * high <= 0 || typedLate) return { fit, verdict: 'cannot_tell', found: null };
  return {
    fit,
    verdict: low > 0 ? 'ahead' : 'behind',
    found: { low, high, whole: inside.length === range.length, best: OFFSETS[best]!, fit: fitAtBest, p },
  };
}

/**
 * Whether records, a part of those that gave the offset, clearly stand better at another one, by at least half an hour: their clock is not off by the same.
 *
 * @param tries how many parts are asked
 */
export function standsElsewhere(records: readonly Tried[], offset: number, tries: number): boolean {
  const at = OFFSETS.indexOf(offset);
  const best = bestOf(OFFSETS.map((_, of) => count(records, of, NEAR)));
  return (
    Math.abs(OFFSETS[best]! - offset) >= CHANGE_MINUTES &&
    pairedP(records, best, at, NEAR) * OFFSETS.length * tries <= ALPHA
  );
}

/** Whether a part of the records fits as it is, and clearly better than all do: its clock is not off. */
export function fitsAsItIs(part: OffsetJudgement, n: number, shareOfAll: number, tries: number): boolean {
  return part.fit >= FIT_SHARE * n && binomialTail(part.fit, n, shareOfAll, 'upper') <= ALPHA / tries;
}

/** Index of the offset at which most records are near; of several the least. */
const bestOf = (near: readonly number[]): number =>
  near.reduce((top, here, at) => {
    const less = Math.abs(OFFSETS[at]!) < Math.abs(OFFSETS[top]!);
    return here > near[top]! || (here === near[top] && less) ? at : top;
  }, 0);

const count = (records: readonly Tried[], at: number, least: Fit): number =>
  records.filter((record) => record.atOffsets()[at]! >= least).length;

/** Whether records at an offset stand nearer to the cycles of their own day than to those of the same day a week later (else before). */
function followsItsDay(records: readonly Tried[], offset: number): boolean {
  const pairs = records.flatMap((record) => record.againstWeek(offset) ?? []);
  const better = pairs.filter(({ own, week }) => own && !week).length;
  const worse = pairs.filter(({ own, week }) => !own && week).length;
  return better > worse && signP(better, worse) <= ALPHA;
}

/** Exact test of pairs (McNemar 1947) between two offsets. */
function pairedP(records: readonly Tried[], a: number, b: number, least: Fit): number {
  let better = 0;
  let worse = 0;
  for (const record of records) {
    const fits = record.atOffsets();
    const inA = fits[a]! >= least;
    if (inA === fits[b]! >= least) continue;
    if (inA) better++;
    else worse++;
  }
  return signP(better, worse);
}

/** Two-sided, exact by the binomial distribution of the pairs that differ: twice the smaller tail. */
const signP = (better: number, worse: number): number =>
  Math.min(1, 2 * binomialTail(Math.max(better, worse), better + worse, 0.5, 'upper'));
