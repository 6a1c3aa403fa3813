import { z } from 'zod';
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

/** Look-back lists of the failed tests of a unit between two operating days (the second left out): one for each first failure after a pass. */
export function lookBacks(history: UnitHistory, from: number, until: number): LookBack[] {
  const lists: LookBack[] = [];
  let lastPass: number | null = null;
  let open = false;
  for (const test of history.tests) {
    if (test.result === 'invalid') continue;
    const at = test.ended_at ?? test.time;
    if (test.result === 'pass') {
      lastPass = at;
      open = false;
      continue;
    }
    if (!open && test.day >= from && test.day < until) lists.push(listOf(history, test.day, at, lastPass));
    open = true;
  }
  return lists;
}

function listOf(
  history: UnitHistory,
  failed_day: number,
  failed_at: number,
  last_pass_at: number | null,
): LookBack {
  const cycles = history.cycles
    .filter(
      (cycle) =>
        isProduction(cycle) &&
        cycle.start < failed_at &&
        (last_pass_at === null || cycle.start >= last_pass_at),
    )
    .map((cycle) => ({
      start: cycle.start,
      cycle_number: cycle.cycle_number ?? null,
      kind: cycle.kind,
      standing: cycle.standing,
      file: cycle.origin.file,
      row: cycle.origin.row,
    }));
  return { unit: history.unit, failed_at, failed_day, last_pass_at, cycles };
}
