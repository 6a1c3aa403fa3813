import type { Day } from '../../site/day.ts';

/** A record that lies more operating days than this beyond all others may be lone: the two longest months that follow one another. */
export const LONE_BEYOND_DAYS = 62;

/** Most records that are lone at one end: one or two slips, each with its test. More that lie together are a record of their own. */
export const MOST_LONE = 4;

/** Fewest others beside which a record is lone: a record of a few tests, months apart, is no slip. */
const FEWEST_OTHERS = 20;

/** Records that must be known at each end to tell which of them are lone. */
export const KNOWN_AT_END = MOST_LONE + 1;

/**
 * How many records at each end of the whole record are lone: a few, more than two months from all others. They are taken for slips of a clock or of a hand, since one mistyped year would else
 * move the last day of the record by years.
 *
 * Of the records at an end, up to four are lone where more than 62 days lie between the innermost of them and the next one; the largest such number is taken, so that slips in different years
 * are found together. A unit or a hospital that comes back after a pause of more than two months is lone with its first one to four records, until there are five. Where fewer than 20 others
 * would be left, none is lone.
 *
 * @param earliest operating days of the five earliest records (all, where there are fewer), the earliest first
 * @param latest operating days of the five latest, the latest first
 * @param count of all records
 */
export function loneAtEnds(
  earliest: readonly Day[],
  latest: readonly Day[],
  count: number,
): { early: number; late: number } {
  const early = loneOf(earliest);
  const late = loneOf(latest);
  return count - early - late < FEWEST_OTHERS ? { early: 0, late: 0 } : { early, late };
}

function loneOf(days: readonly Day[]): number {
  for (let lone = Math.min(MOST_LONE, days.length - 1); lone > 0; lone--)
    if (Math.abs(days[lone]! - days[lone - 1]!) > LONE_BEYOND_DAYS) return lone;
  return 0;
}
