import type { Day } from '../site/day.ts';
import type { Records } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import { cleaningLogs, type LoggedUnit } from './cleaning/cleaning-log.ts';
import type { JoinCount } from './join-count.ts';
import type { UnitDay } from './panel/unit-day.ts';
import { unitDayPanel } from './panel/unit-day-panel.ts';
import { recordsByUnit, type UnitRecords } from './records-by-unit.ts';
import { type UnitHistory, unitHistory } from './unit-history.ts';

/** The answer of the transform stage. */
export interface Transformed {
  /** First operating day after the period. */
  until: Day;
  histories: UnitHistory[];
  panel: UnitDay[];
  joins: JoinCount[];
  /** Records that lie after the period (water and inspections are not counted). */
  later_records: number;
}

/**
 * Joins records to the unit-day panel. Pure: records in, rows out.
 *
 * @param until first operating day that is left out
 * @param only all units of some sites, where the records are of these alone
 */
export function transform(site: Site, records: Records, until: Day, only?: readonly string[]): Transformed {
  return transformSorted(site, sortRecords(site, records, until, only), until);
}

/** Records of units up to an operating day, and how many lie after it. */
export interface SortedRecords extends Pick<Transformed, 'later_records'> {
  units: UnitRecords[];
}

/** Sorts the records to their units, as {@link transform} takes them. */
export function sortRecords(
  site: Site,
  records: Records,
  until: Day,
  only?: readonly string[],
): SortedRecords {
  const units = recordsByUnit(site, records, until, only);
  return { units, later_records: units.reduce((left, unit) => left - countOf(unit), countOf(records)) };
}

/**
 * The same as {@link transform} from records that are sorted.
 *
 * @param sorted its list of units is emptied: what was read of a unit can be let go as soon as its history is made, which holds the same and more
 */
export function transformSorted(
  site: Site,
  { units, later_records }: SortedRecords,
  until: Day,
): Transformed {
  const logs = cleaningLogs(units.map(loggedUnit), site.policyOf);
  const histories: UnitHistory[] = [];
  for (let unit = units.shift(); unit; unit = units.shift())
    histories.push(unitHistory(site, unit, until, logs.get(unit.site)!));
  const { rows, joins } = unitDayPanel(histories, until, site.rules.comparison.stratum_days);
  return { until, histories, panel: rows, joins, later_records };
}

type Lists = Exclude<keyof UnitRecords, 'unit' | 'site' | 'clock'>;

const countOf = (of: Record<Lists, readonly unknown[]>): number =>
  of.cycles.length +
  of.air_removal_tests.length +
  of.leak_tests.length +
  of.cleanings.length +
  of.service.length;

function loggedUnit({ unit, site, clock, cleanings }: UnitRecords): LoggedUnit {
  return {
    unit,
    site,
    logged_days: cleanings.map((cleaning) => clock.operatingDay(cleaning.time)),
    logged_tasks: cleanings.map((cleaning) => cleaning.task),
  };
}
