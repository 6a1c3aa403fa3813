import type { Rules } from '../../site/rules.ts';
import { benjaminiHochberg } from '../../statistics/multiplicity/benjamini-hochberg.ts';
import { groupBy } from '../../transform/group-by.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { type Comparison, EXPOSURES, type Exposure, OUTCOMES } from '../review-schema.ts';
import { compare, type Measured, type Question } from './compare.ts';
import { exposureOf, type Reading, TASK_OF } from './exposure.ts';
import { type Judged, judge } from './verdict.ts';

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
  histories: readonly UnitHistory[],
  rules: Rules,
): ComparisonFamily {
  const asSite = judgedFamily(panel, histories, rules, 'site');
  const differs = panel.some((row) => row.chamber_overdue !== row.chamber_overdue_all_records);
  const other = differs ? judgedFamily(panel, histories, rules, 'all_records') : asSite;
  const otherVerdicts = new Map(other.map(({ measured, judged }) => [measured.id, judged.verdict]));
  return {
    comparisons: asSite.map(({ measured, adjustedP, judged }) => ({
      ...measured,
      adjusted_p: adjustedP,
      verdict: judged.verdict,
      because: judged.because,
      verdict_all_records:
        measured.exposure === 'chamber_overdue' ? (otherVerdicts.get(measured.id) ?? null) : null,
    })),
    size: asSite.filter(({ measured }) => measured.p !== null).length,
  };
}

interface JudgedComparison {
  measured: Measured;
  adjustedP: number | null;
  judged: Judged;
}

function judgedFamily(
  panel: readonly UnitDay[],
  histories: readonly UnitHistory[],
  rules: Rules,
  reading: Reading,
): JudgedComparison[] {
  const reactive = new Map(
    EXPOSURES.map((exposure) => [
      exposure,
      new Set(histories.filter((of) => mostlyReactive(of, exposure, rules)).map((of) => of.unit)),
    ]),
  );
  const measured = questions(panel, histories, reactive, reading).map((question) =>
    compare(question, rules.comparison),
  );
  const tested = measured.flatMap(({ p }, index) => (p === null ? [] : [{ p, index }]));
  const { adjusted } = benjaminiHochberg(
    tested.map(({ p }) => p),
    rules.comparison.alpha,
  );
  const adjustedOf = new Map(tested.map(({ index }, at) => [index, adjusted[at]!]));
  return measured.map((comparison, index) => {
    const adjustedP = adjustedOf.get(index) ?? null;
    const judged = judge(
      {
        ratio: comparison.ratio ?? (comparison.low !== null ? Number.POSITIVE_INFINITY : null),
        low: comparison.low,
        p: comparison.p,
        adjustedP,
        smallestDetectableRatio: comparison.smallest_detectable_ratio,
        controlMoved: comparison.control.moved,
        mostlyReactive: comparison.unit !== null && reactive.get(comparison.exposure)!.has(comparison.unit),
        exposedDays: comparison.exposed.days,
        unexposedDays: comparison.unexposed.days,
        knownDays: comparison.exposed.days + comparison.unexposed.days,
      },
      rules.comparison,
    );
    return { measured: comparison, adjustedP, judged };
  });
}

function questions(
  panel: readonly UnitDay[],
  histories: readonly UnitHistory[],
  reactive: Map<Exposure, Set<string>>,
  reading: Reading,
): Question[] {
  const rowsOfUnits = groupBy(panel, (row) => row.unit);
  const rowsOf = new Map(histories.map((history) => [history.unit, rowsOfUnits.get(history.unit) ?? []]));
  const list: Question[] = [];
  for (const exposure of EXPOSURES) {
    const known = histories.filter((history) =>
      rowsOf.get(history.unit)!.some((row) => exposureOf(row, exposure, reading) !== null),
    );
    if (known.length === 0) continue;
    const fleet = known.filter((history) => !reactive.get(exposure)!.has(history.unit));
    const rows = fleet.flatMap((history) => rowsOf.get(history.unit)!);
    const all = known.flatMap((history) => rowsOf.get(history.unit)!);
    for (const outcome of OUTCOMES) {
      if (known.length > 1) {
        list.push({
          scope: 'fleet',
          unit: null,
          exposure,
          outcome,
          reading,
          rows,
          unitNotComparableDays: all.length - rows.length,
        });
      }
      for (const { unit } of known) {
        list.push({
          scope: 'unit',
          unit,
          exposure,
          outcome,
          reading,
          rows: rowsOf.get(unit)!,
          unitNotComparableDays: 0,
        });
      }
    }
  }
  return list;
}

/** Half or more (the site's share) of the unit's cleanings of the task are reactive. No cleaning: not reactive, but nothing is known. */
function mostlyReactive(history: UnitHistory, exposure: Exposure, rules: Rules): boolean {
  const done = history.cleanings.filter((cleaning) => cleaning.task === TASK_OF[exposure] && cleaning.done);
  if (done.length === 0) return false;
  return done.filter((cleaning) => cleaning.reactive).length / done.length >= rules.comparison.reactive_share;
}
