import { isoDay } from './clock.ts';
import {
  CONTRADICTED,
  DRIFT,
  EFFECT,
  GASKET,
  LOST_LOG,
  REACTIVE_ONLY,
  RENAMED,
  ROLLOVER,
  SAW_TOOTH,
  UNEXPLAINED_STOPS,
  UTILITY_DAYS,
} from './unit-stories.ts';

/** One thing that was built in, in words. */
export interface BuiltIn {
  id: string;
  units: readonly string[];
  what: string;
}

const quillhaven = ['Q1', 'Q2', 'Q3', 'Q4', 'Q5', 'Q6'];
const all = [...quillhaven, 'T1', 'T2', 'T3', 'T4'];
const percent = (share: number): string => `${Number((share * 100).toPrecision(6))} %`;
const days = (list: readonly number[]): string => list.map(isoDay).join(', ');

/** Everything that was built in on purpose; the numbers come from the same constants that the generator uses. */
export const BUILT_IN: readonly BuiltIn[] = [
  {
    id: 'effect',
    units: [EFFECT.unit],
    what: `While the chamber is overdue (more than 28 days since the last cleaning) the odds of a failed day result are ${EFFECT.failureOdds} times and the rate of plausibly-cleanliness aborts ${EFFECT.cleanlinessAborts} times those of other days. Aborts of unrelated causes don't move.`,
  },
  {
    id: 'no_effect',
    units: all.filter((unit) => unit !== EFFECT.unit),
    what: 'No cleaning has any effect on failures or aborts. What the counts seem to show is chance.',
  },
  {
    id: 'drift',
    units: [DRIFT.unit],
    what: `From ${isoDay(DRIFT.from)} to the end evacuation time grows in a straight line by ${percent(DRIFT.evacuation)}, heat-up by ${percent(DRIFT.heatUp)} and exhaust by ${percent(DRIFT.exhaust)}; the leak rate does not move, no cleaning brings it back and no test fails.`,
  },
  {
    id: 'contradicted_records',
    units: [CONTRADICTED.unit],
    what: 'About half of the chamber cleaning records are contradicted by the cycle log: in turn a cycle ran during the stated work, or the chamber had been hot less than an hour before.',
  },
  {
    id: 'reactive_only',
    units: [REACTIVE_ONLY],
    what: 'After the first one the chamber is cleaned only on the morning after a failed test (and once at the professional cleaning). No effect.',
  },
  {
    id: 'saw_tooth',
    units: [SAW_TOOTH.unit],
    what: `Exhaust time climbs by ${percent(SAW_TOOTH.exhaustPerDay)} a day and falls back at each drain flush and chamber cleaning.`,
  },
  {
    id: 'leak_step',
    units: [GASKET.unit],
    what: `The leak rate climbs by ${GASKET.before} kPa/min a day, falls to ${GASKET.levelAfter} kPa/min when the gasket is replaced on ${isoDay(GASKET.changed)}, and climbs again by ${GASKET.after} a day.`,
  },
  {
    id: 'renamed',
    units: [RENAMED.unit],
    what: `Called ${RENAMED.oldName} until ${isoDay(RENAMED.lastDay)}. From ${isoDay(RENAMED.bothFrom)} to that day its cycles stand under both names.`,
  },
  {
    id: 'major_repair',
    units: ['T1'],
    what: 'Major repair from 2026-02-09 to 2026-02-12, three qualification cycles and three passing tests before production.',
  },
  {
    id: 'requalification_incomplete',
    units: ['Q3'],
    what: 'Major repair from 2026-05-11 to 2026-05-13; production returns after two passing tests, the third is lacking.',
  },
  {
    id: 'new_control',
    units: ['T2'],
    what: 'The control was replaced on 2025-09-22 and 23; its counter starts at 1 again, so that cycle numbers repeat.',
  },
  {
    id: 'counter_rollover',
    units: [ROLLOVER.unit],
    what: `The counter goes back to 1 after ${ROLLOVER.after}.`,
  },
  {
    id: 'utility_days',
    units: all,
    what: `Steam supply disturbed: Quillhaven ${days(UTILITY_DAYS.Quillhaven)}, Tornfell ${days(UTILITY_DAYS.Tornfell)}; each unit in production loses a cycle.`,
  },
  {
    id: 'unexplained_stops',
    units: [UNEXPLAINED_STOPS.unit],
    what: `Stops by hand that look like drain purges with no cleaning record near: ${days(UNEXPLAINED_STOPS.days)}.`,
  },
  {
    id: 'lost_log',
    units: [LOST_LOG.unit],
    what: `No cleaning records from ${isoDay(LOST_LOG.from)} to ${isoDay(LOST_LOG.to)}: the page was lost, the work was done. Drain purges of those days have no record beside them, so that they look like unexplained stops.`,
  },
  {
    id: 'clock_changes',
    units: ['Q3'],
    what: 'Q3 works into the small hours: clocks went back on 2025-11-02 (cycles in the repeated hour, one whose end stands before its start on the wall clock) and forward on 2026-03-08.',
  },
];
