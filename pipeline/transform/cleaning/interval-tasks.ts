import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import type { CleaningLog } from './cleaning-log.ts';
import { countsAsDone, type DueTask, type UseDay, unrecordedState } from './due-tasks.ts';
import { type IntervalClock, intervalClock } from './interval-clock.ts';
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
 * the interval counts as the coming task done; earlier work is extra: it restarts the clock and fulfils nothing.
 */
export function intervalTasks(input: IntervalInput): DueTask[] {
  const { unit, policy, useDays, records, until } = input;
  if (useDays.length === 0) return [];
  const clock = intervalClock(policy, useDays);
  const counted = records
    .filter((record) => countsAsDone(record, input.contradictedCounts))
    .map((record) => record.day);
  const tasks: DueTask[] = [];
  let anchor = useDays[0]!.day;
  let extras = [...input.alsoDue];
  const push = (due: Day, state: DueTask['state'], done: Day | null) =>
    tasks.push({
      unit,
      task: policy.task,
      due,
      state,
      done,
      days_late: done === null ? null : Math.max(0, done - due),
    });

  for (const done of [...counted, null]) {
    const end = done ?? until;
    let passed = 0;
    let fulfilled = false;
    for (;;) {
      const byInterval = input.repeats
        ? clock.nextUse(clock.reached(anchor, passed + 1))
        : Number.POSITIVE_INFINITY;
      const extra = extras[0] ?? Number.POSITIVE_INFINITY;
      const due = Math.min(byInterval, clock.nextUse(extra));
      const raw = Math.min(byInterval, extra);
      if (done === null ? due >= until : raw > done) break;
      if (extra <= byInterval) extras = extras.slice(1);
      else passed++;
      const following = nextDue(clock, anchor, passed + 1, extras[0], input.repeats);
      if (done !== null && following > done) {
        push(Math.min(due, done), done - due > policy.grace_days ? 'done_late' : 'done', done);
        fulfilled = true;
        break;
      }
      if (done === null && following >= until && until - 1 - due <= policy.grace_days)
        push(due, 'open', null);
      else {
        const state = notDoneState(input, due, Math.min(following, end));
        push(due, state, state === 'done' ? due : null);
      }
    }
    if (done === null) break;
    const halfWay = input.repeats && passed === 0 && done >= anchor + (clock.reached(anchor, 1) - anchor) / 2;
    if (!fulfilled && halfWay) push(done, 'done', done);
    anchor = done;
  }
  return tasks;
}

function nextDue(
  clock: IntervalClock,
  anchor: Day,
  times: number,
  extra: Day | undefined,
  repeats: boolean,
): Day {
  return Math.min(
    repeats ? clock.reached(anchor, times) : Number.POSITIVE_INFINITY,
    extra ?? Number.POSITIVE_INFINITY,
  );
}

/** State of a due task that no counted record fulfils before `following`. */
function notDoneState(input: IntervalInput, due: Day, following: Day): DueTask['state'] {
  const near = input.records.filter(
    (record) => record.day >= due - Math.floor(input.policy.every / 2) && record.day < following,
  );
  if (near.some((record) => record.contradicted && !input.contradictedCounts)) return 'contradicted';
  if (near.some((record) => record.state === 'missed')) return 'missed';
  return unrecordedState(input.policy, input.log, due);
}
