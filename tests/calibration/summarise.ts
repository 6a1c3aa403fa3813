import { clopperPearsonInterval } from '../../pipeline/statistics/intervals/clopper-pearson-interval.ts';
import type { FleetResult } from './run-fleet.ts';
import type { Scenario } from './scenarios.ts';

/** A share with its exact 95 % interval. */
export interface Share {
  of: number;
  count: number;
  share: number;
  low: number;
  high: number;
}

/** Operating characteristics in one scenario. */
export interface ScenarioSummary {
  scenario: string;
  says: string;
  fleets: number;
  /** Fleets with any *shown* verdict where nothing is there. */
  false_shown: Share;
  /** Fleets with any *shown* or *suggested* verdict where nothing is there. */
  false_shown_or_suggested: Share;
  /** Of the units with the effect: named by a *shown* verdict, and by *shown* or *suggested*, on the right exposure. */
  units_shown: Share | null;
  units_shown_or_suggested: Share | null;
  /** Fleets in which the fleet's own comparison on the right exposure is shown. */
  fleet_shown: Share | null;
  /** Fleets in which an exposure that carries nothing is shown. */
  wrong_exposure_shown: Share | null;
  /** 95 % intervals of single units (exact) that hold the true ratio. */
  coverage: Share | null;
  /** The same of the fleet's intervals (Mantel-Haenszel), where all units have one true ratio. */
  fleet_coverage: Share | null;
  /** Share of all comparisons by verdict. */
  verdicts: Record<string, number>;
}

export function summarise(scenario: Scenario, results: readonly FleetResult[]): ScenarioSummary {
  const fleets = results.length;
  const sum = (value: (of: FleetResult) => number) => results.reduce((total, of) => total + value(of), 0);
  const affected = sum((of) => of.affected);
  const comparisons = sum((of) => Object.values(of.verdicts).reduce((a, b) => a + b, 0));
  const kinds = [...new Set(results.flatMap((of) => Object.keys(of.verdicts)))].sort();
  const effect = scenario.effect !== 'none';
  return {
    scenario: scenario.name,
    says: scenario.says,
    fleets,
    false_shown: share(
      sum((of) => Number(of.falseShown)),
      fleets,
    ),
    false_shown_or_suggested: share(
      sum((of) => Number(of.falseSuggested)),
      fleets,
    ),
    units_shown: effect
      ? share(
          sum((of) => of.namedShown),
          affected,
        )
      : null,
    units_shown_or_suggested: effect
      ? share(
          sum((of) => of.named),
          affected,
        )
      : null,
    fleet_shown: effect
      ? share(
          sum((of) => Number(of.fleetShown)),
          fleets,
        )
      : null,
    wrong_exposure_shown: effect
      ? share(
          sum((of) => Number(of.wrongExposureShown)),
          fleets,
        )
      : null,
    coverage:
      sum((of) => of.intervals) > 0
        ? share(
            sum((of) => of.covered),
            sum((of) => of.intervals),
          )
        : null,
    fleet_coverage:
      sum((of) => of.fleetIntervals) > 0
        ? share(
            sum((of) => of.fleetCovered),
            sum((of) => of.fleetIntervals),
          )
        : null,
    verdicts: Object.fromEntries(
      kinds.map((kind) => [kind, round(sum((of) => of.verdicts[kind] ?? 0) / comparisons)]),
    ),
  };
}

function share(count: number, of: number): Share {
  const result = clopperPearsonInterval(count, of);
  if (!result.computable) throw new Error(result.reason);
  return {
    of,
    count,
    share: round(count / of),
    low: round(result.interval.low),
    high: round(result.interval.high),
  };
}

const round = (value: number): number => Math.round(value * 10_000) / 10_000;
