import type { Day } from '../site/day.ts';
import type { AirRemovalTest, Cleaning, Cycle, LeakTest, Records, Service } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import type { WallClock } from '../site/wall-clock.ts';
import { unitOrder } from './unit-order.ts';

/** Records of the kinds that are each of a unit. */
export type RecordsOfUnits = Omit<Records, 'inspections' | 'water' | 'actions'>;

/** One unit's records up to the end of the review's period, each list in order of time, with the clock that dates them. */
export interface UnitRecords {
  unit: string;
  site: string;
  clock: WallClock;
  cycles: Cycle[];
  air_removal_tests: AirRemovalTest[];
  leak_tests: LeakTest[];
  cleanings: Cleaning[];
  service: Service[];
  /** Cycles and tests that were left out since they lie before all that count. */
  lone_before: number;
}

/**
 * Sorts the records to their units. Units come in the order of the site file, else in order of name.
 *
 * @param until first operating day that is left out: a month can be made again later although newer records have come
 * @param since first operating day whose cycles and air-removal tests count, where lone ones lie before it
 * @param only units of which the records are, where they are not of all units; a unit of them without a record has empty lists
 */
export function recordsByUnit(
  site: Site,
  records: RecordsOfUnits,
  until: Day,
  { since, only }: { since?: Day | undefined; only?: readonly string[] } = {},
): UnitRecords[] {
  const sitesOfUnits = new Map(
    site.declared.units?.map((unit) => [unit.id, unit.site ?? site.declared.sites[0]!.id]),
  );
  const ids = unitOrder(site, only ?? site.unitIds ?? namesFound(records));
  const units = new Map(
    ids.map((unit): [string, UnitRecords] => {
      const siteId = sitesOfUnits.get(unit) ?? site.declared.sites[0]!.id;
      const clock = site.sites.get(siteId)!.clock;
      return [
        unit,
        {
          unit,
          site: siteId,
          clock,
          cycles: [],
          air_removal_tests: [],
          leak_tests: [],
          cleanings: [],
          service: [],
          lone_before: 0,
        },
      ];
    }),
  );
  const deal = <T extends { unit: string }>(
    rows: readonly T[],
    time: (row: T) => number,
    list: (of: UnitRecords) => T[],
    from = Number.NEGATIVE_INFINITY,
  ) => {
    for (const row of rows) {
      const unit = units.get(row.unit);
      if (!unit) continue;
      const day = unit.clock.operatingDay(time(row));
      if (day < from) unit.lone_before++;
      else if (day < until) list(unit).push(row);
    }
    for (const unit of units.values()) list(unit).sort((a, b) => time(a) - time(b));
  };
  deal(
    records.cycles,
    (row) => row.start,
    (unit) => unit.cycles,
    since,
  );
  deal(
    records.air_removal_tests,
    (row) => row.time,
    (unit) => unit.air_removal_tests,
    since,
  );
  deal(
    records.leak_tests,
    (row) => row.time,
    (unit) => unit.leak_tests,
  );
  deal(
    records.cleanings,
    (row) => row.time,
    (unit) => unit.cleanings,
  );
  deal(
    records.service,
    (row) => row.from,
    (unit) => unit.service,
  );
  return [...units.values()];
}

function namesFound(records: RecordsOfUnits): Set<string> {
  const names = new Set<string>();
  for (const list of [
    records.cycles,
    records.air_removal_tests,
    records.leak_tests,
    records.cleanings,
    records.service,
  ]) {
    for (const row of list) names.add(row.unit);
  }
  return names;
}
