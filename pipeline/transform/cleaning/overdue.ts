import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import type { CleaningLog } from './cleaning-log.ts';
import { countsAsDone, type DueTask, type UseDay } from './due-tasks.ts';
import { intervalClock } from './interval-clock.ts';
import type { JudgedCleaning } from './judge-cleanings.ts';

/** Whether a task was overdue when a day's first cycle started. Null: not known. */
export interface Overdue {
  overdue: 0 | 1 | null;
  /** Calendar days past the due day; 0 while not overdue. */
  days_past_due: number | null;
  /** Calendar days since the last counted cleaning; null before the first. */
  clock_days: number | null;
}

/**
 * Overdue at the start of each day's first cycle: more than the interval (and the grace) has passed since the last counted cleaning that was over by
 * then. A record with a date only counts from the next day on. Before the first record it is known only that the interval since the first
 * day of use has passed. Where the site's rule leaves blanks as not recorded, or its log was not kept, a day past due is known to be overdue only if the next
 * record came within the next interval (a late cleaning); else it is not known.
 */
export function overdueDays(
  policy: Policy,
  useDays: readonly UseDay[],
  records: readonly JudgedCleaning[],
  contradictedCounts: boolean,
  log: CleaningLog,
): Map<Day, Overdue> {
  const clock = intervalClock(policy, useDays);
  const counted = records.filter((record) => countsAsDone(record, contradictedCounts));
  const result = new Map<Day, Overdue>();
  let next = 0;
  for (const { day, first_cycle } of useDays) {
    while (next < counted.length && isOver(counted[next]!, day, first_cycle)) next++;
    const last = counted[next - 1]?.day ?? null;
    const anchor = last ?? useDays[0]!.day;
    const clock_days = last === null ? null : day - last;
    const due = clock.reached(anchor, 1);
    if (day <= due + policy.grace_days) {
      result.set(day, {
        overdue: last === null ? null : 0,
        days_past_due: last === null ? null : 0,
        clock_days,
      });
      continue;
    }
    const comes = counted[next]?.day ?? Number.POSITIVE_INFINITY;
    const kept = log.covers(policy.task, due, day);
    const known = (kept && policy.unrecorded_means === 'missed') || comes <= clock.reached(anchor, 2);
    if (kept && policy.unrecorded_means === 'done')
      result.set(day, { overdue: 0, days_past_due: 0, clock_days: null });
    else result.set(day, { overdue: known ? 1 : null, days_past_due: known ? day - due : null, clock_days });
  }
  return result;
}

const isOver = (record: JudgedCleaning, day: Day, firstCycle: number): boolean =>
  record.day < day || (record.day === day && record.time_mark !== 'day' && record.time <= firstCycle);

/**
 * Days on which a daily task was missed among the last days of use, the present one included: missed before it, not done before its own first
 * cycle on it. Null where one of them is not recorded, or fewer days of use have come.
 *
 * @param tasks the unit's due tasks, one for each day of use, in order
 */
export function missedInWindow(tasks: readonly DueTask[], window: number): Map<Day, number | null> {
  const result = new Map<Day, number | null>();
  for (const [index, task] of tasks.entries()) {
    const last = tasks.slice(Math.max(0, index - window + 1), index + 1);
    const unknown = last.length < window || last.some((of) => of.state === 'not_recorded');
    const missed = last.filter(
      (of) => of.state === 'missed' || (of === task && of.state === 'done_late'),
    ).length;
    result.set(task.due, unknown ? null : missed);
  }
  return result;
}

/**
 * How many due tasks in a row were missed when a day began: counted back from the last one past its grace to the last one done. Null where one
 * of them is not recorded or contradicted, or none has been due yet.
 *
 * @param tasks the unit's due tasks in order
 */
export function missedInARow(
  tasks: readonly DueTask[],
  days: readonly Day[],
  graceDays: number,
): Map<Day, number | null> {
  const result = new Map<Day, number | null>();
  for (const day of days) {
    let count: number | null = null;
    for (let index = tasks.length - 1; index >= 0; index--) {
      const task = tasks[index]!;
      if (task.due + graceDays >= day && !(task.done !== null && task.done < day)) continue;
      count ??= 0;
      if (task.done !== null && task.done < day) break;
      if (task.state === 'not_recorded' || task.state === 'contradicted') {
        count = null;
        break;
      }
      count++;
    }
    result.set(day, count);
  }
  return result;
}
