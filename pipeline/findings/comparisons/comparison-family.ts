import { groupBy } from '../../group-by.ts';
import type { Rules } from '../../site/rules.ts';
import { benjaminiHochberg } from '../../statistics/multiplicity/benjamini-hochberg.ts';
import { holm } from '../../statistics/multiplicity/holm.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { type Comparison, EXPOSURES, type Exposure, OUTCOMES } from '../review-schema.ts';
import type { Measured } from './compare.ts';
import { exposureOf, type Reading } from './exposure.ts';
import { type Asked, idOf, measureQuestions } from './measure-questions.ts';
import { type CountedUnit, mostlyReactiveUnits } from './mostly-reactive.ts';
import { type Beside, besideOther, findingOf } from './told-apart.ts';
import { strataOfUnits } from './unit-strata.ts';
import { type Judged, judge, judgeBeside } from './verdict.ts';

/** All comparisons of a review: each unit and the fleet, each exposure, each outcome. */
export interface ComparisonFamily {
  comparisons: Comparison[];
  /** Comparisons that have a p, over which it was adjusted. */
  size: number;
}

/**
 * Makes the whole family of comparisons, in both readings of contradicted chamber records. An exposure that is known on no day of a unit
 * is left out for that unit: its task is never due there. The fleet leaves out units whose cleanings of the task are mostly reactive.
 */
export function comparisonFamily(
  panel: readonly UnitDay[],
  histories: readonly CountedUnit[],
  rules: Rules,
): ComparisonFamily {
  const asSite = judgedFamily(panel, histories, rules, 'site');
  const differs = panel.some((row) => row.chamber_overdue !== row.chamber_overdue_all_records);
  const other = differs ? judgedFamily(panel, histories, rules, 'all_records', asSite) : asSite;
  const otherVerdicts = new Map(other.map(({ question, judged }) => [idOf(question), judged.verdict]));
  return {
    comparisons: asSite.map(({ question, measured, adjustedP, beside, judged }) => ({
      ...measured,
      adjusted_p: adjustedP,
      beside,
      verdict: judged.verdict,
      because: judged.because,
      verdict_all_records:
        measured.exposure === 'chamber_overdue' ? (otherVerdicts.get(idOf(question)) ?? null) : null,
    })),
    size: asSite.filter(({ measured }) => measured.p !== null).length,
  };
}

interface JudgedComparison {
  question: Asked;
  measured: Measured;
  adjustedP: number | null;
  beside: Beside[];
  judged: Judged;
}

function judgedFamily(
  panel: readonly UnitDay[],
  histories: readonly CountedUnit[],
  rules: Rules,
  reading: Reading,
  before: readonly JudgedComparison[] = [],
): JudgedComparison[] {
  const reactive = mostlyReactiveUnits(histories, rules, reading);
  const asked = questions(panel, histories, reactive, reading);
  const measured = measureQuestions(asked, rules.comparison, before);
  const adjusted = adjustedOf(measured, (pValues) => benjaminiHochberg(pValues, rules.comparison.alpha));
  const first = measured.map((of, index) => {
    const judged = judge(
      {
        // A ratio without end is null in the data; its lower bound is still there.
        ratio: of.ratio ?? (of.low !== null ? Number.POSITIVE_INFINITY : null),
        low: of.low,
        p: of.p,
        adjustedP: adjusted[index]!,
        smallestDetectableRatio: of.smallest_detectable_ratio,
        controlMoved: of.control.moved,
        mostlyReactive: of.unit !== null && reactive.get(of.exposure)!.has(of.unit),
        exposedDays: of.exposed.days,
        unexposedDays: of.unexposed.days,
        knownDays: of.exposed.days + of.unexposed.days,
      },
      rules.comparison,
    );
    return { question: asked[index]!, measured: of, adjustedP: adjusted[index]!, judged };
  });
  return toldApart(first, rules, reading);
}

/** p-values adjusted over those that there are; null stays null. */
function adjustedOf(
  measured: readonly { p: number | null }[],
  adjust: (pValues: number[]) => { adjusted: number[] },
): (number | null)[] {
  const tested = measured.flatMap(({ p }, index) => (p === null ? [] : [{ p, index }]));
  const { adjusted } = adjust(tested.map(({ p }) => p));
  const all: (number | null)[] = measured.map(() => null);
  for (const [at, { index }] of tested.entries()) all[index] = adjusted[at]!;
  return all;
}

/**
 * Sets each exposure that speaks beside the others that speak: in the same unit, or shown for the fleet. What a unit's own days can't tell apart
 * is taken from the fleet's.
 */
function toldApart(
  first: readonly Omit<JudgedComparison, 'beside'>[],
  rules: Rules,
  reading: Reading,
): JudgedComparison[] {
  const { level, alpha } = rules.comparison;
  const speaking = new Map(
    first
      .filter(({ judged }) => judged.verdict === 'shown' || judged.verdict === 'suggested')
      .map((of) => [idOf(of.question), of.judged.verdict]),
  );
  const measured = first.map((of) => {
    const { unit, exposure, outcome, rows, scope } = of.question;
    if (!speaking.has(idOf(of.question))) return [];
    return EXPOSURES.filter(
      (other) =>
        other !== exposure &&
        (speaking.has(idOf({ unit, exposure: other, outcome })) ||
          speaking.get(idOf({ unit: null, exposure: other, outcome })) === 'shown'),
    ).map((other) => besideOther(rows(), exposure, other, outcome, reading, scope, level));
  });
  const adjusted = adjustedOf(measured.flat(), holm);
  let at = 0;
  const beside = new Map(
    first.map((of, index) => [
      idOf(of.question),
      measured[index]!.map((row): Beside => {
        const adjusted_p = adjusted[at++]!;
        return { ...row, adjusted_p, finding: findingOf(row, adjusted_p, alpha) };
      }),
    ]),
  );
  return first.map((of) => {
    const { unit, exposure, outcome } = of.question;
    const ofFleet = unit === null ? [] : (beside.get(idOf({ unit: null, exposure, outcome })) ?? []);
    const list = beside.get(idOf(of.question))!.map((row) => {
      const fleet = ofFleet.find((fleetRow) => fleetRow.exposure === row.exposure);
      return row.finding === 'not_told_apart' && fleet ? { ...row, finding: fleet.finding } : row;
    });
    const findings = list.map((row) => row.finding);
    return {
      ...of,
      beside: list,
      judged: judgeBeside(of.judged, findings, of.measured.smallest_detectable_ratio, rules.comparison),
    };
  });
}

function questions(
  panel: readonly UnitDay[],
  histories: readonly CountedUnit[],
  reactive: Map<Exposure, Set<string>>,
  reading: Reading,
): Asked[] {
  const rowsOf = groupBy(panel, (row) => row.unit);
  const daysOf = (unit: string): readonly UnitDay[] => rowsOf.get(unit) ?? [];
  const days = (units: readonly string[]) => units.reduce((sum, unit) => sum + daysOf(unit).length, 0);
  const strata = strataOfUnits(rowsOf, reading);
  const list: Asked[] = [];
  for (const exposure of EXPOSURES) {
    const known = histories
      .map(({ unit }) => unit)
      .filter((unit) => daysOf(unit).some((row) => exposureOf(row, exposure, reading) !== null));
    if (known.length === 0) continue;
    const comparable = known.filter((unit) => !reactive.get(exposure)!.has(unit));
    for (const outcome of OUTCOMES) {
      const asked = (unit: string | null, units: readonly string[], unitNotComparableDays: number) =>
        list.push({
          exposure,
          outcome,
          scope: unit === null ? 'fleet' : 'unit',
          unit,
          units,
          stratified: (of) => strata(units, exposure, of),
          rows: () => units.flatMap(daysOf),
          unitNotComparableDays,
        });
      if (known.length > 1) asked(null, comparable, days(known) - days(comparable));
      for (const unit of known) asked(unit, [unit], 0);
    }
  }
  return list;
}
