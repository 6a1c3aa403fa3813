import type { Rules } from '../../site/rules.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import type { UnitCourse } from '../../transform/unit-history.ts';
import { EXPOSURES, type Exposure } from '../review-schema.ts';
import { type Reading, TASK_OF } from './exposure.ts';

/**
 * Units of which half or more (the site's share) of the cleanings of the exposure's task are reactive, among those that count as done in the reading. A unit
 * with no cleaning is not reactive; but nothing is known of it.
 */
export function mostlyReactiveUnits(
  histories: readonly UnitCourse[],
  rules: Rules,
  reading: Reading,
): Map<Exposure, Set<string>> {
  const contradictedCounts = reading === 'all_records' || rules.contradicted_counts_as_done;
  const isReactive = (history: UnitCourse, exposure: Exposure): boolean => {
    const done = history.cleanings.filter(
      (cleaning) => cleaning.task === TASK_OF[exposure] && countsAsDone(cleaning, contradictedCounts),
    );
    const reactive = done.filter((cleaning) => cleaning.reactive).length;
    return done.length > 0 && reactive / done.length >= rules.comparison.reactive_share;
  };
  return new Map(
    EXPOSURES.map((exposure) => [
      exposure,
      new Set(histories.filter((history) => isReactive(history, exposure)).map((history) => history.unit)),
    ]),
  );
}
