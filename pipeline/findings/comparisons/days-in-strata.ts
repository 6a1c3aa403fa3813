import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Exposure } from '../review-schema.ts';
import { exposureOf, type Reading } from './exposure.ts';
import { StratumGroups } from './stratum-groups.ts';

/** The days at risk of one stratum, in order, and whether the exposure held on each. */
export interface StratumDays {
  rows: UnitDay[];
  exposure: Uint8Array;
}

/** Days sorted by strata, before any outcome is counted, and how many were left out and why. */
export interface DaysInStrata {
  groups: StratumDays[];
  notAtRisk: number;
  exposureUnknown: number;
}

/** Sorts the days at risk of panel rows into strata: see `stratify`. All outcomes are counted on the same days. */
export function daysInStrata(
  rows: readonly UnitDay[],
  exposure: Exposure,
  reading: Reading,
  beside?: Exposure,
): DaysInStrata {
  return sortDays(
    rows,
    (row) => exposureOf(row, exposure, reading),
    beside === undefined ? undefined : (row) => exposureOf(row, beside, reading),
  );
}

/** The same for any exposure of a row: 1 exposed, 0 not, null not known. Strata are in order of first appearance. */
export function sortDays(
  rows: readonly UnitDay[],
  exposure: (row: UnitDay) => 0 | 1 | null,
  beside?: (row: UnitDay) => 0 | 1 | null,
): DaysInStrata {
  const groups = new StratumGroups(() => ({ rows: [] as UnitDay[], held: [] as (0 | 1)[] }));
  let notAtRisk = 0;
  let exposureUnknown = 0;
  for (const row of rows) {
    if (row.at_risk !== 1) {
      notAtRisk++;
      continue;
    }
    const held = exposure(row);
    const split = beside ? beside(row) : 0;
    if (held === null || split === null) {
      exposureUnknown++;
      continue;
    }
    const group = groups.of(row, split);
    group.rows.push(row);
    group.held.push(held);
  }
  return {
    groups: groups.all().map((of) => ({ rows: of.rows, exposure: Uint8Array.from(of.held) })),
    notAtRisk,
    exposureUnknown,
  };
}
