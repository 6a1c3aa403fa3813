import type { Probe } from '../../pipeline/findings/drift/probes.ts';

/** What moves together in a drift, by probe; the first is the leading one. */
export type DriftPattern = readonly (readonly [Probe, number])[];

/**
 * What a simulated site is like. Sizes are in noise standard deviations of a single test cycle's value (`NOISE` of the simulator), so that
 * they mean the same for each probe.
 */
export interface DriftScenario {
  name: string;
  /** What it is there for, in a sentence that the report prints. */
  says: string;
  /** Share of the sites that are simulated of it: those that a goal hangs on get all. */
  share: number;
  units: number;
  days: number;
  /** Share of the noise variance that lasts for days: an autoregression of order 1 of the unit, the rest is new in each cycle. */
  slowShare: number;
  slowKeep: number;
  /** The site's own movement: amplitude of the season, standard deviation of an autoregression with correlation 0.7. */
  season: number;
  common: number;
  /** Chance of a cycle far off (4 to 8, upward). */
  outliers: number;
  /** Unrecorded steps per unit-year, each in one or two probes, and their sizes. */
  stepsPerYear: number;
  stepSizes: readonly [number, number];
  /** Share of the times that a record lacks. */
  missing: number;
  /** Recorded repairs and professional cleanings per unit-year, each with a new level. */
  erasPerYear: number;
  /** Units (the first so many) whose exhaust time climbs by 0.6 a day between weekly drain flushes. */
  sawTeeth: number;
  leakTests: 'daily' | 'weekly';
  wholeMinutes: boolean;
  /** What drifts: nothing, or one of these patterns in each unit, at a random time after its first months. Sizes at the end, when the unit fails. */
  drifting: readonly DriftPattern[];
  driftDays: readonly [number, number];
}

const BASE: DriftScenario = {
  name: 'no drift',
  says: 'Six units, two years, no drift; season, autocorrelated noise with heavy tails, single values far off, unrecorded steps of 2 to 6 and repairs.',
  share: 1,
  units: 6,
  days: 730,
  slowShare: 0.1,
  slowKeep: 0.5,
  season: 0.8,
  common: 0.6,
  outliers: 0.01,
  stepsPerYear: 0.5,
  stepSizes: [2, 6],
  missing: 0.02,
  erasPerYear: 1,
  sawTeeth: 0,
  leakTests: 'weekly',
  wholeMinutes: false,
  drifting: [],
  driftDays: [20, 90],
};

const scenario = (name: string, says: string, changes: Partial<DriftScenario>): DriftScenario => ({
  ...BASE,
  ...changes,
  name,
  says,
});

/** The table of drifting variables in numbers: the key sign reaches 4, the others what is usual beside it. */
const PATTERNS: readonly DriftPattern[] = [
  [
    ['exhaust_time', 4],
    ['evacuation_time', 3],
    ['heat_up_time', 1.5],
  ],
  [
    ['evacuation_time', 4],
    ['saturation_residual', -2],
    ['exhaust_time', 1],
  ],
  [
    ['heat_up_time', 4],
    ['exposure_spread', 2],
  ],
  [
    ['exposure_spread', 4],
    ['heat_up_time', 2.5],
    ['saturation_residual', -2],
  ],
];
const SINGLE: readonly DriftPattern[] = [
  [['evacuation_time', 4]],
  [['heat_up_time', 4]],
  [['exhaust_time', 4]],
  [['exposure_spread', 4]],
  [['saturation_residual', -4]],
];

export const DRIFT_SCENARIOS: readonly DriftScenario[] = [
  BASE,
  scenario(
    'slow noise',
    'As no drift, with noise that lasts: three tenths of its variance keep 0.6 from day to day.',
    { share: 0.25, slowShare: 0.3, slowKeep: 0.6 },
  ),
  scenario('two units', 'As no drift, at a site with two units, each compared with the other.', {
    share: 0.5,
    units: 2,
  }),
  scenario('one unit', 'As no drift, at a site with one unit, where season and supply can’t be taken out.', {
    share: 1,
    units: 1,
  }),
  scenario('saw-tooth', 'As no drift; in three of six units exhaust time climbs between drain flushes.', {
    share: 0.25,
    sawTeeth: 3,
  }),
  scenario('steps', 'Unrecorded steps only, two for each unit and year, of 2 to 6.', {
    share: 0.5,
    stepsPerYear: 2,
    erasPerYear: 0.2,
  }),
  scenario('small steps', 'The same with steps of 1 to 2, which look like the beginning of a drift.', {
    share: 0.25,
    stepsPerYear: 2,
    erasPerYear: 0.2,
    stepSizes: [1, 2],
  }),
  scenario('whole minutes', 'As no drift; the control reports whole minutes.', {
    share: 0.25,
    wholeMinutes: true,
  }),
  scenario(
    'drift',
    'Each unit has one drift after one of the usual patterns: the leading probe moves by 4 within 20 to 90 days, then the unit fails and is repaired.',
    {
      drifting: PATTERNS,
    },
  ),
  scenario('drift of one probe', 'The same with one daily probe that drifts alone.', {
    share: 0.25,
    drifting: SINGLE,
  }),
  scenario('drift, slow noise', 'As drift, with noise that lasts.', {
    share: 0.25,
    drifting: PATTERNS,
    slowShare: 0.3,
    slowKeep: 0.6,
  }),
  scenario('drift, two units', 'As drift, at a site with two units.', {
    share: 0.5,
    drifting: PATTERNS,
    units: 2,
  }),
  scenario('drift, one unit', 'As drift, at a site with one unit.', {
    share: 1,
    drifting: PATTERNS,
    units: 1,
  }),
  scenario(
    'leak, daily tests',
    'The leak rate drifts by 4, evacuation time by 2, within 20 to 90 days; tested each day.',
    {
      share: 0.25,
      drifting: [
        [
          ['leak_rate', 4],
          ['evacuation_time', 2],
        ],
      ],
      leakTests: 'daily',
    },
  ),
  scenario('leak, weekly tests', 'The leak rate drifts by 6 within 100 to 250 days; tested each week.', {
    share: 0.25,
    drifting: [[['leak_rate', 6]]],
    driftDays: [100, 250],
  }),
];
