import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { probeDriftSchema } from '../../pipeline/findings/drift/drift-schema.ts';
import { cyclesWithoutPassSchema } from '../../pipeline/findings/lists/cycles-without-pass-schema.ts';
import { problemSchema } from '../../pipeline/ingest/reading.ts';
import { demoWithSlips } from './demo-with-slips.ts';
import { runProgram } from './terminal.ts';

const samples = fileURLToPath(new URL('../../data-samples', import.meta.url));
const small = fileURLToPath(new URL('../runs/smallest-site-file/input', import.meta.url));
const answerSchema = z.strictObject({
  to: z.string(),
  moving: z.array(probeDriftSchema.omit({ series: true })),
});

describe('command watch', () => {
  it('says what moves in the demo data, and exits 10', async () => {
    const { code, out } = await runProgram('watch', samples, '--json');
    expect(code).toBe(10);
    const { to, moving } = answerSchema.parse(JSON.parse(out));
    expect(to).toBe('2026-09-30');
    // As the scenario has it: Q4 drifts from 2026-08-12 on, Q1 leaks a little more each day since its gasket was replaced on 2026-01-19.
    expect(moving.map((of) => `${of.unit} ${of.probe} ${of.state} ${of.direction}`)).toEqual([
      'Q1 leak_rate moving up',
      'Q4 evacuation_time moving up',
      'Q4 heat_up_time moving up',
      'Q4 exhaust_time moving up',
    ]);
    for (const { rate_per_week: rate, unit, probe } of moving) {
      expect(rate!.low).toBeLessThan(rate!.value);
      expect(rate!.high).toBeGreaterThan(rate!.value);
      // 0.00015 kPa/min a day.
      if (unit === 'Q1' && probe === 'leak_rate') {
        expect(rate!.low).toBeLessThan(7 * 0.00015 * 1.1);
        expect(rate!.high).toBeGreaterThan(7 * 0.00015 * 0.9);
      }
    }
  });

  it('is not silenced by one mistyped year, names its row, and says what moves as without it', {
    timeout: 60_000,
  }, async () => {
    const folder = mkdtempSync(join(tmpdir(), 'watch-slip-'));
    try {
      demoWithSlips(folder, { cycle: '2036' });
      const { code, out } = await runProgram('watch', folder, '--json');
      expect(code).toBe(10);
      const { left_out, ...rest } = z
        .looseObject({ left_out: z.array(problemSchema) })
        .parse(JSON.parse(out));
      const { to, moving } = answerSchema.parse(rest);
      expect(to).toBe('2026-09-30');
      expect(moving.map((of) => `${of.unit} ${of.probe}`)).toEqual([
        'Q1 leak_rate',
        'Q4 evacuation_time',
        'Q4 heat_up_time',
        'Q4 exhaust_time',
      ]);
      expect(left_out).toMatchObject([{ code: 'lone_record', row: 1719, value: '2036-05-10 00:03' }]);
      expect((await runProgram('watch', folder)).out).toMatch(
        /\nLeft out: exports\/quillhaven\/cycle-log-2026-q2\.csv, row 1719, Started: must be a time within 62 days of other cycles or tests; .*; found "2036-05-10 00:03"\.\n$/,
      );
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('says of cycles that ran after a failed test and before one passed, and exits 10', async () => {
    const { code, out } = await runProgram('watch', small);
    expect(code).toBe(10);
    expect(out).toBe(
      'To 2025-03-31: nothing moves. No flag does not mean no fault.\nOne: 4 cycles of this month ran after the failed test of 2025-03-13 06:54 and before one passed: those who are responsible decide about them.\n',
    );
    const { ran_after_failure, ...rest } = z
      .looseObject({ ran_after_failure: z.array(cyclesWithoutPassSchema) })
      .parse(JSON.parse((await runProgram('watch', small, '--json')).out));
    expect(ran_after_failure.map(({ unit, cycles }) => [unit, cycles.length])).toEqual([['One', 4]]);
    expect(answerSchema.parse(rest).moving).toEqual([]);
  });

  it('says in a line that nothing moves, and exits 0', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'watch-quiet-'));
    try {
      cpSync(small, folder, { recursive: true });
      const tests = join(folder, 'air-removal-tests.csv');
      writeFileSync(tests, readFileSync(tests, 'utf8').replaceAll('fail', 'pass'));
      const { code, out } = await runProgram('watch', folder);
      expect(code).toBe(0);
      expect(out).toMatch(/^To \d{4}-\d{2}-\d{2}: nothing moves\. No flag does not mean no fault\.\n$/);
      const json = await runProgram('watch', folder, '--json');
      expect(json.code).toBe(0);
      expect(answerSchema.parse(JSON.parse(json.out)).moving).toEqual([]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  it('exits 1 for a folder that is not there, 2 for wrong usage', async () => {
    expect((await runProgram('watch', `${small}/nowhere`)).code).toBe(1);
    expect((await runProgram('watch', small, '--today')).code).toBe(2);
  });
});
