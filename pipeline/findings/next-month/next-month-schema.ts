import { z } from 'zod';
import { CLEANING_TASKS } from '../../site/vocabulary.ts';

/** What the month after the one under review will bring if nothing changes: tasks, units to keep an eye on, data that will not be there. */

const count = z.number().int().min(0);
const date = z.string().describe('Operating day, yyyy-MM-dd');

/**
 * `due`: by its interval, each earlier one taken as done on its day. `outstanding`: fell due before the month and is not on record as done; it stands on the first day on which the
 * unit is expected in use. `each_day_of_use`: before the first cycle of the day.
 */
export const AHEAD_STATES = ['due', 'outstanding', 'each_day_of_use'] as const;

/** Codes of data that will be missing if nothing changes. */
export const MISSING_CODES = [
  'source_stopped',
  'source_without_records',
  'cleaning_log_silent',
  'no_leak_tests',
  'no_durations',
  'tests_without_time',
  'cycles_without_end',
  'no_use_expected',
] as const;
export type MissingCode = (typeof MISSING_CODES)[number];

export const nextMonthSchema = z.strictObject({
  month: z.string().describe('yyyy-MM'),
  from: date,
  to: date,
  weeks: count.describe('Last weeks of the record from which the expected days of use are taken'),
  expected_use: z
    .array(z.strictObject({ unit: z.string(), days: z.array(date) }))
    .describe(
      'Days on which a unit is expected in use: weekdays on which it was in at least half of the last weeks',
    ),
  tasks: z.array(
    z.strictObject({
      unit: z.string(),
      task: z.enum(CLEANING_TASKS),
      date: date.describe('First day of expected use on or after the day on which it falls due'),
      state: z.enum(AHEAD_STATES),
      due: date.describe('Day on which it falls due, or fell due'),
      after: z.enum(['interval', 'chamber_cleaning']),
      last_done: date.nullable().describe('Last time that counts; null where none is on record'),
    }),
  ),
  watch: z
    .array(
      z.strictObject({
        unit: z.string(),
        code: z.string(),
        reason: count.describe('Place among the unit’s reasons for attention, from 0'),
      }),
    )
    .describe('Reasons for attention that do not end with the month'),
  missing: z.array(
    z.strictObject({
      code: z.enum(MISSING_CODES),
      unit: z.string().nullable(),
      site: z.string().nullable(),
      source: z.string().nullable(),
      since: date.nullable().describe('Last day of which there is a record; null where there never was one'),
      count: count.nullable().describe('Records that lack it'),
      of: count.nullable().describe('Records of the month that should have it'),
    }),
  ),
});
export type NextMonth = z.infer<typeof nextMonthSchema>;
export type TaskAhead = NextMonth['tasks'][number];
export type MissingData = NextMonth['missing'][number];
