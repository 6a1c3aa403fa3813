import { groupBy } from '../../group-by.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Exposure } from '../review-schema.ts';
import { exposureOf } from './exposure.ts';
import { StratumGroups } from './stratum-groups.ts';

/** Days of a joint model as columns: there may be millions. */
export interface ModelDays {
  /** 0 or 1 for each exposure; days that are alike share their list. */
  exposures: (readonly number[])[];
  /** Numbers of units and strata, in order of first appearance. */
  unit: Uint32Array;
  stratum: Uint32Array;
  failed: Uint8Array;
  aborts: Uint32Array;
  cycles: Uint32Array;
}

/**
 * Days at risk on which all exposures are known; one that is never known on a unit counts there as not held.
 *
 * @param exposures fewer than 32
 * @param isLeftOut whether a unit is left out
 */
export function modelDays(
  panel: readonly UnitDay[],
  exposures: readonly Exposure[],
  isLeftOut: (unit: string) => boolean,
): ModelDays {
  const lists: (readonly number[] | undefined)[] = [];
  const own: (readonly number[])[] = [];
  const unit = new Uint32Array(panel.length);
  const stratum = new Uint32Array(panel.length);
  const failed = new Uint8Array(panel.length);
  const aborts = new Uint32Array(panel.length);
  const cycles = new Uint32Array(panel.length);
  let made = 0;
  const strata = new StratumGroups(() => made++);
  let units = 0;
  for (const [id, rows] of groupBy(panel, (row) => row.unit)) {
    if (isLeftOut(id)) continue;
    const due = exposures.map((exposure) => rows.some((row) => exposureOf(row, exposure, 'site') !== null));
    for (const row of rows) {
      const held = row.at_risk === 0 ? null : heldOn(row, exposures, due);
      if (held === null) continue;
      lists[held] ??= exposures.map((_, index) => (held >> index) & 1);
      const at = own.push(lists[held]) - 1;
      unit[at] = units;
      stratum[at] = strata.of(row);
      failed[at] = row.failed ?? 0;
      aborts[at] = row.cleanliness_aborts;
      cycles[at] = row.production_cycles;
    }
    units++;
  }
  const cut = <Column extends Uint8Array | Uint32Array>(column: Column): Column =>
    column.subarray(0, own.length) as Column;
  return {
    exposures: own,
    unit: cut(unit),
    stratum: cut(stratum),
    failed: cut(failed),
    aborts: cut(aborts),
    cycles: cut(cycles),
  };
}

/** The exposures that held, each as a bit; null where one that is due is not known. */
function heldOn(row: UnitDay, exposures: readonly Exposure[], due: readonly boolean[]): number | null {
  let held = 0;
  for (let index = 0; index < exposures.length; index++) {
    const of = due[index] ? exposureOf(row, exposures[index]!, 'site') : 0;
    if (of === null) return null;
    held |= of << index;
  }
  return held;
}
