import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { findInputs } from '../../pipeline/commands/find-inputs.ts';
import { FirstRows } from '../../pipeline/commands/first-rows.ts';
import { readFound } from '../../pipeline/commands/read-inputs.ts';
import { checkSiteBySite } from '../../pipeline/commands/site-by-site/check-site-by-site.ts';
import type { Terminal } from '../../pipeline/commands/terminal.ts';
import { demoWithSlips } from './demo-with-slips.ts';

const DEMO = fileURLToPath(new URL('../../data-samples', import.meta.url));
const SILENT: Terminal = {
  print: () => undefined,
  printError: () => undefined,
  progress: () => undefined,
  progressDone: () => undefined,
};

/** What check tells, from all records at once and site by site. */
async function bothWays(folder: string) {
  const found = await findInputs({ folder });
  const told = async (read: (first: FirstRows) => ReturnType<typeof checkSiteBySite>) => {
    const first = new FirstRows(found.site, 3);
    const { files, problems } = await read(first);
    return { files, problems, rows: first.shown(problems), personal: first.personal() };
  };
  const whole = await told(async (first) => {
    const reading = await readFound(found, { folder }, SILENT, first.watch);
    first.see(reading.records);
    return reading;
  });
  return { whole, bySite: await told((first) => checkSiteBySite(found, SILENT, first)) };
}

it('tells the same site by site as of all records at once', { timeout: 60_000 }, async () => {
  const { whole, bySite } = await bothWays(DEMO);
  expect(bySite).toStrictEqual(whole);
  expect(whole.files.reduce((sum, file) => sum + file.duplicates, 0)).toBeGreaterThan(700);
  expect(whole.rows.filter((row) => row.became === 'record').length).toBeGreaterThan(10);
});

it('tells the same of slips of years, which stay records', { timeout: 60_000 }, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'check-slips-'));
  try {
    demoWithSlips(folder, { cycle: '2036', test: '2016' });
    const { whole, bySite } = await bothWays(folder);
    expect(bySite).toStrictEqual(whole);
    expect(
      whole.problems
        .filter(({ code }) => code === 'lone_record')
        .map(({ file, row, column }) => [file, row, column]),
    ).toEqual([
      ['exports/quillhaven/air-removal-2026-04.csv', 2, 'Date + Time'],
      ['exports/quillhaven/cycle-log-2026-q2.csv', 1719, 'Started'],
    ]);
    const sound = await bothWays(DEMO);
    const counts = (of: typeof whole) =>
      of.files.map(({ file, rows, records, rejected }) => [file, rows, records, rejected]);
    expect(counts(whole)).toEqual(expect.arrayContaining(counts(sound.whole)));
  } finally {
    rmSync(folder, { recursive: true });
  }
});

it('tells the same where files hold records of several sites', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'check-'));
  const row = (unit: string, day: string, outcome = 'completed') =>
    `${unit},2026-${day} 08:00,2026-${day} 08:50,production,${outcome},A. Person\n`;
  const head = 'unit,start,end,kind,outcome,operator\n';
  try {
    writeFileSync(
      join(folder, 'site.yaml'),
      'sites: [{ id: a, zone: Etc/UTC }, { id: b, zone: Etc/UTC }]\nunits: [{ id: A, site: a }, { id: B, site: b }]\n',
    );
    writeFileSync(join(folder, 'cycles-1.csv'), head + row('A', '03-01') + row('B', '03-01'));
    writeFileSync(join(folder, 'cycles-2.csv'), head + row('B', '03-01', 'aborted') + row('C', '03-01'));
    writeFileSync(join(folder, 'cycles-3.csv'), head + row('A', '03-01') + row('A', '03-02'));
    const { whole, bySite } = await bothWays(folder);
    expect(bySite).toStrictEqual(whole);
    expect(
      bySite.files.map(({ rows, records, duplicates, rejected }) => [rows, records, duplicates, rejected]),
    ).toEqual([
      [2, 2, 0, 0],
      [2, 0, 0, 2],
      [2, 1, 1, 0],
    ]);
    expect(bySite.personal.map(({ column, looks_like }) => [column, looks_like])).toEqual([
      ['operator', 'names'],
    ]);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
