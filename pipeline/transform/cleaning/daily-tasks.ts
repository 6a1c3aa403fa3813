import { groupBy } from '../../group-by.ts';
import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import type { CleaningLog } from './cleaning-log.ts';
import { type DueTask, type UseDay, unrecordedState } from './due-tasks.ts';
import type { JudgedCleaning } from './judge-cleanings.ts';

/**
 * A task due on each day of use before the first cycle (policy: every day). Done: a record of that operating day, at or before the first
 * cycle or with no time. Done late: after the first cycle started.
 */
export function dailyTasks(
  unit: string,
  policy: Policy,
  useDays: readonly UseDay[],
  cleanings: readonly JudgedCleaning[],
  log: CleaningLog,
): DueTask[] {
  const byDay = groupBy(
    cleanings.filter((cleaning) => cleaning.task === policy.task),
    (cleaning) => cleaning.day,
  );
  return useDays.map(({ day, first_cycle }) => {
    const records = byDay.get(day) ?? [];
    const state = stateOf(records, first_cycle, unrecordedState(policy, log, day));
    const done = state === 'done' || state === 'done_late';
    return {
      unit,
      task: policy.task,
      due: day as Day,
      state,
      done: done ? day : null,
      days_late: done ? 0 : null,
    };
  });
}

function stateOf(
  records: readonly JudgedCleaning[],
  firstCycle: number,
  unrecorded: DueTask['state'],
): DueTask['state'] {
  const done = records.filter((record) => record.done);
  if (done.some((record) => record.time_mark === 'day' || record.time <= firstCycle)) return 'done';
  if (done.length > 0) return 'done_late';
  if (records.some((record) => record.state === 'missed')) return 'missed';
  // A record that says that the task was not due is no blank, and the day was one of use.
  if (records.some((record) => record.state === 'not_due')) return 'not_recorded';
  return unrecorded;
}
