import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import { byOver, isOver } from '../possible-time.ts';
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

/** What is asked of one task of a unit. */
export interface OverdueInput {
  policy: Policy;
  /** Days of use in order. */
  useDays: readonly UseDay[];
  /** The unit's records of the task, in order of time. */
  records: readonly JudgedCleaning[];
  /** Whether records that the cycle log contradicts count as done. */
  contradictedCounts: boolean;
  log: CleaningLog;
}

/**
 * Overdue at the start of each day's first cycle: more than the interval (and the grace) has passed since the last counted cleaning that was over by
 * then. A record with a date only counts from the next day on. Before the first record it is known only that the interval since the first
 * day of use has passed. Where the site's rule leaves blanks as not recorded, or its log was not kept, a day past due is known to be overdue only if the next
 * record came within the next interval (a late cleaning); else it is not known.
 */
export function overdueDays(input: OverdueInput): Map<Day, Overdue> {
  const { counted, judge } = overdueOf(input);
  let next = 0;
  return new Map(
    input.useDays.map(({ day, first_cycle }) => {
      while (next < counted.length && isOver(counted[next]!, day, first_cycle)) next++;
      return [day, judge(day, next)];
    }),
  );
}

/**
 * The same at the start of the first operating day after a record, whether or not the unit is used on it: all of its cleanings are over by then. Undefined
 * where the unit was never in use, so that nothing fell due.
 *
 * @param day first operating day after the record
 */
export function overdueAfter(input: OverdueInput, day: Day): Overdue | undefined {
  if (input.useDays.length === 0) return undefined;
  const { counted, judge } = overdueOf(input);
  return judge(day, counted.length);
}

/** The counted cleanings in the order in which they were over, and the judgement of a day by which the first `over` of them were. */
function overdueOf({ policy, useDays, records, contradictedCounts, log }: OverdueInput): {
  counted: JudgedCleaning[];
  judge(day: Day, over: number): Overdue;
} {
  const clock = intervalClock(policy, useDays);
  const counted = records.filter((record) => countsAsDone(record, contradictedCounts)).sort(byOver);
  const judge = (day: Day, over: number): Overdue => {
    const last = counted[over - 1]?.day ?? null;
    const anchor = last ?? useDays[0]!.day;
    const clock_days = last === null ? null : day - last;
    const due = clock.reached(anchor, 1);
    if (day <= clock.withGrace(due)) {
      const known = last === null ? null : 0;
      return { overdue: known, days_past_due: known, clock_days };
    }
    const comes = counted[over]?.day ?? Number.POSITIVE_INFINITY;
    const kept = log.covers(policy.task, due, day);
    if (kept && policy.unrecorded_means === 'done') return { overdue: 0, days_past_due: 0, clock_days: null };
    const known = (kept && policy.unrecorded_means === 'missed') || comes <= clock.reached(anchor, 2);
    return { overdue: known ? 1 : null, days_past_due: known ? day - due : null, clock_days };
  };
  return { counted, judge };
}
