import type { Rules } from '../../site/rules.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { compare, controlOf, type Measured, type Question } from './compare.ts';
import { dependsOnReading } from './exposure.ts';

/** A question, its units and their rows. */
export interface Asked extends Question {
  units: readonly string[];
  rows: () => readonly UnitDay[];
}

export const idOf = (of: { unit: string | null; exposure: string; outcome: string }): string =>
  `${of.unit ?? ''}\u0000${of.exposure}\u0000${of.outcome}`;

/**
 * Measures all questions, nothing twice: the control outcome once for all outcomes of an exposure, and what was measured before, in another reading, only where the reading changes the exposure or
 * the units.
 */
export function measureQuestions(
  asked: readonly Asked[],
  rules: Rules['comparison'],
  before: readonly { question: Asked; measured: Measured }[] = [],
): Measured[] {
  const known = new Map(before.map((of) => [idOf(of.question), of]));
  const controls = new Map<string, Measured['control']>();
  return asked.map((question) => {
    const old = known.get(idOf(question));
    if (old && !dependsOnReading(question.exposure) && areSame(old.question.units, question.units))
      return old.measured;
    const key = idOf({ ...question, outcome: 'unrelated_abort' });
    const control = controls.get(key) ?? controlOf(question, rules);
    controls.set(key, control);
    return compare(question, rules, control);
  });
}

const areSame = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((unit, index) => unit === b[index]);
