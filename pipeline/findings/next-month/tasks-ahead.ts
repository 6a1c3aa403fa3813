import { isDaily } from '../../site/cleaning-policy.ts';
import { type Day, formatDay } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import type { Policy } from '../../site/site-schema.ts';
import { CLEANING_TASKS, type CleaningTask } from '../../site/vocabulary.ts';
import { countsAsDone, type UseDay } from '../../transform/cleaning/due-tasks.ts';
import { intervalClock } from '../../transform/cleaning/interval-clock.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { TaskAhead } from './next-month-schema.ts';

/**
 * Cleaning tasks of a unit that fall due between two days, by the site's policy and what was last done. Each task is taken as done on the day on which it stands, so
 * that the next follows from it; a drain flush falls due after each chamber cleaning too. Where the unit is expected on no day there is none.
 *
 * @param ahead days of expected use, in order
 */
export function tasksAhead(
  site: Site,
  history: UnitHistory,
  ahead: readonly UseDay[],
  from: Day,
): TaskAhead[] {
  if (ahead.length === 0) return [];
  const chamber = byInterval(site, history, ahead, from, 'chamber', []);
  const chamberDays = chamber.map((task) => task.day);
  return CLEANING_TASKS.flatMap((task) => {
    if (task === 'chamber') return chamber;
    return byInterval(site, history, ahead, from, task, task === 'drain_flush' ? chamberDays : []);
  }).map(({ day, ...task }) => ({ ...task, date: formatDay(day) }));
}

type Dated = Omit<TaskAhead, 'date'> & { day: Day };

function byInterval(
  site: Site,
  history: UnitHistory,
  ahead: readonly UseDay[],
  from: Day,
  task: CleaningTask,
  alsoAfter: readonly Day[],
): Dated[] {
  const policy = site.policyOf(history.unit, task);
  const counts = site.rules.contradicted_counts_as_done;
  const last = history.cleanings.findLast((of) => of.task === task && countsAsDone(of, counts))?.day ?? null;
  const made = (day: Day, state: TaskAhead['state'], due: Day, after: TaskAhead['after']): Dated => ({
    unit: history.unit,
    task,
    day,
    state,
    due: formatDay(due),
    after,
    last_done: last === null ? null : formatDay(last),
  });
  if (policy && isDaily(policy)) return ahead.map(({ day }) => made(day, 'each_day_of_use', day, 'interval'));

  const tasks: Dated[] = [];
  const first = ahead[0]!.day;
  const end = ahead.at(-1)!.day;
  const clock = clockOf(policy, [...history.use_days, ...ahead]);
  const waiting = history.cleaning.due.findLast((of) => of.task === task);
  const begun = last ?? history.use_days[0]?.day;
  if (begun === undefined) return [];
  let anchor = begun;
  if (clock.nextUse(clock.reached(anchor, 1)) < from) {
    tasks.push(made(first, 'outstanding', clock.reached(anchor, 1), 'interval'));
    anchor = first;
  } else if (policy === undefined && waiting?.state === 'open') {
    tasks.push(made(first, 'outstanding', waiting.due, 'chamber_cleaning'));
    anchor = first;
  }
  const extras = alsoAfter.filter((day) => day > anchor || tasks.length === 0);
  for (;;) {
    const byClock = clock.nextUse(Math.max(clock.reached(anchor, 1), from));
    const extra = extras[0] ?? Number.POSITIVE_INFINITY;
    const day = Math.min(byClock, extra);
    if (day > end) return tasks;
    while (extras.length > 0 && extras[0]! <= day) extras.shift();
    const due = day === extra ? day : clock.reached(anchor, 1);
    tasks.push(made(day, 'due', due, day === extra ? 'chamber_cleaning' : 'interval'));
    anchor = day;
  }
}

/** The clock of a policy; with none, nothing ever falls due by it. */
function clockOf(policy: Policy | undefined, useDays: readonly UseDay[]) {
  if (policy) return intervalClock(policy, useDays);
  const never = () => Number.POSITIVE_INFINITY;
  return { reached: never, nextUse: never };
}
