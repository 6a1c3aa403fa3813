import { type PackedRows, packRows, unpackRows } from '../../packed-rows.ts';
import type { Site } from '../../site/site.ts';
import type { DueTask, UseDay } from '../../transform/cleaning/due-tasks.ts';
import { type UnitDay, unitDaySchema } from '../../transform/panel/unit-day.ts';
import type { Drift, ProbeDrift } from '../drift/drift-schema.ts';
import { type PackedSeries, packSeries, unpackSeries } from '../drift/packed-series.ts';
import type { Share } from './share.ts';
import type { UnitCourse } from './unit-course.ts';

/** A share as plain data, so that it can be handed from thread to thread: what there is most of as columns; clocks are functions, and stay behind. */
export interface CarriedShare extends Omit<Share, 'units' | 'panel' | 'drift'> {
  units: (Omit<UnitCourse, 'clock' | 'use_days' | 'due'> & {
    use_days: PackedRows<UseDay>;
    due: PackedRows<DueTask>;
  })[];
  panel: PackedRows<UnitDay>;
  drift: Omit<Drift, 'probes'> & { probes: (Omit<ProbeDrift, 'series'> & { series: PackedSeries })[] };
}

/** All fields of the rows that there are most of. */
export const UNIT_DAY = Object.keys(unitDaySchema.shape) as (keyof UnitDay)[];
const USE_DAY = ['day', 'first_cycle', 'cycles'] as const;
export const DUE = ['unit', 'task', 'due', 'state', 'done', 'days_late'] as const;

export function carried({ units, panel, drift, ...share }: Share): CarriedShare {
  return {
    ...share,
    units: carriedUnits(units),
    panel: packRows(panel, UNIT_DAY),
    drift: { ...drift, probes: drift.probes.map((of) => ({ ...of, series: packSeries(of.series) })) },
  };
}

/** What {@link carried} was given, with the clocks of the site file. */
export function received({ units, panel, drift, ...share }: CarriedShare, site: Site): Share {
  return {
    ...share,
    units: receivedUnits(units, site),
    panel: unpackRows(panel),
    drift: { ...drift, probes: drift.probes.map((of) => ({ ...of, series: unpackSeries(of.series) })) },
  };
}

/** The same of the units alone. */
export const carriedUnits = (units: readonly UnitCourse[]): CarriedShare['units'] =>
  units.map(({ clock, use_days, due, ...unit }) => ({
    ...unit,
    use_days: packRows(use_days, USE_DAY),
    due: packRows(due, DUE),
  }));

export const receivedUnits = (units: CarriedShare['units'], site: Site): UnitCourse[] =>
  units.map(({ use_days, due, ...unit }) => ({
    ...unit,
    clock: site.sites.get(unit.site)!.clock,
    // Unpacked where they are asked for: of a thousand units few are in use at a time.
    get use_days() {
      return unpackRows(use_days);
    },
    get due() {
      return unpackRows(due);
    },
  }));
