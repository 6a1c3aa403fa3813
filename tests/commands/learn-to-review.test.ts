import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../pipeline/commands/main.ts';
import { theatre } from '../learn/blind/english.ts';
import { zentrale } from '../learn/blind/german.ts';
import { runProgram } from './terminal.ts';

/**
 * A folder as it may lie on a desk: exports of two makes in two languages, one of them packed, a paper log typed into a workbook, one in text, a letter, a damaged
 * archive. Learned, asked, checked and reviewed as a user would.
 */
const folder = mkdtempSync(join(tmpdir(), 'desk-'));
const DAMAGED = 'old.zip';
beforeAll(async () => {
  const { 'cycle-log-mar.csv': log, ...rest } = await theatre();
  const files = { ...rest, ...(await zentrale()), 'cycle-log-mar.csv.gz': gzipSync(log!) };
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
  writeFileSync(join(folder, 'read me.txt'), 'These are the files of the sterilizers.\nRegards\n');
  writeFileSync(join(folder, DAMAGED), Buffer.from('PK\u0003\u0004 cut off here'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const site = () => readFileSync(join(folder, 'site.yaml'), 'utf8');

describe('from a messy folder to a review', () => {
  it('with --yes nothing is asked; what is open is marked, and refused until it is answered', async () => {
    const { code, out } = await runProgram('learn', folder, '--yes');
    expect(code).toBe(0);
    expect(out).toContain('3 open: search for "? open" in it');
    const text = site();
    expect(text).toContain('# Open questions: 3');
    expect(text).toContain('zone: "?" # ? open');
    expect(text).toMatch(/# \? open: "X" \(8 rows\): a cross beside ticks may mean done or not done/);
    expect(text).toMatch(/# \? open: "-" \(13 rows\)/);
    expect(text).toMatch(/# {3}old\.zip must be an archive/);
    const checked = await runProgram('check', folder);
    expect([checked.code, checked.err.includes('must be a time zone by its IANA name')]).toEqual([1, true]);
    rmSync(join(folder, 'site.yaml'));
  });

  it('a person is asked only what the files can’t prove', async () => {
    const asked: string[] = [];
    const answers: [RegExp, string][] = [
      [/time zone/, 'Europe/Berlin'],
      [/What does "X"/, 'missed'],
      [/What does "-"/, ''],
    ];
    let out = '';
    const print = (text: string): void => {
      out += `${text}\n`;
    };
    const code = await run(['learn', folder], {
      print,
      printError: print,
      ask: async (question) => {
        asked.push(question);
        return answers.find(([about]) => about.test(question))?.[1];
      },
      progress: () => undefined,
      progressDone: () => undefined,
    });
    expect([code, asked.length]).toEqual([0, 3]);
    expect(out).toContain('1 open');
    expect(site()).toMatch(/missed: \[X\]/);
    expect(site()).toMatch(/# \? open: "-" \(13 rows\)/);
    expect(site()).not.toMatch(/: "\?"/);
  });

  it('check shows first rows as they stand and as understood, and every row is accounted for', async () => {
    const { code, out } = await runProgram('check', folder);
    expect(code).toBe(0);
    expect(out).toMatch(/01\/03\/2025 \+ 06:11:19\s+-> start: 2025-03-01 06:11 \(Europe\/Berlin\)/);
    // The first marks of the workbook: day 2 on, since the first cell is blank.
    expect(out).toMatch(/cleaning-sheet\.xlsx, sheet March, row 3, column 2: record/);
    expect(out).toMatch(/ {4}2\s+-> time: 2025-03-02 \(a date alone\)\n {4}✓\s+-> state: done/);
    expect(out).toMatch(/evacuation_s: \d{3}/);
    expect(out).toContain('13 x unknown_word in cleanings, Siebreinigung 2025 04, costs the row');
    expect(out).toContain('Siebreinigung 2025-04.csv, row 2, column 2: one of done, missed, not_due');
    const { totals, files } = JSON.parse((await runProgram('check', folder, '--json')).out);
    // 480 + 465 cycles, 93 + 90 tests of which 3 have a comma too many, 15 leak tests, 92 + 77 marks of which 13 are not known.
    expect(totals).toEqual({
      files: 7,
      rows: 1312,
      records: 1296,
      duplicates: 0,
      rejected: 16,
      skipped: 0,
      cells_lost: 0,
    });
    expect(files.map(({ file }: { file: string }) => file)).toContain('cycle-log-mar.csv.gz');
  });

  it('review works', async () => {
    const out = join(folder, 'review');
    const { code, err } = await runProgram('review', folder, '--month', '2025-03', '--out', out);
    expect([code, err]).toEqual([0, '']);
    const review = JSON.parse(readFileSync(join(out, '2025-03', 'review.json'), 'utf8'));
    expect(review.totals).toMatchObject({ rows: 1312, records: 1296 });
    expect(review.units.map(({ unit }: { unit: string }) => unit)).toEqual(
      expect.arrayContaining(['Autoclave 1', 'Steri 1']),
    );
  });
});
