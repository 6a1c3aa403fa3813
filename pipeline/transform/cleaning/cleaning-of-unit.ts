import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import type { Policy } from '../../site/site-schema.ts';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';
import type { CleaningLog } from './cleaning-log.ts';
import { dailyTasks } from './daily-tasks.ts';
import { countsAsDone, type DueTask, type UseDay } from './due-tasks.ts';
import { intervalTasks } from './interval-tasks.ts';
import type { JudgedCleaning } from './judge-cleanings.ts';
import { missedInARow, missedInWindow, type Overdue, overdueDays } from './overdue.ts';

/** A unit's due tasks and its exposures by day of use. */
export interface CleaningOfUnit {
  due: DueTask[];
  /** Chamber overdue in the site's reading of contradicted records; undefined where the site states no interval for it. */
  chamber: Map<Day, Overdue> | undefined;
  /** The same in the other reading: contradicted records count as done. */
  chamberAllRecords: Map<Day, Overdue> | undefined;
  strainersMissed: Map<Day, number | null>;
  flushesMissedInARow: Map<Day, number | null>;
}

/** Puts the site's policy to a unit's days of use and cleaning records. */
export function cleaningOfUnit(
  site: Site,
  unit: string,
  useDays: readonly UseDay[],
  cleanings: readonly JudgedCleaning[],
  until: Day,
  log: CleaningLog,
): CleaningOfUnit {
  const contradictedCounts = site.rules.contradicted_counts_as_done;
  const chamberDays = [
    ...new Set(
      cleanings
        .filter((cleaning) => cleaning.task === 'chamber' && countsAsDone(cleaning, contradictedCounts))
        .map((cleaning) => cleaning.day),
    ),
  ];
  const policies = new Map(CLEANING_TASKS.map((task) => [task, site.policyOf(unit, task)]));
  const due = CLEANING_TASKS.flatMap((task) => {
    const policy = policies.get(task) ?? (task === 'drain_flush' ? AFTER_CHAMBER_ONLY : undefined);
    if (!policy) return [];
    if (policy.counted_in === 'days_of_use' && policy.every === 1)
      return dailyTasks(unit, policy, useDays, cleanings, log);
    const records = cleanings.filter((cleaning) => cleaning.task === task);
    const alsoDue = task === 'drain_flush' ? chamberDays : [];
    const repeats = policies.get(task) !== undefined;
    return intervalTasks({
      unit,
      policy,
      useDays,
      records,
      alsoDue,
      repeats,
      until,
      contradictedCounts,
      log,
    });
  });
  const chamberPolicy = policies.get('chamber');
  const chamberRecords = cleanings.filter((cleaning) => cleaning.task === 'chamber');
  const overdue = (counts: boolean) =>
    chamberPolicy && overdueDays(chamberPolicy, useDays, chamberRecords, counts, log);
  const flushes = due.filter((task) => task.task === 'drain_flush');
  return {
    due,
    chamber: overdue(contradictedCounts),
    chamberAllRecords: overdue(true),
    strainersMissed: missedInWindow(
      due.filter((task) => task.task === 'drain_strainer'),
      site.rules.comparison.strainer_window_days,
    ),
    flushesMissedInARow: missedInARow(
      flushes,
      useDays.map((use) => use.day),
      policies.get('drain_flush')?.grace_days ?? AFTER_CHAMBER_ONLY.grace_days,
    ),
  };
}

/** A unit that processes no liquids has its drain flushed after each chamber cleaning only (common practice, no source). */
const AFTER_CHAMBER_ONLY: Policy = {
  task: 'drain_flush',
  every: 7,
  counted_in: 'calendar_days',
  grace_days: 1,
  unrecorded_means: 'not_recorded',
};
