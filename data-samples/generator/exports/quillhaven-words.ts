import { wall } from '../clock.ts';
import { ZONES } from '../scenario.ts';

/** Words and forms of Quillhaven's exports: plain English, ISO dates, points. */

const zone = ZONES.Quillhaven;

export const stamp = (instant: number): string =>
  wall(zone, instant).toISOString().slice(0, 19).replace('T', ' ');
export const minute = (instant: number): string => stamp(instant).slice(0, 16);
export const date = (instant: number): string => stamp(instant).slice(0, 10);
export const time = (instant: number): string => stamp(instant).slice(11, 16);
/** Typed cell of a workbook: the wall time, seconds cut. */
export const cell = (instant: number): Date =>
  new Date(Math.floor(wall(zone, instant).getTime() / 60_000) * 60_000);

export const PROGRAM = {
  warm_up: 'warm run',
  air_removal_test: 'air removal',
  leak_test: 'leak hold',
  production: 'wrapped',
  liquids: 'bottled liquids',
  qualification: 'qualifying',
  other: 'function check',
} as const;

export const RESULT = {
  completed: 'complete',
  aborted: 'stopped',
  failed: 'not in order',
  running: 'still running',
} as const;

export const TASK = {
  drain_strainer: 'strainer',
  drain_flush: 'drain flush',
  chamber: 'chamber',
  professional: 'deep clean by contractor',
} as const;

export const SERVICE = {
  repair: 'repair',
  controller_replaced: 'new control',
  professional_cleaning: 'contractor clean',
  out_of_service: 'out of use',
  maintenance: 'upkeep',
} as const;

export const fixed = (value: number | undefined, digits: number): string =>
  value === undefined ? '' : value.toFixed(digits);
export const whole = (value: number | undefined): string => (value === undefined ? '' : String(value));
