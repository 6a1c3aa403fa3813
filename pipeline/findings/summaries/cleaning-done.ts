import { groupBy } from '../../group-by.ts';
import { type Day, formatDay } from '../../site/day.ts';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';
import type { DueTask } from '../../transform/cleaning/due-tasks.ts';
import { type CleaningDay, DUE_STATES, type DueCounts } from '../review-schema.ts';
import type { UnitCourse } from '../shares/unit-course.ts';

/** Counts of due tasks by unit and task, between two operating days (the second left out). Tasks that never fell due are left out. */
export function dueCounts(histories: readonly UnitCourse[], from: Day, until: Day): DueCounts[] {
  return histories.flatMap((history) =>
    CLEANING_TASKS.flatMap((task) => {
      const due = history.due.filter((of) => of.task === task && of.due >= from && of.due < until);
      if (due.length === 0) return [];
      const counts = Object.fromEntries(
        DUE_STATES.map((state) => [state, due.filter((of) => of.state === state).length]),
      );
      return [{ unit: history.unit, task, due: due.length, ...counts } as DueCounts];
    }),
  );
}

/** The cleaning picture of a month: each unit, each task that ever falls due on it, each day. */
export function cleaningDays(histories: readonly UnitCourse[], from: Day, until: Day): CleaningDay[] {
  return histories.flatMap((history) => {
    const inUse = new Set(history.use_days.map((use) => use.day));
    const byTask = groupBy(history.due, (due) => due.task);
    return CLEANING_TASKS.filter((task) => byTask.has(task)).flatMap((task) => {
      const states = new Map(byTask.get(task)!.map((due: DueTask) => [due.due, due.state]));
      return days(from, until).map((day) => ({
        unit: history.unit,
        task,
        date: formatDay(day),
        state: states.get(day) ?? (inUse.has(day) ? 'not_due' : 'idle'),
      }));
    });
  });
}

function days(from: Day, until: Day): Day[] {
  return Array.from({ length: until - from }, (_, index) => from + index);
}
