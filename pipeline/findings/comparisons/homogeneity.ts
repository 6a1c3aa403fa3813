import { groupBy } from '../../group-by.ts';
import { oddsRatioHomogeneity } from '../../statistics/stratified/odds-ratio-homogeneity.ts';
import { rateRatioHomogeneity } from '../../statistics/stratified/rate-ratio-homogeneity.ts';
import type { Comparison } from '../review-schema.ts';
import { type CountedOutcome, type Stratum, sumSide } from './strata.ts';

/**
 * Whether the units of a fleet differ in their ratio: one table a unit, its strata summed (single strata hold too few events for this test). A large p is
 * no proof that they are alike.
 */
export function homogeneityOfUnits(
  strata: readonly Stratum[],
  outcome: CountedOutcome,
): Comparison['homogeneity'] {
  const units = [...groupBy(strata, (stratum) => stratum.unit).values()].map((of) => ({
    exposed: sumSide(of, 'exposed'),
    unexposed: sumSide(of, 'unexposed'),
  }));
  const result =
    outcome === 'failed_test'
      ? oddsRatioHomogeneity(
          units.map(({ exposed, unexposed }) => ({
            exposedEvents: exposed.events,
            exposedTotal: exposed.trials,
            unexposedEvents: unexposed.events,
            unexposedTotal: unexposed.trials,
          })),
        )
      : rateRatioHomogeneity(
          units.map(({ exposed, unexposed }) => ({
            exposedEvents: exposed.events,
            exposedTime: exposed.trials,
            unexposedEvents: unexposed.events,
            unexposedTime: unexposed.trials,
          })),
          { statistic: 'score' },
        );
  if (!result.computable) return null;
  return {
    chi_square: result.chiSquare,
    degrees_of_freedom: result.degreesOfFreedom,
    p: result.pValue,
    method: result.method,
  };
}
