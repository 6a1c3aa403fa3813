import type { UnitCourse } from '../shares/unit-course.ts';
import { percentiles } from './bootstrap.ts';
import type { Clock } from './clocks.ts';
import type { Intensities } from './expected.ts';
import type { IntervalCase, Reason, ShapeFit } from './interval-schema.ts';
import { countOf, sortedClocks } from './spell-days.ts';
import { isReactive, type Spell } from './spells.ts';

export type Answer = IntervalCase['answer']['code'];

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
      .map((cleaning) => ({ cleaning, support: cleaning.support!, reactive: isReactive(cleaning, history) })),
  );
  const number = (holds: (of: (typeof records)[number]) => boolean) => records.filter(holds).length;
  return {
    records: records.length,
    routine: number((of) => !of.reactive),
    reactive: number((of) => of.reactive),
    supported: number(
      ({ cleaning, support }) => support.judged && !cleaning.contradicted && !support.no_return,
    ),
    no_return: number(({ cleaning, support }) => !cleaning.contradicted && support.no_return),
    not_judged: number(({ support }) => !support.judged),
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

/**
 * Whether a rise with the clock is supported: the likelihood interval of the shape lies above 1 (and with it p at or under alpha), and so does the bootstrap
 * interval, which knows of bad spells and units that the likelihood takes as independent days.
 */
export function answerOf(
  fit: ShapeFit,
  samples: readonly Intensities[],
  outcome: 'failures' | 'aborts',
  level: number,
): { code: Answer; because: Reason[]; low: number | null; high: number | null } {
  const robust = percentiles(
    samples.filter((sample) => sample[outcome].rate > 0).map((sample) => sample[outcome].shape),
    level,
  );
  if (fit.shape === null || fit.low === null) return { code: 'cannot_tell', because: ['no_fit'], ...robust };
  if (fit.shape <= 1) return { code: 'not_supported', because: ['shape_at_or_below_1'], ...robust };
  if (fit.low <= 1) return { code: 'not_supported', because: ['shape_not_above_1_beyond_chance'], ...robust };
  if (robust.low !== null && robust.low <= 1)
    return { code: 'not_supported', because: ['not_above_1_between_units'], ...robust };
  return { code: 'supported', because: ['shape_above_1'], ...robust };
}
