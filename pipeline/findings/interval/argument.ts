import type { Site } from '../../site/site.ts';
import type { InputInForce } from './argument-schema.ts';
import { chooseInterval } from './best-interval.ts';
import { bootstrapIntensities, LEAST_UNIT_ERAS } from './bootstrap.ts';
import { candidateIntervals, compareCandidates } from './candidates.ts';
import { cellsOf } from './clock-cells.ts';
import type { Clock } from './clocks.ts';
import type { AfterFailure, Intensities, Intensity, UnitLevel } from './expected.ts';
import type { Inputs } from './inputs-in-force.ts';
import { bestOf, gridUpTo, type Objective, type Setting, totalOf, yearAt } from './interval-grid.ts';
import type { IntervalInForce } from './interval-in-force.ts';
import type { IntervalCase, Note, ShapeFit } from './interval-schema.ts';
import type { Pace } from './pace.ts';
import { sensitivityOf } from './sensitivity.ts';
import { type Cluster, daysOf, type Fitted } from './shape-fit.ts';
import { countOf, sortedClocks } from './spell-days.ts';

/** The argument in numbers: candidates, best interval, sensitivity. */
export interface Argument
  extends Pick<
    IntervalCase,
    | 'objective'
    | 'candidates'
    | 'curve'
    | 'best'
    | 'sensitivity'
    | 'longest_observed'
    | 'longest_considered'
    | 'notes'
  > {
  samples: Intensities[];
  drawn: IntervalCase['bootstrap']['drawn'];
  /** Best interval of a unit at its own level, and with its own shape where it has one (drawn to the mean). */
  bestOfUnit(unit: string, shape: number | null): number | null;
}

/** Where nothing can be compared. */
export const NO_ARGUMENT: Argument = {
  objective: null,
  candidates: [],
  curve: [],
  best: null,
  sensitivity: [],
  longest_observed: null,
  longest_considered: null,
  notes: [],
  samples: [],
  drawn: 'unit_eras',
  bestOfUnit: () => null,
};

export interface ArgumentInput {
  site: Site;
  failures: Fitted;
  aborts: Fitted;
  main: { failures: ShapeFit; aborts: ShapeFit };
  pace: Pace[];
  inForce: IntervalInForce;
  inputs: Inputs;
  list: readonly InputInForce[];
  after: AfterFailure;
  ticksPerWeek: number;
}

export function makeArgument(input: ArgumentInput): Argument {
  const { site, failures, aborts, main, pace, inForce, inputs, list } = input;
  const declared = site.declared.interval;
  const { level } = site.rules.comparison;
  const { clock } = inForce;
  const estimate: Intensities = { failures: intensityOf(failures), aborts: intensityOf(aborts) };
  const { drawn, samples } = bootstrapIntensities(
    { failures, aborts },
    { failures: main.failures.spread ?? 0, aborts: main.aborts.spread ?? 0 },
    declared,
  );
  const units = pace.map((of) => levelOf(of, failures, aborts));
  const objective: Objective = hasPrices(list) ? 'cost' : 'hours';
  const setting: Setting = { units, clock, after: input.after, inputs, objective };

  const byInstructions = declared.longest_by_instructions ?? null;
  const observed = longestObserved(failures.clusters, clock);
  const allowed = byInstructions ?? inForce.every ?? observed;
  const longest = Math.max(1, Math.min(allowed, observed));
  const comparable = (interval: number | null): number | null =>
    interval !== null && interval <= observed ? interval : null;

  const intervals = candidateIntervals(
    declared.candidates,
    clock,
    input.ticksPerWeek,
    inForce.every,
    byInstructions,
  );
  const candidates = compareCandidates(setting, estimate, samples, intervals, {
    inForce: inForce.every,
    byInstructions,
    observed,
    level,
  });
  const { best, curve } = chooseInterval(setting, estimate, samples, {
    longest,
    inForce: comparable(inForce.every),
    level,
  });
  const grid = gridUpTo(longest);
  const held = (standing: string) => candidates.some((of) => of.standing === standing);
  const notes: Note[] = [
    ...(objective === 'hours' ? ['costs_missing' as const] : []),
    ...(byInstructions !== null && byInstructions > observed ? ['limit_beyond_record' as const] : []),
    ...(inForce.every !== null && inForce.every > observed ? ['in_force_beyond_record' as const] : []),
    ...(byInstructions !== null && inForce.every !== null && inForce.every > byInstructions
      ? ['in_force_beyond_instructions' as const]
      : []),
    ...(held('beyond_instructions') ? ['candidates_beyond_instructions' as const] : []),
    ...(held('limit_not_given') ? ['candidates_without_limit' as const] : []),
    ...(held('beyond_record') ? ['candidates_beyond_record' as const] : []),
    ...(failures.clusters.length < LEAST_UNIT_ERAS ? ['few_unit_eras' as const] : []),
  ];
  return {
    objective,
    candidates,
    curve,
    best,
    sensitivity: sensitivityOf(setting, estimate, list, main.failures, {
      longest,
      pivot: middleOfFailures(failures.clusters, clock),
    }),
    longest_observed: observed,
    longest_considered: longest,
    notes,
    samples,
    drawn,
    bestOfUnit: (unit, shape) => {
      const index = units.findIndex((of) => of.pace.unit === unit);
      if (index < 0) return null;
      const own = units[index]!;
      const at = shape === null ? estimate : { ...estimate, failures: ownIntensity(failures, unit, shape) };
      const values = grid.map((interval) =>
        totalOf(yearAt({ ...setting, units: [own] }, interval, at), objective),
      );
      return bestOf(grid, values, 0).best;
    },
  };
}

/** The fitted intensity; where there is no fit the rate of the record, the same at each clock. */
function intensityOf({ fit, clusters, outcome }: Fitted): Intensity {
  if (fit.computable) return { shape: fit.shape, rate: fit.rate };
  const { events, chances } = countOf(clusters.flatMap(daysOf), outcome);
  return { shape: 1, rate: chances === 0 ? 0 : events / chances };
}

/** The intensity of a unit's own shape at which its record expects as many failures as with the shape of all. */
function ownIntensity(fitted: Fitted, unit: string, shape: number): Intensity {
  const { clusters, clock, outcome } = fitted;
  const all = intensityOf(fitted);
  const days = clusters.filter((cluster) => cluster.unit === unit).flatMap(daysOf);
  const cells = cellsOf(days, clock, outcome);
  const exposure = (of: number) =>
    cells.reduce((sum, cell) => sum + cell.weight * (cell.exit ** of - cell.entry ** of), 0);
  const own = exposure(shape);
  return own > 0 ? { shape, rate: (all.rate * exposure(all.shape)) / own } : all;
}

/** A unit's present level: the frailty of its last era, 1 where that has no spell. */
function levelOf(pace: Pace, failures: Fitted, aborts: Fitted): UnitLevel {
  const last = (fitted: Fitted): number => {
    const index = fitted.clusters.findLastIndex((cluster) => cluster.unit === pace.unit);
    return fitted.fit.computable && index >= 0 ? fitted.fit.clusters[index]!.frailty : 1;
  };
  return { pace, failures: last(failures), aborts: last(aborts) };
}

const CLEANING_PRICES = ['labour_hour', 'hour_out_of_use', 'cleaner_litre', 'other_per_cleaning'];
const FAILURE_PRICES = ['hour_out_of_use', 'retest', 'repair_per_failure', 'delayed_load'];

/** Whether the site gives a price on the side of cleaning and one on the side of failure. */
function hasPrices(list: readonly InputInForce[]): boolean {
  const given = new Set(list.filter((row) => row.origin === 'site').map((row) => row.name));
  return CLEANING_PRICES.some((name) => given.has(name)) && FAILURE_PRICES.some((name) => given.has(name));
}

/** Fewest days at risk at a clock or later for the clock to count as observed (our choice). */
const LEAST_DAYS = 10;

/** Longest clock at which, or after which, at least ten days at risk lie: beyond it the fit is a guess. As an interval: one more than the clock before its last day. */
function longestObserved(clusters: readonly Cluster[], clock: Clock): number {
  const reached = sortedClocks(clusters.flatMap(daysOf), clock);
  return (reached.at(-Math.min(LEAST_DAYS, reached.length)) ?? 0) + 1;
}

/** Geometric mean of the clock at the failures. */
function middleOfFailures(clusters: readonly Cluster[], clock: Clock): number {
  let logs = 0;
  let failures = 0;
  for (const { columns, from, to } of clusters.flatMap(daysOf))
    for (let at = from; at < to; at++) {
      if (columns.failed[at] === 0) continue;
      logs += Math.log(columns[clock][at]! + 0.5);
      failures++;
    }
  return Math.exp(logs / Math.max(1, failures));
}
