import type { Records } from '../../site/records.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';

/** The records of units that histories were made of, so that those need not be held beside them. */
export function recordsOfHistories(
  histories: readonly UnitHistory[],
): Omit<Records, 'inspections' | 'water' | 'actions'> {
  return {
    cycles: histories.flatMap((of) => of.cycles),
    air_removal_tests: histories.flatMap((of) => of.tests),
    leak_tests: histories.flatMap((of) => of.leak_tests),
    cleanings: histories.flatMap((of) => of.cleanings),
    service: histories.flatMap((of) => of.service),
  };
}
