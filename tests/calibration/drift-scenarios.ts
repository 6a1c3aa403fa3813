import type { Probe } from '../../pipeline/findings/drift/probes.ts';

/**
 * What a simulated site is like. Sizes are in noise standard deviations of a single test cycle's value (`NOISE` of the simulator), so that
 * they mean the same for each probe.
 */
export interface DriftScenario {
  name: string;
  /** What it is there for, in a sentence that the report prints. */
  says: string;
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
  /** Unrecorded steps per unit-year, 2 to 6 in size, each in one or two probes. */
  stepsPerYear: number;
  /** Recorded repairs and professional cleanings per unit-year, each with a new level. */
  erasPerYear: number;
  /** Units (the first so many) whose exhaust time climbs by 0.6 a day between weekly drain flushes. */
  sawTeeth: number;
  leakTests: 'daily' | 'weekly';
  wholeMinutes: boolean;
  /** What drifts: nothing, one of these probes in each unit, at a random time after its first months. */
  drifting: readonly Probe[];
  driftSize: number;
  driftDays: readonly [number, number];
}

const BASE: DriftScenario = {
  name: 'no drift',
  says: 'Six units, two years, no drift; season, autocorrelated noise, single values far off, unrecorded steps and repairs.',
  units: 6,
  days: 730,
  slowShare: 0.1,
  slowKeep: 0.5,
  season: 0.8,
  common: 0.6,
  outliers: 0.01,
  stepsPerYear: 0.5,
  erasPerYear: 1,
  sawTeeth: 0,
  leakTests: 'weekly',
  wholeMinutes: false,
  drifting: [],
  driftSize: 4,
  driftDays: [20, 90],
};

const scenario = (name: string, says: string, changes: Partial<DriftScenario>): DriftScenario => ({
  ...BASE,
  ...changes,
  name,
  says,
});

const DAILY_PROBES: readonly Probe[] = [
  'evacuation_time',
  'heat_up_time',
  'exhaust_time',
  'exposure_spread',
  'saturation_residual',
];

export const DRIFT_SCENARIOS: readonly DriftScenario[] = [
  BASE,
  scenario(
    'slow noise',
    'As no drift, with noise that lasts: three tenths of its variance keep 0.6 from day to day.',
    {
      slowShare: 0.3,
      slowKeep: 0.6,
    },
  ),
  scenario(
    'two units',
    'As no drift, at a site with two units, where season and supply can’t be taken out.',
    {
      units: 2,
    },
  ),
  scenario('saw-tooth', 'As no drift; in three of six units exhaust time climbs between drain flushes.', {
    sawTeeth: 3,
  }),
  scenario('whole minutes', 'As no drift; the control reports whole minutes.', { wholeMinutes: true }),
  scenario(
    'drift',
    'One daily probe of each unit drifts to 4 noise standard deviations within 20 to 90 days, then the unit fails and is repaired.',
    {
      drifting: DAILY_PROBES,
    },
  ),
  scenario('drift, slow noise', 'The same with noise that lasts.', {
    drifting: DAILY_PROBES,
    slowShare: 0.3,
    slowKeep: 0.6,
  }),
  scenario('drift, two units', 'The same at a site with two units.', { drifting: DAILY_PROBES, units: 2 }),
  scenario(
    'leak, daily tests',
    'The leak rate drifts to 4 noise standard deviations within 20 to 90 days; tested each day.',
    {
      drifting: ['leak_rate'],
      leakTests: 'daily',
    },
  ),
  scenario(
    'leak, weekly tests',
    'The leak rate drifts to 6 noise standard deviations within 100 to 250 days; tested each week.',
    {
      drifting: ['leak_rate'],
      driftSize: 6,
      driftDays: [100, 250],
    },
  ),
];
