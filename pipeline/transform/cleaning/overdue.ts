import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import type { CleaningLog } from './cleaning-log.ts';
import { countsAsDone, type UseDay } from './due-tasks.ts';
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
    if (day <= clock.withGrace(due)) {
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
