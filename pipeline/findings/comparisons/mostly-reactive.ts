import type { Rules } from '../../site/rules.ts';
import { CLEANING_TASKS, type CleaningTask } from '../../site/vocabulary.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import type { JudgedCleaning } from '../../transform/cleaning/judge-cleanings.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { EXPOSURES, type Exposure } from '../review-schema.ts';
import { type Reading, TASK_OF } from './exposure.ts';

/** Done cleanings of a task, and how many of them are reactive, in each reading of records that the cycle log contradicts. */
export interface CleaningCount {
  task: CleaningTask;
  contradicted_counts: boolean;
  done: number;
  reactive: number;
}

/** A unit, and what its cleanings count. */
export interface CountedUnit {
  unit: string;
  cleaning_counts: readonly CleaningCount[];
}

export const countedUnit = ({ unit, cleanings }: Pick<UnitHistory, 'unit' | 'cleanings'>): CountedUnit => ({
  unit,
  cleaning_counts: cleaningCounts(cleanings),
});

export function cleaningCounts(cleanings: readonly JudgedCleaning[]): CleaningCount[] {
  return CLEANING_TASKS.flatMap((task) =>
    [true, false].map((contradicted_counts) => {
      const done = cleanings.filter(
        (cleaning) => cleaning.task === task && countsAsDone(cleaning, contradicted_counts),
      );
      const reactive = done.filter((cleaning) => cleaning.reactive).length;
      return { task, contradicted_counts, done: done.length, reactive };
    }),
  );
}

/**
 * Units of which half or more (the site's share) of the cleanings of the exposure's task are reactive, among those that count as done in the reading. A unit
 * with no cleaning is not reactive; but nothing is known of it.
 */
export function mostlyReactiveUnits(
  units: readonly CountedUnit[],
  rules: Rules,
  reading: Reading,
): Map<Exposure, Set<string>> {
  const counts = reading === 'all_records' || rules.contradicted_counts_as_done;
  const isReactive = ({ cleaning_counts }: CountedUnit, exposure: Exposure): boolean => {
    const { done, reactive } = cleaning_counts.find(
      (of) => of.task === TASK_OF[exposure] && of.contradicted_counts === counts,
    )!;
    return done > 0 && reactive / done >= rules.comparison.reactive_share;
  };
  return new Map(
    EXPOSURES.map((exposure) => [
      exposure,
      new Set(units.filter((unit) => isReactive(unit, exposure)).map(({ unit }) => unit)),
    ]),
  );
}
