import { isDaily } from '../../site/cleaning-policy.ts';
import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';
import type { CleaningLog } from './cleaning-log.ts';
import { dailyTasks } from './daily-tasks.ts';
import { countsAsDone, type DueTask, type UseDay } from './due-tasks.ts';
import { intervalClock } from './interval-clock.ts';
import { intervalTasks } from './interval-tasks.ts';
import type { JudgedCleaning } from './judge-cleanings.ts';
import { missedInARow } from './missed-in-a-row.ts';
import { missedInWindow } from './missed-in-window.ts';
import { type Overdue, overdueAfter, overdueDays } from './overdue.ts';

/** A unit's due tasks and its exposures by day of use. */
export interface CleaningOfUnit {
  due: DueTask[];
  /** Chamber overdue in the site's reading of contradicted records; undefined where the site states no interval for it. */
  chamber: Map<Day, Overdue> | undefined;
  /** The same in the other reading: contradicted records count as done. */
  chamberAllRecords: Map<Day, Overdue> | undefined;
  /** Chamber overdue at the start of the first day after the period; undefined where the site states no interval for it, or the unit was never in use. */
  chamberAtEnd: Overdue | undefined;
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
  const afterChamber = site.flushAfterChamber(unit);
  const due = CLEANING_TASKS.flatMap((task) => {
    const policy = policies.get(task) ?? (task === 'drain_flush' ? afterChamber : undefined);
    if (!policy) return [];
    if (isDaily(policy)) return dailyTasks(unit, policy, useDays, cleanings, log);
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
  const policy = policies.get('chamber');
  const chamber = policy && {
    policy,
    useDays,
    records: cleanings.filter((cleaning) => cleaning.task === 'chamber'),
    contradictedCounts,
    log,
  };
  const days = useDays.map((use) => use.day);
  return {
    due,
    chamber: chamber && overdueDays(chamber),
    chamberAllRecords: chamber && overdueDays({ ...chamber, contradictedCounts: true }),
    chamberAtEnd: chamber && overdueAfter(chamber, until),
    strainersMissed: missedInWindow(
      due.filter((task) => task.task === 'drain_strainer'),
      days,
      site.rules.comparison.strainer_window_days,
    ),
    flushesMissedInARow: missedInARow(
      due.filter((task) => task.task === 'drain_flush'),
      days,
      intervalClock(policies.get('drain_flush') ?? afterChamber, useDays),
    ),
  };
}
