import { z } from 'zod';
import { endOf, isByDate, type TimedTest, timedTests } from './air-removal-tests/timed-tests.ts';
import { isProduction } from './cycles/class-cycles.ts';
import type { UnitHistory } from './unit-history.ts';

/**
 * After a failed test: the production cycles since the unit's last passing test, for those who decide. The list names cycles; it judges
 * none of them and recalls nothing.
 */
export const lookBackSchema = z.strictObject({
  unit: z.string(),
  failed_at: z.number().int().describe('Time of the failed test'),
  failed_day: z.number().int(),
  last_pass_at: z
    .number()
    .int()
    .nullable()
    .describe('Time of the last passing test before it; null where the record has none'),
  failed_by_date: z
    .boolean()
    .describe('Only the date of the failed test is known: the list goes on to the end of that day'),
  last_pass_by_date: z
    .boolean()
    .describe('Only the date of that passing test is known: the list begins with that day'),
  cycles: z.array(
    z.strictObject({
      start: z.number().int(),
      cycle_number: z.number().int().nullable(),
      kind: z.string(),
      standing: z.string(),
      file: z.string(),
      row: z.number().int(),
    }),
  ),
});
export type LookBack = z.infer<typeof lookBackSchema>;

/**
 * Look-back lists of the failed tests of a unit between two operating days (the second left out): one for each first failure after a pass. Where only the date of a test
 * is known, the list errs toward more: it takes in that whole day, and begins at the last pass that is known to have come before the failure.
 */
export function lookBacks(history: UnitHistory, from: number, until: number): LookBack[] {
  const lists: LookBack[] = [];
  let passes: TimedTest[] = [];
  /** Pass before the failure before; undefined where there was none. */
  let listed: TimedTest | null | undefined;
  for (const timed of timedTests(history.tests, history.clock)) {
    if (timed.test.result === 'pass') {
      passes.push(timed);
      continue;
    }
    const last = passes.findLast((pass) => pass.latest <= timed.earliest) ?? null;
    passes = passes.slice(Math.max(0, passes.indexOf(last!)));
    const { day } = timed.test;
    if (listed !== last && day >= from && day < until) lists.push(listOf(history, timed, last));
    listed = last;
  }
  return lists;
}

function listOf(history: UnitHistory, failed: TimedTest, last: TimedTest | null): LookBack {
  const end = endOf(failed);
  const cycles = history.cycles
    .filter(
      (cycle) => isProduction(cycle) && cycle.start < end && (last === null || cycle.start >= last.earliest),
    )
    .map((cycle) => ({
      start: cycle.start,
      cycle_number: cycle.cycle_number ?? null,
      kind: cycle.kind,
      standing: cycle.standing,
      file: cycle.origin.file,
      row: cycle.origin.row,
    }));
  return {
    unit: history.unit,
    failed_at: failed.earliest,
    failed_day: failed.test.day,
    last_pass_at: last?.earliest ?? null,
    failed_by_date: isByDate(failed),
    last_pass_by_date: last !== null && isByDate(last),
    cycles,
  };
}
