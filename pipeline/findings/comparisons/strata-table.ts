import { groupBy } from '../../group-by.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { EXPOSURES, OUTCOMES, type Review } from '../review-schema.ts';
import { stratify } from './strata.ts';

/**
 * The counts from which every ratio of the review can be worked out by hand: one row for each exposure, outcome (the control among them), unit and
 * stratum, in the site's reading. A unit's comparison uses its own rows, the fleet's those of all units that are comparable.
 */
export function strataTable(panel: readonly UnitDay[]): Review['strata'] {
  const units = [...groupBy(panel, (row) => row.unit).values()];
  return EXPOSURES.flatMap((exposure) =>
    [...OUTCOMES, 'unrelated_abort' as const].flatMap((outcome) =>
      units.flatMap((rows) =>
        stratify(rows, exposure, outcome, 'site').strata.map(({ series, exposed, unexposed, ...of }) => ({
          exposure,
          outcome,
          ...of,
          exposed_days: exposed.days,
          exposed_trials: exposed.trials,
          exposed_events: exposed.events,
          unexposed_days: unexposed.days,
          unexposed_trials: unexposed.trials,
          unexposed_events: unexposed.events,
        })),
      ),
    ),
  );
}
