import { groupBy } from '../../group-by.ts';
import type { DoseTable } from '../../statistics/stratified/dose-table.ts';
import { mantelTrend } from '../../statistics/stratified/mantel-trend.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Exposure, Review } from '../review-schema.ts';

type Dose = Review['doses'][number];

/**
 * Failed day results by dose of an exposure over the fleet: chamber days past due (0, 1 to 7, 8 to 14, over 14), strainers missed (0, 1, 2, 3 or more), flushes
 * missed in a row (0, 1, 2 or more), with the test for trend within strata, scores 0, 1, 2, 3.
 *
 * @param leftOut units left out for an exposure, because their cleanings are mostly reactive
 */
export function doses(
  panel: readonly UnitDay[],
  leftOut: ReadonlyMap<Exposure, ReadonlySet<string>> = new Map(),
): Dose[] {
  return Object.entries(SCALES).flatMap(([exposure, scale]) => {
    const rows = panel.flatMap((row) => {
      const amount = scale.amount(row);
      const comparable = !leftOut.get(exposure as Exposure)?.has(row.unit);
      return row.at_risk === 1 && comparable && amount !== null
        ? [{ row, score: scale.classOf(amount) }]
        : [];
    });
    if (rows.length === 0) return [];
    const classes = scale.names.map((name, score) => {
      const of = rows.filter((day) => day.score === score);
      return { dose: name, score, days: of.length, failed: of.filter((day) => day.row.failed === 1).length };
    });
    const strata = [...groupBy(rows, ({ row }) => `${row.unit}/${row.era}/${row.stratum}`).values()].map(
      (of) => tableOf(of, scale.names.length),
    );
    return [{ exposure: exposure as Exposure, classes, ...trendOf(strata) }];
  });
}

function tableOf(days: readonly { row: UnitDay; score: number }[], classes: number): DoseTable {
  const scores = Array.from({ length: classes }, (_, score) => score);
  const of = scores.map((score) => days.filter((day) => day.score === score));
  return {
    scores,
    totals: of.map((list) => list.length),
    events: of.map((list) => list.filter((day) => day.row.failed === 1).length),
  };
}

const upTo = (limits: readonly number[]) => (amount: number) =>
  limits.filter((limit) => amount > limit).length;

const SCALES: Record<
  Exposure,
  { names: string[]; amount: (row: UnitDay) => number | null; classOf: (amount: number) => number }
> = {
  chamber_overdue: {
    names: ['not overdue', '1 to 7 days', '8 to 14 days', 'over 14 days'],
    amount: (row) => row.chamber_days_past_due,
    classOf: upTo([0, 7, 14]),
  },
  strainer_missed: {
    names: ['0', '1', '2', '3 or more'],
    amount: (row) => row.strainers_missed,
    classOf: upTo([0, 1, 2]),
  },
  flush_missed: {
    names: ['0', '1', '2 or more'],
    amount: (row) => row.flushes_missed_in_a_row,
    classOf: upTo([0, 1]),
  },
};

function trendOf(strata: readonly DoseTable[]): Pick<Dose, 'statistic' | 'p' | 'method'> {
  const trend = mantelTrend(strata);
  return trend.computable
    ? { statistic: trend.z, p: trend.pValue, method: trend.method }
    : { statistic: null, p: null, method: `${trend.method}: ${trend.reason}` };
}
