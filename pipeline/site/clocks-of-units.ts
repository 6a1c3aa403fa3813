import type { Site } from './site.ts';
import type { WallClock } from './wall-clock.ts';

/** The clock of a unit's site; of a unit that is not declared that of the first site. */
export function clocksOfUnits(site: Site): (unit: string) => WallClock {
  const siteOf = new Map(site.declared.units?.map((unit) => [unit.id, unit.site]));
  return (unit) => site.sites.get(siteOf.get(unit) ?? site.declared.sites[0]!.id)!.clock;
}
