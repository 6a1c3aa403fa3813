/**
 * A simulated fleet for the case for a cleaning interval. Failures of a unit come at rate level x rate x shape x t^(shape - 1), t in days since its last chamber
 * cleaning; `rate` is given as expected failures in the first 28 days.
 */
export interface IntervalScenario {
  name: string;
  says: string;
  units: number;
  days: number;
  shape: number;
  /** Expected failures of a unit of level 1 in 28 days since cleaning. */
  failures28: number;
  /** Levels of the units: log-normal standard deviation. */
  unitSpread: number;
  /** Whether bad units are cleaned early and good ones late. */
  badCleanedEarly: boolean;
  /** Chance that a cleaning comes late, up to 25 days. */
  lateChance: number;
  /** Chance that a failure is followed by a cleaning on the same afternoon. */
  reactiveChance: number;
  /** Factor on failures in bad spells of two to five weeks, begun on one day in 120. */
  spellFactor: number;
  /** Cost of a failure over that of a cleaning. */
  costRatio: number;
  /** Longest interval that the instructions allow. */
  limit: number;
}

const BASE: IntervalScenario = {
  name: 'shape 1',
  says: 'Failures do not depend on the clock.',
  units: 12,
  days: 730,
  shape: 1,
  failures28: 0.5,
  unitSpread: 0,
  badCleanedEarly: false,
  lateChance: 0.5,
  reactiveChance: 0,
  spellFactor: 1,
  costRatio: 4,
  limit: 42,
};

const scenario = (name: string, says: string, changes: Partial<IntervalScenario>): IntervalScenario => ({
  ...BASE,
  ...changes,
  name,
  says,
});

export const INTERVAL_SCENARIOS: readonly IntervalScenario[] = [
  BASE,
  scenario(
    'shape 1, units differ',
    'No dependence on the clock; units differ in level, the bad ones cleaned early.',
    {
      unitSpread: 0.7,
      badCleanedEarly: true,
    },
  ),
  scenario('shape 1, bad spells', 'No dependence on the clock; failures come in bad spells of weeks.', {
    spellFactor: 5,
    failures28: 0.3,
  }),
  scenario(
    'shape 1, partly reactive',
    'No dependence on the clock; a third of the failures are followed by a cleaning.',
    {
      reactiveChance: 0.33,
    },
  ),
  scenario('shape 1, one site', 'No dependence on the clock; three units, eighteen months.', {
    units: 3,
    days: 548,
  }),
  scenario('shape 2', 'The rate of failures rises in proportion to the clock.', { shape: 2 }),
  scenario('shape 2, units differ', 'The same; units differ in level.', { shape: 2, unitSpread: 0.7 }),
  scenario('shape 2, cleaned after failure', 'The same; each failure is followed by a cleaning.', {
    shape: 2,
    reactiveChance: 1,
  }),
  scenario('shape 1.5', 'The rate of failures rises with the square root of the clock.', { shape: 1.5 }),
  scenario('shape 3, few failures', 'A steep rise, but few failures.', {
    shape: 3,
    failures28: 0.15,
    costRatio: 10,
  }),
  scenario('shape 2, one site', 'A rise; three units, eighteen months.', { shape: 2, units: 3, days: 548 }),
];
