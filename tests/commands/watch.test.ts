import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { probeDriftSchema } from '../../pipeline/findings/drift/drift-schema.ts';
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

  it('says in a line that nothing moves, and exits 0', async () => {
    const { code, out } = await runProgram('watch', small);
    expect(code).toBe(0);
    expect(out).toMatch(/^To \d{4}-\d{2}-\d{2}: nothing moves\. No flag does not mean no fault\.\n$/);
    const json = await runProgram('watch', small, '--json');
    expect(json.code).toBe(0);
    expect(answerSchema.parse(JSON.parse(json.out)).moving).toEqual([]);
  });

  it('exits 1 for a folder that is not there, 2 for wrong usage', async () => {
    expect((await runProgram('watch', `${small}/nowhere`)).code).toBe(1);
    expect((await runProgram('watch', small, '--today')).code).toBe(2);
  });
});
