import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ICAL from 'ical.js';
import { afterAll, describe, expect, it } from 'vitest';
import { intervalCaseSchema } from '../../pipeline/findings/interval/interval-schema.ts';
import { runProgram } from './terminal.ts';

const scratch = mkdtempSync(join(tmpdir(), 'interval-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const samples = fileURLToPath(new URL('../../data-samples', import.meta.url));
const small = fileURLToPath(new URL('../runs/smallest-site-file/input', import.meta.url));

describe('command interval', () => {
  it('puts the case of the demo data in plain words and writes proposals as a calendar file', async () => {
    const { code, out, err } = await runProgram('interval', samples, '--out', scratch);
    expect([code, err]).toEqual([0, '']);
    // One unit of ten has an effect, which begins at 28 days: no rise over all units, but one in that unit.
    expect(out).toMatch(/Over all units it is not shown that/);
    expect(out).toMatch(/for Q2\s+by\s+itself\s+it\s+is\./);
    expect(out).toMatch(/Q2 by itself: shape 1\.\d\d \(1\.\d\d to \d\.\d\d, p 0\.0\d+\)/);
    expect(out).toMatch(/let\s+the\s+chamber\s+cool/);
    expect(out).toContain('PROPOSED CHAMBER CLEANINGS, OCTOBER 2026');
    const file = join(scratch, 'interval.ics');
    expect(out).toContain(file);
    const calendar = new ICAL.Component(ICAL.parse(readFileSync(file, 'utf8')));
    expect(calendar.getAllSubcomponents('vevent').length).toBeGreaterThanOrEqual(10);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(140);
  });

  it('gives the same as JSON that fits its schema, and leaves later months out', async () => {
    const { code, out } = await runProgram(
      'interval',
      samples,
      '--month',
      '2026-03',
      '--json',
      '--out',
      scratch,
    );
    expect(code).toBe(0);
    const found = intervalCaseSchema.parse(JSON.parse(out));
    expect(found.record_to).toBe('2026-03-31');
    expect(found.schedule.month).toBe('2026-04');
  });

  it('says what a small record can’t say, and exits 0: a finding is no error', async () => {
    const { code, out } = await runProgram('interval', small, '--out', scratch);
    expect(code).toBe(0);
    expect(out).toMatch(/These records cannot tell whether/);
  });

  it('says where the calendar file can’t be written', async () => {
    const file = join(scratch, 'taken');
    writeFileSync(file, '');
    const { code, err } = await runProgram('interval', small, '--out', file);
    expect(code).toBe(1);
    expect(err).toMatch(/must be a file that can be written, found E/);
  });
});
