import { z } from 'zod';

const flag = z.union([z.literal(0), z.literal(1)]);
const count = z.number().int().min(0);

/** One row of the unit-day panel: a day of use of a unit, as all statistics read it. Null means not known or not there. */
export const unitDaySchema = z.strictObject({
  unit: z.string(),
  site: z.string(),
  day: z.number().int().describe('Operating day, days since 1970-01-01'),
  date: z.string().describe('Operating day as a date'),
  era: count.describe('Era of the unit, from 0'),
  stratum: count.describe('Stratum within the era, from 0'),
  test_result: z.enum(['pass', 'fail']).nullable().describe('Day result: first valid test that counts'),
  test_timing: z.enum(['in_time', 'late', 'missing', 'no_time', 'not_needed']),
  inside_episode: flag.describe(
    '1 after the first day of a failure episode, to the passing day that ends it',
  ),
  out_of_service: flag,
  at_risk: flag.describe('1: has a day result, not inside an episode, not out of service'),
  failed: flag.nullable().describe('Failed day result; null where there is none'),
  production_cycles: count.describe(
    'Production and liquids cycles; purges, early stops and open cycles left out',
  ),
  cleanliness_aborts: count.describe('Aborts of production of a class plausibly about cleanliness'),
  unrelated_aborts: count.describe('Aborts of production of a class that cleaning can’t move'),
  unclassified_aborts: count.describe('Aborts of production whose text is in no row of the table'),
  purges: count,
  early_stops: count.describe('Unexplained early stops'),
  chamber_overdue: flag
    .nullable()
    .describe('At the start of the first cycle, in the site’s reading of contradicted records'),
  chamber_overdue_all_records: flag.nullable().describe('The same, contradicted records counted as done'),
  chamber_days_past_due: count.nullable(),
  chamber_clock_days: count.nullable().describe('Calendar days since the last counted chamber cleaning'),
  strainers_missed: count.nullable().describe('Strainer cleanings missed in the window of days of use'),
  flushes_missed_in_a_row: count.nullable(),
});
export type UnitDay = z.infer<typeof unitDaySchema>;
