import { groupBy } from '../../group-by.ts';
import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import { CLEANING_TASKS, type CleaningTask } from '../../site/vocabulary.ts';

/** What a site's cleaning log covers. A blank says something only where the log was kept. */
export interface CleaningLog {
  /** Whether the log was kept for the task on each day from the one to the other. */
  covers(task: CleaningTask, from: Day, to?: Day): boolean;
}

/** What a unit's records say of the log of its site. */
export interface LoggedUnit {
  unit: string;
  site: string;
  /** Operating days with any cleaning record, and the tasks of which there is one. */
  logged_days: readonly Day[];
  logged_tasks: readonly CleaningTask[];
}

/** A log with no record for so many days has a gap, unless its tasks are rarer than that (our choice). */
export const LOG_GAP_DAYS = 10;

/**
 * The cleaning logs of the sites, each from the records of all its units. A task with no record on any unit of the site is not logged there. The log
 * runs from its first record to its last, less gaps: stretches between two records longer than ten days, or than twice the shortest interval of the
 * tasks that are logged. It reaches on past the last record by as much.
 */
export function cleaningLogs(
  units: readonly LoggedUnit[],
  policyOf: (unit: string, task: CleaningTask) => Policy | undefined,
): Map<string, CleaningLog> {
  const logs = new Map<string, CleaningLog>();
  for (const [site, ofSite] of groupBy(units, (unit) => unit.site)) logs.set(site, logOf(ofSite, policyOf));
  return logs;
}

function logOf(
  units: readonly LoggedUnit[],
  policyOf: (unit: string, task: CleaningTask) => Policy | undefined,
): CleaningLog {
  const days = new Set(units.flatMap((unit) => unit.logged_days));
  const logged = new Set(units.flatMap((unit) => unit.logged_tasks));
  const intervals = CLEANING_TASKS.filter((task) => logged.has(task)).flatMap((task) =>
    units.flatMap(({ unit }) => {
      const policy = policyOf(unit, task);
      return policy && policy.counted_in !== 'cycles' ? [policy.every] : [];
    }),
  );
  const longest = Math.max(LOG_GAP_DAYS, 2 * Math.min(...intervals, Number.MAX_SAFE_INTEGER));
  const reach = intervals.length === 0 ? LOG_GAP_DAYS : longest;
  const sorted = [...days].sort((a, b) => a - b);
  const stretches: { from: Day; to: Day }[] = [];
  for (const day of sorted) {
    const last = stretches.at(-1);
    if (last && day - last.to <= reach) last.to = day;
    else stretches.push({ from: day, to: day });
  }
  const end = stretches.at(-1);
  if (end) end.to += reach;
  return {
    covers: (task, from, to = from) =>
      logged.has(task) && stretches.some((stretch) => stretch.from <= from && to <= stretch.to),
  };
}
