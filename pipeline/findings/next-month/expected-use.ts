import { type Day, weekday } from '../../site/day.ts';
import type { UseDay } from '../../transform/cleaning/due-tasks.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';

/** Weeks before the month from which the days of use are expected (our choice: long enough for a habit, short enough to be the present one). */
export const USE_WEEKS = 8;

/**
 * Days of use that a unit is expected to have: those weekdays on which it was in use in at least half of the last weeks, or of those since its first day of use where they are
 * fewer. Holidays are not known. A unit with no use in that time has none.
 *
 * @param from first operating day of the days asked for; the weeks end before it
 * @param until first operating day after them
 * @returns days in order, each with the mean number of cycles of the unit's days of use, as a stand-in for cycles to come
 */
export function expectedUse(history: Pick<UnitHistory, 'use_days'>, from: Day, until: Day): UseDay[] {
  const recent = history.use_days.filter((use) => use.day >= from - 7 * USE_WEEKS && use.day < from);
  const times = new Map<number, number>();
  for (const use of recent) times.set(weekday(use.day), (times.get(weekday(use.day)) ?? 0) + 1);
  const first = history.use_days[0]?.day ?? from;
  const weeks = Math.min(USE_WEEKS, Math.max(1, Math.ceil((from - first) / 7)));
  const cycles = recent.reduce((sum, use) => sum + use.cycles, 0) / Math.max(1, recent.length);
  return Array.from({ length: until - from }, (_, index) => from + index)
    .filter((day) => (times.get(weekday(day)) ?? 0) >= weeks / 2)
    .map((day) => ({ day, first_cycle: Number.NaN, cycles }));
}
