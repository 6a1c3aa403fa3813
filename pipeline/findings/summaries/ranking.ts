import { groupBy } from '../../group-by.ts';
import { empiricalBayesProportions } from '../../statistics/ranking/empirical-bayes-proportions.ts';
import { funnelLimits } from '../../statistics/ranking/funnel-limits.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Review } from '../review-schema.ts';

/** Tails of the funnel's inner and outer limits: for a unit like all others, 1 in 20 and 1 in 500 fall outside. */
const INNER_TAIL = 0.025;
const OUTER_TAIL = 0.001;

/**
 * Failed day results of days at risk by unit, over the record: as they are, shrunk toward the fleet (a unit with few days is believed less), and against the
 * limits within which a unit like all others would lie. Highest shrunken rate first. Empty where there are fewer than two units or no failure.
 */
export function ranking(panel: readonly UnitDay[], level: number): Review['ranking'] {
  const counts = [...groupBy(panel, (row) => row.unit)].map(([unit, rows]) => {
    const atRisk = rows.filter((row) => row.at_risk === 1);
    return { unit, trials: atRisk.length, events: atRisk.filter((row) => row.failed === 1).length };
  });
  const shrunken = empiricalBayesProportions(counts, { level });
  if (!shrunken.computable) return [];
  const events = counts.reduce((sum, of) => sum + of.events, 0);
  const trials = counts.reduce((sum, of) => sum + of.trials, 0);
  return counts
    .map((of, index) => {
      const unit = shrunken.units[index]!;
      const limits = (tail: number) => {
        const found = funnelLimits(events / trials, of.trials, { kind: 'proportion', tail });
        return found.computable ? found : null;
      };
      const [inner, outer] = [limits(INNER_TAIL), limits(OUTER_TAIL)];
      return {
        unit: of.unit,
        failed: of.events,
        days: of.trials,
        rate: of.trials === 0 ? null : of.events / of.trials,
        shrunken: unit.estimate,
        shrunken_low: unit.interval.low,
        shrunken_high: unit.interval.high,
        inner_low: inner?.low ?? null,
        inner_high: inner?.high ?? null,
        outer_low: outer?.low ?? null,
        outer_high: outer?.high ?? null,
      };
    })
    .toSorted((a, b) => b.shrunken - a.shrunken);
}
