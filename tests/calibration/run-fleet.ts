import { comparisonFamily } from '../../pipeline/findings/comparisons/comparison-family.ts';
import { countedUnit } from '../../pipeline/findings/comparisons/mostly-reactive.ts';
import type { Comparison } from '../../pipeline/findings/review-schema.ts';
import { transform } from '../../pipeline/transform/transform.ts';
import type { Scenario } from './scenarios.ts';
import { simulateFleet } from './simulate-fleet.ts';

/** What the tool said of one simulated fleet, beside what was true. */
export interface FleetResult {
  /** Any verdict shown (suggested) where nothing is there: no effect at all, or the wrong exposure or an unaffected unit. */
  falseShown: boolean;
  falseSuggested: boolean;
  /** Units with the effect: how many, and how many were named (shown, or shown or suggested) on the right exposure. */
  affected: number;
  namedShown: number;
  named: number;
  fleetShown: boolean;
  /** A wrong exposure shown, for the fleet or a unit, while another one carries the effect. */
  wrongExposureShown: boolean;
  /** Unit intervals of the right exposure on failed tests, and how many hold the true ratio. */
  intervals: number;
  covered: number;
  /** The same of the fleet's intervals (both outcomes), where all units have one true ratio. */
  fleetIntervals: number;
  fleetCovered: number;
  verdicts: Record<string, number>;
  /** Each verdict, with what it is of. */
  each: string[];
}

export function runFleet(scenario: Scenario, seed: number): FleetResult {
  const fleet = simulateFleet(scenario, seed);
  const { panel, histories } = transform(fleet.site, fleet.records, fleet.until);
  const { comparisons } = comparisonFamily(panel, histories.map(countedUnit), fleet.site.rules);
  const right = scenario.effect === 'strainer' ? 'strainer_missed' : 'chamber_overdue';
  const isTrue = (of: Comparison) =>
    scenario.effect !== 'none' &&
    of.exposure === right &&
    (of.unit === null || fleet.affected.includes(of.unit));
  const named = (verdicts: string[]) =>
    fleet.affected.filter((unit) =>
      comparisons.some((of) => of.unit === unit && isTrue(of) && verdicts.includes(of.verdict)),
    ).length;
  const intervals = comparisons.filter(
    (of) => of.scope === 'unit' && of.exposure === right && of.outcome === 'failed_test' && of.low !== null,
  );
  const oneRatio = scenario.effect === 'none' || scenario.affected === 1;
  const fleetIntervals = comparisons.filter(
    (of) => oneRatio && of.scope === 'fleet' && of.exposure === right && of.low !== null,
  );
  const truth = (of: Comparison) => (isTrue(of) ? scenario.ratio : 1);
  const verdicts: Record<string, number> = {};
  for (const of of comparisons) verdicts[of.verdict] = (verdicts[of.verdict] ?? 0) + 1;
  return {
    falseShown: comparisons.some((of) => of.verdict === 'shown' && !isTrue(of)),
    falseSuggested: comparisons.some(
      (of) => (of.verdict === 'shown' || of.verdict === 'suggested') && !isTrue(of),
    ),
    affected: fleet.affected.length,
    namedShown: named(['shown']),
    named: named(['shown', 'suggested']),
    fleetShown: comparisons.some((of) => of.unit === null && of.verdict === 'shown' && isTrue(of)),
    wrongExposureShown: comparisons.some(
      (of) => of.verdict === 'shown' && scenario.effect !== 'none' && of.exposure !== right,
    ),
    intervals: intervals.length,
    covered: intervals.filter((of) => holds(of, truth(of))).length,
    fleetIntervals: fleetIntervals.length,
    fleetCovered: fleetIntervals.filter((of) => holds(of, truth(of))).length,
    verdicts,
    each: comparisons.map((of) => `${of.unit ?? 'all'} ${of.exposure} ${of.outcome}: ${of.verdict}`),
  };
}

const holds = (of: Comparison, ratio: number): boolean =>
  of.low! <= ratio && ratio <= (of.high ?? Number.POSITIVE_INFINITY);
