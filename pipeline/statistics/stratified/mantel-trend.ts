import { computed, notComputable, type Outcome } from '../result.ts';
import { type TrendTest, trendFrom } from '../two-groups/cochran-armitage-trend.ts';
import { checkDoseTable, type DoseTable, doseMoments } from './dose-table.ts';

/**
 * Mantel's extension test: a trend of proportions over a score, within strata.
 *
 * Tested: that within each stratum events do not depend on the score, against a trend that goes the same way
 * in all. The score-weighted excess of events over their expectation given each stratum's margins is summed,
 * and compared with the sum of its permutation variances (with N - 1). It is the score test of conditional
 * logistic regression on the score. Assumed: independent trials, scores fixed beforehand and comparable over
 * strata, enough events in all for the normal limit.
 *
 * Edges: strata without events, without non-events or with one score say nothing and are left out
 * (`strataUsed`); none left is not computable. With two scores it is the Mantel-Haenszel test without
 * correction; one stratum is the Cochran-Armitage test with N - 1.
 *
 * @param strata - one table per stratum; scores may differ between strata
 * @throws RangeError for counts or scores that can't be
 *
 * Source: N. Mantel, JASA 58 (1963) 690-700.
 */
export function mantelTrend(
  strata: readonly DoseTable[],
): Outcome<TrendTest & { strataUsed: number; strataGiven: number }> {
  const method = 'Mantel extension trend over strata, variance with N - 1';
  for (const table of strata) checkDoseTable(table, 'mantelTrend');
  const used = strata.map(doseMoments).filter((moments) => moments.variance > 0);
  if (used.length === 0) {
    return notComputable(method, 'No stratum has events, non-events and groups with different scores.');
  }
  const excess = used.reduce((sum, moments) => sum + moments.excess, 0);
  const variance = used.reduce((sum, moments) => sum + moments.variance, 0);
  return computed(method, {
    ...trendFrom(excess, variance),
    strataUsed: used.length,
    strataGiven: strata.length,
  });
}
