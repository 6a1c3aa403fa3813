import { dayNumber } from './clock.ts';
import { FIRST_DAY } from './scenario.ts';

/** What is true of single units and of no other: effects, drifts and habits that the review should find, or should not. */

/** Q2: chamber overdue multiplies the odds of a failed day result and the rate of cleanliness aborts. The others: no effect. */
export const EFFECT = { unit: 'Q2', failureOdds: 5, cleanlinessAborts: 2.5 } as const;

/** Q4: from this day on test cycles grow slower in a straight line until the end; not falling back at any cleaning. */
export const DRIFT = {
  unit: 'Q4',
  from: dayNumber('2026-08-12'),
  until: dayNumber('2026-09-30'),
  evacuation: 0.25,
  heatUp: 0.07,
  exhaust: 0.1,
} as const;

/** Q4 is kept from failing so long before and in its drift. */
export const NO_FAILURE = { unit: 'Q4', from: dayNumber('2026-08-01') } as const;

/** Q5: share of chamber cleaning records that the cycle log contradicts. */
export const CONTRADICTED = { unit: 'Q5', share: 0.5 } as const;

/** T2: the chamber is cleaned only after a failure. */
export const REACTIVE_ONLY = 'T2';

/** T4: exhaust time climbs by this share a day and falls back at each drain flush or chamber cleaning. */
export const SAW_TOOTH = { unit: 'T4', exhaustPerDay: 0.022 } as const;

/** Q1: the leak rate climbs (kPa/min a day) and falls at the change of the gasket. */
export const GASKET = {
  unit: 'Q1',
  changed: dayNumber('2026-01-19'),
  before: 0.00021,
  after: 0.00015,
  levelAfter: 0.039,
} as const;

/** T1 was called OLD-7 until this day; for the last week both names stand in the exports. */
export const RENAMED = {
  unit: 'T1',
  oldName: 'OLD-7',
  lastDay: dayNumber('2025-11-16'),
  bothFrom: dayNumber('2025-11-10'),
} as const;

/** Days on which the steam supply of a site was disturbed and every unit stopped. */
export const UTILITY_DAYS = {
  Quillhaven: ['2025-08-19', '2026-02-03'].map(dayNumber),
  Tornfell: ['2026-01-27'].map(dayNumber),
} as const;

/** T3: afternoons with short stops by hand that look like purges, and no cleaning record near. */
export const UNEXPLAINED_STOPS = {
  unit: 'T3',
  days: ['2025-06-17', '2025-09-10', '2025-12-04', '2026-03-19', '2026-07-22'].map(dayNumber),
} as const;

/** T3: days whose cleaning log was lost. */
export const LOST_LOG = { unit: 'T3', from: dayNumber('2026-04-20'), to: dayNumber('2026-05-01') } as const;

/** Q6: the counter of its control goes back to 1 after 9999. */
export const ROLLOVER = { unit: 'Q6', after: 9999 } as const;

export const driftShare = (day: number): number =>
  Math.min(1, Math.max(0, (day - DRIFT.from) / (DRIFT.until - DRIFT.from)));

export function leakLevel(unit: string, level: number, day: number): number {
  if (unit !== GASKET.unit) return level;
  return day < GASKET.changed
    ? level + GASKET.before * (day - FIRST_DAY)
    : GASKET.levelAfter + GASKET.after * (day - GASKET.changed);
}
