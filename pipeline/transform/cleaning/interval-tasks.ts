import { firstFrom } from '../../first-from.ts';
import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import type { CleaningLog } from './cleaning-log.ts';
import { countsAsDone, type DueTask, type UseDay, unrecordedState } from './due-tasks.ts';
import { type FallsDue, fallsDue } from './falls-due.ts';
import { intervalClock } from './interval-clock.ts';
import type { JudgedCleaning } from './judge-cleanings.ts';

/** Input of `intervalTasks`: one unit, one task. */
export interface IntervalInput {
  unit: string;
  policy: Policy;
  useDays: readonly UseDay[];
  /** The unit's records of the task, in order of time. */
  records: readonly JudgedCleaning[];
  /** Other days that make the task due (a drain flush after a chamber cleaning), in order. */
  alsoDue: readonly Day[];
  /** False where only `alsoDue` makes the task due. */
  repeats: boolean;
  /** First operating day after the period. */
  until: Day;
  /** Whether records that the cycle log contradicts count as done. */
  contradictedCounts: boolean;
  /** The site's cleaning log: where it was not kept, a blank says nothing. */
  log: CleaningLog;
}

/**
 * A task due again after an interval. The clock starts at the last counted cleaning, at first at the first day of use. A due task that is not done
 * before the next falls due is missed (or as the site's rule for blanks says), and the next takes its place. Work done in the second half of
 * the interval counts as the coming task done; earlier work is extra: it restarts the clock and fulfils nothing. A day of use has one task at most, and one without use none: what
 * ended while the unit was idle waits for the day on which it is used again (see `fallsDue`).
 */
export function intervalTasks(input: IntervalInput): DueTask[] {
  const { unit, policy, useDays, repeats, until } = input;
  if (useDays.length === 0) return [];
  const clock = intervalClock(policy, useDays);
  const counted = input.records
    .filter((record) => countsAsDone(record, input.contradictedCounts))
    .map((record) => record.day);
  const tasks: DueTask[] = [];
  const push = (due: Day, state: DueTask['state'], done: Day | null) =>
    tasks.push({
      unit,
      task: policy.task,
      due,
      state,
      done,
      days_late: done === null ? null : Math.max(0, done - due),
    });
  /** What fell due before the next and was not done. */
  const pass = (days: readonly FallsDue[], end: Day) => {
    for (const [index, day] of days.entries()) {
      const state = notDoneState(input, day, days[index + 1]?.over ?? end);
      push(day.due, state, state === 'done' ? day.due : null);
    }
  };

  let anchor = useDays[0]!.day;
  let events = input.alsoDue;
  for (const done of counted) {
    const days = fallsDue(clock, anchor, events, repeats, (over) => over <= done);
    events = events.slice(firstFrom(events, (event) => event > done));
    const last = days.at(-1);
    if (last) {
      pass(days.slice(0, -1), last.over);
      push(Math.min(last.due, done), done > clock.withGrace(last.due) ? 'done_late' : 'done', done);
    } else if (repeats && done >= clock.reached(anchor, 0.5)) push(done, 'done', done);
    anchor = done;
  }

  const days = fallsDue(clock, anchor, events, repeats, (_, due) => due < until);
  const last = days.at(-1);
  const isOpen = last !== undefined && until - 1 <= clock.withGrace(last.due);
  pass(isOpen ? days.slice(0, -1) : days, isOpen ? last.over : until);
  if (isOpen) push(last.due, 'open', null);
  return tasks;
}

/** State of a due task that no counted record fulfils before `following`. A record that says that the task was not due is no blank. */
function notDoneState(input: IntervalInput, { due, from }: FallsDue, following: Day): DueTask['state'] {
  const near = input.records.filter((record) => record.day >= from && record.day < following);
  if (near.some((record) => record.contradicted && !input.contradictedCounts)) return 'contradicted';
  if (near.some((record) => record.state === 'missed')) return 'missed';
  if (near.some((record) => record.state === 'not_due')) return 'not_recorded';
  return unrecordedState(input.policy, input.log, due);
}
