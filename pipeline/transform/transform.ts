import type { Day } from '../site/day.ts';
import type { Records } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import { type CleaningLog, cleaningLogs, type LoggedUnit } from './cleaning/cleaning-log.ts';
import type { JoinCount } from './join-count.ts';
import type { UnitDay } from './panel/unit-day.ts';
import { unitDayPanel } from './panel/unit-day-panel.ts';
import { type RecordsOfUnits, recordsByUnit, type UnitRecords } from './records-by-unit.ts';
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
 * @param since first operating day whose cycles and air-removal tests count, where lone ones lie before it
 */
export function transform(site: Site, records: Records, until: Day, since?: Day): Transformed {
  const units = recordsByUnit(site, records, until, { since });
  const later_records = units.reduce((left, unit) => left - takenOf(unit), countOf(records));
  const logs = cleaningLogs(units.map(loggedUnit), site.policyOf);
  const histories: UnitHistory[] = [];
  // What was read of a unit can be let go as soon as its history is made, which holds the same and more.
  for (let unit = units.shift(); unit; unit = units.shift())
    histories.push(unitHistory(site, unit, until, logs.get(unit.site)!));
  return { ...joined(site, histories, until), later_records };
}

/** The cleaning logs of sites, which the units of each are joined with. */
export function logsOfSites(
  site: Site,
  records: Pick<Records, 'cleanings'>,
  until: Day,
  units: readonly string[],
): ReadonlyMap<string, CleaningLog> {
  const sorted = recordsByUnit(site, { ...NO_RECORDS, ...records }, until, { only: units });
  return cleaningLogs(sorted.map(loggedUnit), site.policyOf);
}

/**
 * The same as {@link transform} of one unit, so that the records of others need not be held beside its own.
 *
 * @param records of the unit
 * @param logs of the sites, see {@link logsOfSites}
 */
export function transformUnit(
  site: Site,
  unit: string,
  records: RecordsOfUnits,
  until: Day,
  logs: ReadonlyMap<string, CleaningLog>,
  since?: Day,
): Transformed & { histories: [UnitHistory] } {
  const [sorted] = recordsByUnit(site, records, until, { since, only: [unit] });
  const history = unitHistory(site, sorted!, until, logs.get(sorted!.site)!);
  const later_records = countOf(records) - takenOf(sorted!);
  return { ...joined(site, [history], until), histories: [history], later_records };
}

const joined = (
  site: Site,
  histories: UnitHistory[],
  until: Day,
): Pick<Transformed, 'until' | 'histories' | 'panel' | 'joins'> => {
  const { rows, joins } = unitDayPanel(histories, until, site.rules.comparison.stratum_days);
  return { until, histories, panel: rows, joins };
};

const NO_RECORDS = { cycles: [], air_removal_tests: [], leak_tests: [], cleanings: [], service: [] };

type Lists = Exclude<keyof UnitRecords, 'unit' | 'site' | 'clock' | 'lone_before'>;

const countOf = (of: Record<Lists, readonly unknown[]>): number =>
  of.cycles.length +
  of.air_removal_tests.length +
  of.leak_tests.length +
  of.cleanings.length +
  of.service.length;

/** How many records of a unit do not lie after the period. */
const takenOf = (unit: UnitRecords): number => countOf(unit) + unit.lone_before;

function loggedUnit({ unit, site, clock, cleanings }: UnitRecords): LoggedUnit {
  return {
    unit,
    site,
    logged_days: cleanings.map((cleaning) => clock.operatingDay(cleaning.time)),
    logged_tasks: cleanings.map((cleaning) => cleaning.task),
  };
}
