/**
 * What a simulated fleet is like. Rates are per day or per cycle; `ratio` fields multiply the odds of a failed test and the rate of
 * aborts plausibly about cleanliness while the exposure holds.
 */
export interface Scenario {
  name: string;
  /** What it is there for, in a sentence that the report prints. */
  says: string;
  /** Whether anything cleaning-related moves failures: decides what counts as a false call. */
  effect: 'none' | 'chamber' | 'strainer';
  units: number;
  days: number;
  failRate: number;
  abortRate: number;
  ratio: number;
  /** Share of units that have the effect. */
  affected: number;
  /** Chance that a due chamber cleaning comes late; up to 25 days. */
  lateChance: number;
  /** Chance that a chamber is cleaned after a failed test, beside the routine (1 with routine false: only then). */
  reactiveChance: number;
  routine: boolean;
  /** Chance that a chamber record is written without the work: the unit was running. */
  falseRecords: number;
  /** Strainer misses: chance to begin and to end a streak, each day of use. */
  streakBegins: number;
  streakEnds: number;
  /** Bad spells of weeks, unrelated to cleaning: factor on failures and aborts. */
  spellFactor: number;
  /** Units differ in how busy they are: busy ones miss and fail more, and both rise over time. */
  busy: boolean;
  /** A late chamber cleaning goes with missed strainers (both are left undone together). */
  together: boolean;
}

const BASE: Scenario = {
  name: 'no effect',
  says: 'Nothing about cleaning moves failures; misses come at random.',
  effect: 'none',
  units: 12,
  days: 730,
  failRate: 0.02,
  abortRate: 0.01,
  ratio: 1,
  affected: 0,
  lateChance: 0.5,
  reactiveChance: 0,
  routine: true,
  falseRecords: 0,
  streakBegins: 0.03,
  streakEnds: 0.4,
  spellFactor: 1,
  busy: false,
  together: false,
};

const scenario = (name: string, says: string, changes: Partial<Scenario>): Scenario => ({
  ...BASE,
  ...changes,
  name,
  says,
});

const ratio = (value: number) =>
  scenario(`ratio ${value}`, `Overdue chambers multiply the odds by ${value} in a quarter of the units.`, {
    effect: 'chamber',
    ratio: value,
    affected: 0.25,
  });

export const SCENARIOS: readonly Scenario[] = [
  BASE,
  scenario('spells', 'No effect; failures come in bad spells of weeks, misses in long streaks.', {
    spellFactor: 5,
    streakBegins: 0.01,
    streakEnds: 0.07,
  }),
  scenario('reactive only', 'No effect; chambers are cleaned only after failures.', {
    routine: false,
    reactiveChance: 1,
  }),
  scenario(
    'partly reactive',
    'No effect; chambers are cleaned by routine, and again after a third of the failures.',
    { reactiveChance: 0.33 },
  ),
  scenario('busy', 'No effect; busy units miss more and fail more, and both rise over the two years.', {
    busy: true,
  }),
  scenario('false records', 'No effect; a fifth of the chamber records are written without the work.', {
    falseRecords: 0.2,
  }),
  ratio(2),
  ratio(3),
  ratio(4),
  scenario(
    'strainer only',
    'Missed strainers multiply the odds by 4 in all units; chambers, left undone at the same times, do nothing.',
    {
      effect: 'strainer',
      ratio: 4,
      affected: 1,
      together: true,
    },
  ),
  scenario('too little data', 'A ratio of 2 in a quarter of the units, three months of record.', {
    effect: 'chamber',
    ratio: 2,
    affected: 0.25,
    days: 90,
  }),
];
