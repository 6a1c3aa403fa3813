import { groupBy } from '../../group-by.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { EXPOSURES, type Exposure, OUTCOMES, type Review } from '../review-schema.ts';
import { daysInStrata } from './days-in-strata.ts';
import { type CountedOutcome, countIn, type Stratum } from './strata.ts';

/**
 * The counts from which every ratio of the review can be worked out by hand: one row for each exposure, outcome (the control among them), unit and
 * stratum, in the site's reading. A unit's comparison uses its own rows, the fleet's those of all units that are comparable.
 */
export function strataTable(panel: readonly UnitDay[]): Review['strata'] {
  const units = [...groupBy(panel, (row) => row.unit).values()];
  return EXPOSURES.flatMap((exposure) => {
    const days = units.map((rows) => daysInStrata(rows, exposure, 'site'));
    return [...OUTCOMES, 'unrelated_abort' as const].flatMap((outcome) =>
      days.flatMap((of) => countIn(of, outcome).strata.map((stratum) => rowOf(stratum, exposure, outcome))),
    );
  });
}

const rowOf = (
  { series, exposed, unexposed, ...of }: Stratum,
  exposure: Exposure,
  outcome: CountedOutcome,
): Review['strata'][number] => ({
  exposure,
  outcome,
  ...of,
  exposed_days: exposed.days,
  exposed_trials: exposed.trials,
  exposed_events: exposed.events,
  unexposed_days: unexposed.days,
  unexposed_trials: unexposed.trials,
  unexposed_events: unexposed.events,
});
