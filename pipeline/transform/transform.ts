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
  const units = recordsByUnit(site, records, until, only);
  const logs = cleaningLogs(units.map(loggedUnit), site.policyOf);
  const histories = units.map((unit) => unitHistory(site, unit, until, logs.get(unit.site)!));
  const { rows, joins } = unitDayPanel(histories, until, site.rules.comparison.stratum_days);
  return { until, histories, panel: rows, joins, later_records: laterRecords(records, histories) };
}

function laterRecords(records: Records, histories: readonly UnitHistory[]): number {
  const read =
    records.cycles.length +
    records.air_removal_tests.length +
    records.leak_tests.length +
    records.cleanings.length +
    records.service.length;
  const used = histories.reduce(
    (sum, of) =>
      sum +
      of.cycles.length +
      of.tests.length +
      of.leak_tests.length +
      of.cleanings.length +
      of.service.length,
    0,
  );
  return read - used;
}

function loggedUnit({ unit, site, clock, cleanings }: UnitRecords): LoggedUnit {
  return {
    unit,
    site,
    logged_days: cleanings.map((cleaning) => clock.operatingDay(cleaning.time)),
    logged_tasks: cleanings.map((cleaning) => cleaning.task),
  };
}
