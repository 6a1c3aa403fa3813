import type { Policy, SiteFile } from './site-schema.ts';
import type { CleaningTask } from './vocabulary.ts';

/** When a task is due on one unit; undefined where it never is. */
export type PolicyOf = (unit: string, task: CleaningTask) => Policy | undefined;

const base = { grace_days: 0, unrecorded_means: 'not_recorded' } as const;

/**
 * Defaults, each the site's to set: strainer each day of use; drain flush each week on units that process liquids; professional cleaning
 * each year. There is none for the chamber: nobody prescribes its interval.
 * Source: weekly drain flush, daily strainer and yearly professional cleaning are common practice; the instructions for use rule.
 */
const DEFAULTS: readonly Policy[] = [
  { ...base, task: 'drain_strainer', every: 1, counted_in: 'days_of_use' },
  { ...base, task: 'drain_flush', every: 7, counted_in: 'calendar_days', grace_days: 1 },
  { ...base, task: 'professional', every: 365, counted_in: 'calendar_days', grace_days: 14 },
];

/** The policy in force: the last entry of the site file that names the unit, else the last that names no units, else the default. */
export function cleaningPolicy(file: SiteFile): PolicyOf {
  const liquids = new Set((file.units ?? []).filter((unit) => unit.liquids).map((unit) => unit.id));
  return (unit, task) => {
    const entries = file.cleaning.filter((entry) => entry.task === task);
    const own = entries.findLast((entry) => entry.units?.includes(unit));
    if (own) return own;
    const general = entries.findLast((entry) => entry.units === undefined);
    if (task === 'drain_flush' && !liquids.has(unit)) return undefined;
    return general ?? DEFAULTS.find((entry) => entry.task === task);
  };
}
