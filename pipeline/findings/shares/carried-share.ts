import type { Site } from '../../site/site.ts';
import type { Share } from './share.ts';
import type { UnitCourse } from './unit-course.ts';

/** A share as plain data, so that it can be handed from thread to thread: clocks are functions, and stay behind. */
export interface CarriedShare extends Omit<Share, 'units'> {
  units: Omit<UnitCourse, 'clock'>[];
}

export function carried({ units, ...share }: Share): CarriedShare {
  return { ...share, units: units.map(({ clock, ...unit }) => unit) };
}

/** What {@link carried} was given, with the clocks of the site file. */
export function received({ units, ...share }: CarriedShare, site: Site): Share {
  return { ...share, units: units.map((unit) => ({ ...unit, clock: site.sites.get(unit.site)!.clock })) };
}
