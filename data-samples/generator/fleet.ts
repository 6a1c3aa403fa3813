import { commonMovement } from './common-movement.ts';
import type { UnitHistory } from './history.ts';
import { type SiteId, UNITS } from './scenario.ts';
import { simulateUnit } from './simulate-unit.ts';

/** What happened to all units, by unit. */
export type Fleet = ReadonlyMap<string, UnitHistory>;

export function simulateFleet(): Fleet {
  const common = { Quillhaven: commonMovement('Quillhaven'), Tornfell: commonMovement('Tornfell') };
  return new Map(UNITS.map((plan) => [plan.id, simulateUnit(plan, common[plan.site])]));
}

/** One list of records of a site's units, in order of time, then unit. */
export function recordsOf<K extends 'cycles' | 'tests' | 'leaks' | 'cleanings' | 'service'>(
  fleet: Fleet,
  site: SiteId,
  list: K,
  time: (record: UnitHistory[K][number]) => number,
): UnitHistory[K] {
  const all = UNITS.filter((plan) => plan.site === site).flatMap(
    (plan) => fleet.get(plan.id)![list] as UnitHistory[K][number][],
  );
  return all.sort(
    (a, b) => time(a) - time(b) || (a.unit < b.unit ? -1 : a.unit > b.unit ? 1 : 0),
  ) as UnitHistory[K];
}
