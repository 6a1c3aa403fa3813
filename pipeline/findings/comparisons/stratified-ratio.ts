import { exactCommonOddsRatio } from '../../statistics/stratified/exact-common-odds-ratio.ts';
import { exactCommonRateRatio } from '../../statistics/stratified/exact-common-rate-ratio.ts';
import { mantelHaenszelOddsRatio } from '../../statistics/stratified/mantel-haenszel-odds-ratio.ts';
import { mantelHaenszelRateRatio } from '../../statistics/stratified/mantel-haenszel-rate-ratio.ts';
import type { CountedOutcome, Stratum } from './strata.ts';

/** Ratio of exposed to unexposed days within strata. `high` is Infinity where the data set no upper bound. */
export interface StratifiedRatio {
  kind: 'odds_ratio' | 'rate_ratio';
  ratio: number | null;
  low: number | null;
  high: number | null;
  /** p of the exact or Mantel-Haenszel test, which takes days as independent. */
  p: number | null;
  method: string;
}

/**
 * Exact within a unit, Mantel-Haenszel over the fleet: an odds ratio for days with a test, a ratio of rates for aborts per production cycle. Where
 * Mantel-Haenszel has no interval (no event on one side) the exact method takes its place.
 */
export function stratifiedRatio(
  strata: readonly Stratum[],
  outcome: CountedOutcome,
  scope: 'unit' | 'fleet',
  level: number,
): StratifiedRatio {
  const odds = outcome === 'failed_test';
  const kind = odds ? 'odds_ratio' : 'rate_ratio';
  if (scope === 'fleet') {
    const fleet = odds
      ? mantelHaenszelOddsRatio(tables(strata), { level })
      : mantelHaenszelRateRatio(rates(strata), { level });
    if (fleet.computable && fleet.interval) {
      return {
        kind,
        ratio: fleet.estimate,
        low: fleet.interval.low,
        high: fleet.interval.high,
        p: fleet.pValue,
        method: fleet.method,
      };
    }
  }
  const exact = odds
    ? exactCommonOddsRatio(tables(strata), { level })
    : exactCommonRateRatio(rates(strata), { level });
  if (!exact.computable)
    return { kind, ratio: null, low: null, high: null, p: null, method: `${exact.method}: ${exact.reason}` };
  return {
    kind,
    ratio: exact.estimate,
    low: exact.interval.low,
    high: exact.interval.high,
    p: exact.pValue,
    method: exact.method,
  };
}

const tables = (strata: readonly Stratum[]) =>
  strata.map(({ exposed, unexposed }) => ({
    exposedEvents: exposed.events,
    exposedTotal: exposed.trials,
    unexposedEvents: unexposed.events,
    unexposedTotal: unexposed.trials,
  }));

const rates = (strata: readonly Stratum[]) =>
  strata.map(({ exposed, unexposed }) => ({
    exposedEvents: exposed.events,
    exposedTime: exposed.trials,
    unexposedEvents: unexposed.events,
    unexposedTime: unexposed.trials,
  }));
