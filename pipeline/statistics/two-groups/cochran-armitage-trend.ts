import { chiSquareTail } from '../distributions/gamma.ts';
import { normalTail } from '../distributions/normal.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { checkDoseTable, type DoseTable, doseMoments } from '../stratified/dose-table.ts';

export interface TrendTest {
  /** Standard normal; above 0 where events rise with the score. */
  z: number;
  chiSquare: number;
  /** Two-sided, chi-square with one degree of freedom. */
  pValue: number;
  pGreater: number;
  pLess: number;
}

/**
 * Cochran-Armitage test for a linear trend of proportions over ordered groups, with N (not N - 1) in the
 * variance.
 *
 * Tested: that the proportion of events does not change linearly with the score. Assumed: independent trials;
 * scores fixed beforehand; enough events for the normal limit. The result does not change if all scores are
 * shifted or multiplied by a number above 0. With two groups it is the chi-square test of a two-by-two table
 * without correction.
 *
 * Edges: groups without trials say nothing. No event, nothing but events, or no two groups with different
 * scores is not computable.
 *
 * @param table - events and trials (whole numbers) and a score per group
 * @throws RangeError for counts or scores that can't be
 *
 * Source: W. G. Cochran, Biometrics 10 (1954) 417-451; P. Armitage, Biometrics 11 (1955) 375-386. Agresti's
 * M^2 is this chi-square times (N - 1) / N.
 *
 * @example Maternal alcohol (Graubard & Korn 1987), scores 0, 0.5, 1.5, 4, 7: chi-square 6.570, p 0.010
 */
export function cochranArmitageTrend(table: DoseTable): Outcome<TrendTest> {
  const method = 'Cochran-Armitage trend, variance with N';
  checkDoseTable(table, 'cochranArmitageTrend');
  const { excess, variance, total } = doseMoments(table);
  if (variance === 0)
    return notComputable(method, 'Events, non-events and groups with different scores are all needed.');
  return computed(method, trendFrom(excess, (variance * (total - 1)) / total));
}

/** z, chi-square and p-values from an excess and its null variance. */
export function trendFrom(excess: number, variance: number): TrendTest {
  const z = excess / Math.sqrt(variance);
  const atLeast = (p: number) => Math.max(Number.MIN_VALUE, p);
  return {
    z,
    chiSquare: z * z,
    pValue: atLeast(chiSquareTail(z * z, 1, 'upper')),
    pGreater: atLeast(normalTail(z, 'upper')),
    pLess: atLeast(normalTail(z, 'lower')),
  };
}
