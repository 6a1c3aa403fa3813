import { z } from 'zod';

const localTime = z.string().describe('Wall time of the site, yyyy-MM-dd HH:mm');
const date = z.string().describe('Operating day, yyyy-MM-dd');

/** Why no passing test came before the cycles of a list. */
export const WITHOUT_PASS = ['after_failure', 'before_late_test', 'no_test'] as const;

/** Cycles that ran with no passing test before them, for those who decide. The list names cycles; it judges none of them and recalls nothing. */
export const cyclesWithoutPassSchema = z.strictObject({
  unit: z.string(),
  why: z.enum(WITHOUT_PASS),
  date: date.describe('Of the failed test, or of the day whose test is late or missing'),
  failed: localTime.nullable().describe('The failed test; null where none failed'),
  failed_by_date: z
    .boolean()
    .describe('Only the date of the failed test is known: the list begins with that day'),
  ended: localTime
    .nullable()
    .describe('The next passing test, or the end of the late one; null where the record has none'),
  ended_by_date: z
    .boolean()
    .describe('Only the date of that test is known: the list goes on to the end of that day'),
  cycles: z.array(
    z.strictObject({
      started: localTime,
      date,
      cycle_number: z.number().int().nullable(),
      kind: z.string(),
      standing: z.string(),
      certain: z
        .boolean()
        .describe('False where a test of which only the date is known may have passed before the cycle'),
      file: z.string(),
      row: z.number().int(),
    }),
  ),
});
export type CyclesWithoutPass = z.infer<typeof cyclesWithoutPassSchema>;
