import { isSupported, isUnjudged } from '../../transform/cleaning/support.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { Clock } from './clocks.ts';
import type { IntervalCase, Reason } from './interval-schema.ts';
import { countOf, sortedClocks } from './spell-days.ts';
import type { Spell } from './spells.ts';

/** Fewest failures from which a shape is judged (our choice: with fewer the interval of the shape spans a factor of ten or so). */
export const LEAST_FAILURES = 5;

/** Counts of a fleet's chamber cleaning records. */
export function countCleanings(
  histories: readonly UnitCourse[],
  contradictedCounts: boolean,
): IntervalCase['cleanings'] {
  const records = histories.flatMap((history) =>
    history.chamber_cleanings
      .filter((cleaning) => cleaning.done)
      .map((cleaning) => ({ cleaning, support: cleaning.support!, reactive: cleaning.reactive === true })),
  );
  const number = (holds: (of: (typeof records)[number]) => boolean) => records.filter(holds).length;
  return {
    records: records.length,
    routine: number((of) => !of.reactive),
    reactive: number((of) => of.reactive),
    supported: number(({ support }) => isSupported(support)),
    no_return: number(({ cleaning, support }) => !cleaning.contradicted && support.no_return === true),
    not_judged: number(({ support }) => isUnjudged(support)),
    contradicted: number(({ cleaning }) => cleaning.contradicted),
    starts: number(({ cleaning, reactive }) => !reactive && (contradictedCounts || !cleaning.contradicted)),
  };
}

/**
 * Why the record can't carry a case at all, if it can't: no cleaning, none that starts a clock, none twice on one unit, a clock that does not vary, or too
 * few failures.
 */
export function obstacle(
  cleanings: IntervalCase['cleanings'],
  spells: readonly Spell[],
  clock: Clock,
): Reason | null {
  if (cleanings.records === 0) return 'no_cleaning_recorded';
  if (cleanings.routine === 0) return 'all_reactive';
  if (cleanings.starts === 0) return 'all_contradicted';
  if (
    !spells.some((spell) => spell.ended_by === 'routine_cleaning' || spell.ended_by === 'reactive_cleaning')
  )
    return 'no_cleaning_twice';
  const days = spells.map((spell) => spell.days);
  const reached = sortedClocks(days, clock);
  if (reached.length === 0 || reached[0] === reached.at(-1)) return 'same_clock';
  if (countOf(days, 'failed_test').events < LEAST_FAILURES) return 'too_few_failures';
  return null;
}
