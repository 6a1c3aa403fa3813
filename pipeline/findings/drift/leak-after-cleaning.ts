import type { CleaningTask } from '../../site/vocabulary.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';

const HOUR_MS = 3_600_000;
/** Work that leaves rinse water in the chamber or the drain. */
const WET_TASKS: ReadonlySet<CleaningTask> = new Set(['chamber', 'drain_flush', 'professional']);

/** A unit's work that leaves water behind, in order of time. */
export function wetWorks(history: UnitHistory): UnitHistory['cleanings'] {
  return history.cleanings.filter((of) => of.done && WET_TASKS.has(of.task));
}

/** The wet work that came so soon before a leak test that rinse water may read as a leak; null where none did. */
export function wetBefore(
  works: UnitHistory['cleanings'],
  test: { time: number; day: number },
  wetHours: number,
): { task: CleaningTask; hours: number | null } | null {
  const near = works.findLast((of) =>
    of.time_mark === 'day'
      ? of.day === test.day
      : of.time <= test.time && test.time - of.time <= wetHours * HOUR_MS,
  );
  if (!near) return null;
  const hours = near.time_mark === 'day' ? null : Math.round((10 * (test.time - near.time)) / HOUR_MS) / 10;
  return { task: near.task, hours };
}
