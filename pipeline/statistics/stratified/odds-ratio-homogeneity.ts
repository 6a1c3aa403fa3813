import { chiSquareTail } from '../distributions/gamma.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { mantelHaenszelOddsRatio } from './mantel-haenszel-odds-ratio.ts';
import { checkTwoByTwo, isInformative, type TwoByTwo } from './two-by-two.ts';

export interface Homogeneity {
  chiSquare: number;
  degreesOfFreedom: number;
  pValue: number;
  /** The common ratio the strata are compared with. */
  commonRatio: number;
  strataUsed: number;
  strataGiven: number;
}

/**
 * Do the odds ratios of the strata differ? Breslow-Day test with Tarone's correction.
 *
 * Tested: one odds ratio for all strata. Each stratum's exposed events are compared with those fitted under
 * the Mantel-Haenszel odds ratio and the stratum's margins; Tarone's term makes up for that estimate not
 * being fully efficient. Assumed: each stratum large enough for the normal limit; with few events per stratum
 * the test is unreliable, and a large p-value says little.
 *
 * Edges: strata without information are left out; fewer than two, or a Mantel-Haenszel ratio of 0 or
 * Infinity, is not computable.
 *
 * @param strata - one table per stratum, whole numbers
 * @throws RangeError for counts that can't be
 *
 * Source: Breslow & Day, Statistical Methods in Cancer Research I (1980) section 4.4; R. E. Tarone,
 * Biometrika 72 (1985) 91-95.
 */
export function oddsRatioHomogeneity(
  strata: readonly TwoByTwo[],
): Outcome<Homogeneity & { uncorrected: number }> {
  const method = 'Breslow-Day homogeneity of odds ratios, Tarone correction';
  for (const table of strata) checkTwoByTwo(table, 'oddsRatioHomogeneity');
  const used = strata.filter(isInformative);
  if (used.length < 2) return notComputable(method, 'Fewer than two strata carry information.');
  const common = mantelHaenszelOddsRatio(used);
  if (!common.computable || common.interval === undefined) {
    return notComputable(method, 'The common odds ratio is 0 or infinite.');
  }
  let [sum, excess, total] = [0, 0, 0];
  for (const table of used) {
    const { fitted, variance } = fittedExposedEvents(table, common.estimate);
    const difference = table.exposedEvents - fitted;
    sum += difference ** 2 / variance;
    excess += difference;
    total += variance;
  }
  const chiSquare = Math.max(0, sum - excess ** 2 / total);
  const degreesOfFreedom = used.length - 1;
  return computed(method, {
    chiSquare,
    uncorrected: sum,
    degreesOfFreedom,
    pValue: Math.max(Number.MIN_VALUE, chiSquareTail(chiSquare, degreesOfFreedom, 'upper')),
    commonRatio: common.estimate,
    strataUsed: used.length,
    strataGiven: strata.length,
  });
}

/** Exposed events that give the table this odds ratio with its margins, and their asymptotic variance. */
function fittedExposedEvents(table: TwoByTwo, ratio: number): { fitted: number; variance: number } {
  const events = table.exposedEvents + table.unexposedEvents;
  const spare = table.unexposedTotal - events;
  // x (spare + x) = ratio (exposed - x) (events - x), the root within the margins; written without
  // cancellation.
  const a = 1 - ratio;
  const b = spare + ratio * (table.exposedTotal + events);
  const c = -ratio * table.exposedTotal * events;
  const root = Math.sqrt(Math.max(0, b * b - 4 * a * c));
  const fitted = b >= 0 ? (-2 * c) / (b + root) : (-b + root) / (2 * a);
  const cells = [fitted, table.exposedTotal - fitted, events - fitted, spare + fitted];
  return { fitted, variance: 1 / cells.reduce((sum, cell) => sum + 1 / cell, 0) };
}
