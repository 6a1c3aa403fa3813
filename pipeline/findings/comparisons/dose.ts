import type { DoseTable } from '../../statistics/stratified/dose-table.ts';
import { mantelTrend } from '../../statistics/stratified/mantel-trend.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Exposure, Review } from '../review-schema.ts';
import { StratumGroups } from './stratum-groups.ts';

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
    const strata = doseStrata(panel, scale, leftOut.get(exposure as Exposure));
    if (strata.length === 0) return [];
    const sumOf = (counts: 'totals' | 'events', score: number) =>
      strata.reduce((sum, stratum) => sum + stratum[counts][score]!, 0);
    const classes = scale.names.map((name, score) => ({
      dose: name,
      score,
      days: sumOf('totals', score),
      failed: sumOf('events', score),
    }));
    return [{ exposure: exposure as Exposure, classes, ...trendOf(strata) }];
  });
}

interface CountedStratum extends DoseTable {
  totals: number[];
  events: number[];
}

/** Days at risk with a known dose, and those of them that failed, by class in each stratum; strata in order of first appearance. */
function doseStrata(
  panel: readonly UnitDay[],
  { names, amount, classOf }: Scale,
  leftOut: ReadonlySet<string> | undefined,
): CountedStratum[] {
  const scores = names.map((_, score) => score);
  const none = () => names.map(() => 0);
  const strata = new StratumGroups<CountedStratum>(() => ({ scores, totals: none(), events: none() }));
  for (const row of panel) {
    const dose = row.at_risk === 1 ? amount(row) : null;
    if (dose === null) continue;
    if (leftOut?.has(row.unit)) continue;
    const counts = strata.of(row);
    const score = classOf(dose);
    counts.totals[score]! += 1;
    if (row.failed === 1) counts.events[score]! += 1;
  }
  return strata.all();
}

interface Scale {
  names: string[];
  amount: (row: UnitDay) => number | null;
  classOf: (amount: number) => number;
}

const upTo = (limits: readonly number[]) => (amount: number) =>
  limits.reduce((above, limit) => above + (amount > limit ? 1 : 0), 0);

const SCALES: Record<Exposure, Scale> = {
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
