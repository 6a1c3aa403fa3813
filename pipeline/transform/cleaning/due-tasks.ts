import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import type { CleaningTask } from '../../site/vocabulary.ts';
import type { CleaningLog } from './cleaning-log.ts';
import type { JudgedCleaning } from './judge-cleanings.ts';

/**
 * State of a task that fell due. `contradicted`: the only record of it is one that the cycle log contradicts. `open`: due, and neither done nor past
 * its grace when the period ends.
 */
export type DueState = 'done' | 'done_late' | 'missed' | 'not_recorded' | 'contradicted' | 'open';

/** A task that fell due on a unit. A day with no use has none. */
export interface DueTask {
  unit: string;
  task: CleaningTask;
  /** Operating day on which it fell due: the first day of use on or after the end of the interval. */
  due: Day;
  state: DueState;
  /** Operating day on which it was done; null where it was not. */
  done: Day | null;
  /** Days from the due day to the day it was done; null where it was not. */
  days_late: number | null;
}

/** What a unit's days say to the rules of falling due: days of use in order, the start of the first cycle, cycles that count for an interval. */
export interface UseDay {
  day: Day;
  first_cycle: number;
  cycles: number;
}

/**
 * The state of a due task with no record: the site's rule where its cleaning log was kept, else not recorded. Blank is neither done nor
 * missed without a rule.
 */
export function unrecordedState(
  policy: Policy,
  log: CleaningLog,
  due: Day,
): 'missed' | 'not_recorded' | 'done' {
  return log.covers(policy.task, due) ? policy.unrecorded_means : 'not_recorded';
}

/** Whether a record says that the work was done, in the reading chosen for records that the cycle log contradicts. */
export function countsAsDone(cleaning: JudgedCleaning, contradictedCounts: boolean): boolean {
  return cleaning.done && (contradictedCounts || !cleaning.contradicted);
}
