import { dayNumber } from './clock.ts';

/** The invented organisation: two sites, ten units. No such hospital, place, maker or person exists. */

/**
 * Seed of all draws. Taken from the first 110 whole numbers so that what the dice gave lies near what was built in: Q2's counts near their
 * expectation, no other unit standing out by chance. Another seed gives a fleet of the same kind whose counts scatter more.
 */
export const SEED = 89;
export const FIRST_DAY = dayNumber('2025-04-01');
export const LAST_DAY = dayNumber('2026-09-30');
export const CHAMBER_INTERVAL = 28;

export type SiteId = 'Quillhaven' | 'Tornfell';
export const ZONES: Record<SiteId, string> = {
  Quillhaven: 'America/St_Johns',
  Tornfell: 'America/Halifax',
};

/** How late chamber cleanings come: the share of slack ones, and days late (from, to) of slack and of orderly ones. */
export interface Lateness {
  slack: number;
  slackDays: readonly [number, number];
  orderlyDays: readonly [number, number];
}

export interface UnitPlan {
  id: string;
  site: SiteId;
  /** Weekdays of use, 1 (Monday) to 7. */
  days: readonly number[];
  /** Usual first cycle, minutes since midnight. */
  opens: number;
  /** Mean production cycles a day of use. */
  production: number;
  /** Share of production cycles that are liquids. */
  liquids: number;
  /** Probability that a day's test fails, chamber not overdue. */
  failing: number;
  lateness: Lateness;
  /** Usual seconds of the test cycle. */
  evacuation: number;
  heatUp: number;
  exhaust: number;
  /** kPa/min */
  leak: number;
  /** First cycle number. */
  counter: number;
}

const usual: Lateness = { slack: 0.55, slackDays: [9, 25], orderlyDays: [0, 3] };
const six = [1, 2, 3, 4, 5, 6];
const seven = [1, 2, 3, 4, 5, 6, 7];
const five = [1, 2, 3, 4, 5];

// biome-ignore format: one unit a line
export const UNITS: readonly UnitPlan[] = [
  { id: 'Q1', site: 'Quillhaven', days: six, opens: 360, production: 5.4, liquids: 0, failing: 0.011, lateness: usual, evacuation: 384, heatUp: 118, exhaust: 84, leak: 0.045, counter: 30114 },
  { id: 'Q2', site: 'Quillhaven', days: seven, opens: 375, production: 5.6, liquids: 0, failing: 0.02, lateness: { slack: 0.82, slackDays: [18, 25], orderlyDays: [0, 4] }, evacuation: 402, heatUp: 126, exhaust: 88, leak: 0.052, counter: 28410 },
  { id: 'Q3', site: 'Quillhaven', days: six, opens: 1020, production: 6.2, liquids: 0, failing: 0.013, lateness: usual, evacuation: 365, heatUp: 109, exhaust: 79, leak: 0.038, counter: 17752 },
  { id: 'Q4', site: 'Quillhaven', days: six, opens: 390, production: 5.2, liquids: 0, failing: 0.011, lateness: { ...usual, slack: 0.5 }, evacuation: 391, heatUp: 121, exhaust: 82, leak: 0.048, counter: 21035 },
  { id: 'Q5', site: 'Quillhaven', days: seven, opens: 360, production: 5.5, liquids: 0, failing: 0.014, lateness: { ...usual, slack: 0.45 }, evacuation: 417, heatUp: 131, exhaust: 92, leak: 0.06, counter: 26201 },
  { id: 'Q6', site: 'Quillhaven', days: five, opens: 420, production: 5.0, liquids: 0.45, failing: 0.012, lateness: { ...usual, slack: 0.45 }, evacuation: 438, heatUp: 139, exhaust: 101, leak: 0.055, counter: 8820 },
  { id: 'T1', site: 'Tornfell', days: six, opens: 360, production: 5.5, liquids: 0, failing: 0.012, lateness: usual, evacuation: 352, heatUp: 104, exhaust: 76, leak: 0.041, counter: 12077 },
  { id: 'T2', site: 'Tornfell', days: seven, opens: 390, production: 5.7, liquids: 0, failing: 0.014, lateness: usual, evacuation: 371, heatUp: 113, exhaust: 81, leak: 0.05, counter: 512 },
  { id: 'T3', site: 'Tornfell', days: five, opens: 390, production: 5.1, liquids: 0.5, failing: 0.012, lateness: { ...usual, slack: 0.6 }, evacuation: 446, heatUp: 142, exhaust: 104, leak: 0.058, counter: 14490 },
  { id: 'T4', site: 'Tornfell', days: six, opens: 420, production: 5.2, liquids: 0.5, failing: 0.012, lateness: { ...usual, slack: 0.5 }, evacuation: 429, heatUp: 136, exhaust: 96, leak: 0.047, counter: 15808 },
];

/** Closed to units that don't run on Sundays. */
export const CLOSED_DAYS = ['2025-07-01', '2025-12-25', '2026-01-01', '2026-04-03', '2026-07-01'].map(
  dayNumber,
);
