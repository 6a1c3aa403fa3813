import type { Policy, SiteFile } from './site-schema.ts';
import type { CleaningTask } from './vocabulary.ts';

/** When a task is due on one unit; undefined where no interval makes it due. */
export type PolicyOf = (unit: string, task: CleaningTask) => Policy | undefined;

/** The site's cleaning policies, unit by unit. */
export interface CleaningPolicies {
  policyOf: PolicyOf;
  /** How a drain flush after a chamber cleaning is read, on a unit on which no interval makes one due: grace and blanks. */
  flushAfterChamber(unit: string): Policy;
}

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

/**
 * The policy in force: the last entry of the site file that names the unit, else the last that names no units, else the default. An entry for the drain flush that names no units is for those that process
 * liquids, where the site says which do; else for all.
 */
export function cleaningPolicies(file: SiteFile): CleaningPolicies {
  const liquids = new Set((file.units ?? []).filter((unit) => unit.liquids).map((unit) => unit.id));
  const stated = (unit: string, task: CleaningTask): { own?: Policy; general?: Policy } => {
    const entries = file.cleaning.filter((entry) => entry.task === task);
    const own = entries.findLast((entry) => entry.units?.includes(unit));
    const general = entries.findLast((entry) => entry.units === undefined);
    return { ...(own && { own }), ...(general && { general }) };
  };
  const byDefault = (task: CleaningTask): Policy | undefined => DEFAULTS.find((entry) => entry.task === task);
  return {
    policyOf(unit, task) {
      const { own, general } = stated(unit, task);
      if (own || task !== 'drain_flush') return own ?? general ?? byDefault(task);
      if (liquids.has(unit)) return general ?? byDefault(task);
      return liquids.size === 0 ? general : undefined;
    },
    flushAfterChamber: (unit) => stated(unit, 'drain_flush').general ?? byDefault('drain_flush')!,
  };
}

/** Whether a task is due on each day of use: also each calendar day, since nothing is due where there is no use. */
export const isDaily = ({ every, counted_in }: Policy): boolean => every === 1 && counted_in !== 'cycles';
