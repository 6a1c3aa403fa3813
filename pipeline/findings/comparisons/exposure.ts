import type { CleaningTask } from '../../site/vocabulary.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Exposure } from '../review-schema.ts';

/** Which reading of contradicted chamber records the exposure is taken from. */
export type Reading = 'site' | 'all_records';

/** Whether the exposure held when the day's first cycle started; null where it is not known. */
export function exposureOf(row: UnitDay, exposure: Exposure, reading: Reading): 0 | 1 | null {
  switch (exposure) {
    case 'chamber_overdue':
      return reading === 'site' ? row.chamber_overdue : row.chamber_overdue_all_records;
    case 'strainer_missed':
      return row.strainers_missed === null ? null : row.strainers_missed > 0 ? 1 : 0;
    case 'flush_missed':
      return row.flushes_missed_in_a_row === null ? null : row.flushes_missed_in_a_row > 0 ? 1 : 0;
  }
}

/** Whether the readings can differ in it. */
export const dependsOnReading = (exposure: Exposure): boolean => exposure === 'chamber_overdue';

/** The task whose being missed the exposure is. */
export const TASK_OF: Record<Exposure, CleaningTask> = {
  chamber_overdue: 'chamber',
  strainer_missed: 'drain_strainer',
  flush_missed: 'drain_flush',
};
