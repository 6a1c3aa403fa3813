import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Exposure } from '../review-schema.ts';
import { type DaysInStrata, daysInStrata } from './days-in-strata.ts';
import type { Reading } from './exposure.ts';
import { type CountedOutcome, countIn, type Stratified } from './strata.ts';

/**
 * Strata of any units of a fleet, in one exposure after the other: those of a unit are sorted once, and serve for the unit, for the fleet and for the control outcome. They are let go
 * when the next exposure is asked for.
 *
 * @param rowsOf panel rows of each unit, in order of day
 */
export function strataOfUnits(
  rowsOf: ReadonlyMap<string, readonly UnitDay[]>,
  reading: Reading,
): (units: readonly string[], exposure: Exposure, outcome: CountedOutcome) => Stratified {
  let held: Exposure | undefined;
  const known = new Map<string, { days: DaysInStrata; counted: Map<CountedOutcome, Stratified> }>();
  return (units, exposure, outcome) => {
    if (exposure !== held) known.clear();
    held = exposure;
    const parts = units.map((unit) => {
      const { days, counted } = known.get(unit) ?? {
        days: daysInStrata(rowsOf.get(unit) ?? [], exposure, reading),
        counted: new Map<CountedOutcome, Stratified>(),
      };
      const part = counted.get(outcome) ?? countIn(days, outcome);
      known.set(unit, { days, counted: counted.set(outcome, part) });
      return part;
    });
    return {
      strata: parts.flatMap(({ strata }) => strata),
      notAtRisk: parts.reduce((sum, part) => sum + part.notAtRisk, 0),
      exposureUnknown: parts.reduce((sum, part) => sum + part.exposureUnknown, 0),
    };
  };
}
