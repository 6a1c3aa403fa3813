import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { nothingRead, nothingReadLine } from '../../../pipeline/findings/lists/nothing-read.ts';
import { readExports } from '../../../pipeline/ingest/read-exports.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import { runProgram } from '../../commands/terminal.ts';
import { withFolder } from '../../ingest/read-folder.ts';

const scratch = mkdtempSync(join(tmpdir(), 'nothing-read-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

let count = 0;
function folderOf(files: Record<string, string>): string {
  const folder = join(scratch, String(count++));
  mkdirSync(folder);
  for (const [file, content] of Object.entries(files)) writeFileSync(join(folder, file), content);
  return folder;
}

const two = (value: number): string => String(value).padStart(2, '0');
const days = Array.from({ length: 28 }, (_, at) => `2025-03-${two(at + 1)}`);
const table = (header: string, rows: readonly string[]): string => [header, ...rows, ''].join('\n');
const cycles = table(
  'unit,start,kind,outcome',
  days.flatMap((day) => [
    `S1,${day} 06:10:00,air_removal_test,completed`,
    `S1,${day} 08:00:00,production,completed`,
  ]),
);
const leaks = (unit: string, list = days) =>
  table(
    'unit,time,leak_rate_kpa_min',
    list.map((day) => `${unit},${day} 06:00:00,0.05`),
  );
const SITE = 'sites: [{ zone: Europe/Berlin }]\nunits: [{ id: S1 }]\n';

const linesOf = (files: Record<string, string>, site = SITE) =>
  withFolder(files, async (folder) =>
    nothingRead(await readExports(readSiteFile(site, 'site.yaml'), folder)).map(nothingReadLine),
  );

describe('what gave no record', () => {
  it('a file, with its rows and what was wrong with most of them', async () => {
    expect(await linesOf({ 'cycles.csv': cycles, 'leak-tests.csv': leaks('AUT1') })).toEqual([
      'Nothing of leak-tests.csv was read (28 of 28 rows): the name of the unit is not known, or not on that day, found "AUT1"',
    ]);
    const mixed = leaks('S1')
      .replaceAll('06:00:00', '6 am')
      .replace('S1,2025-03-01 6 am', 'AUT1,2025-03-01 06:00:00');
    expect(await linesOf({ 'leak-tests.csv': mixed })).toEqual([
      'Nothing of leak-tests.csv was read (28 of 28 rows): the text is no time of the pattern, or no time of the calendar, found "2025-03-02 6 am"',
    ]);
  });

  it('one file of several of a source by itself, all of them as the source', async () => {
    const [first, rest] = [leaks('AUT1', days.slice(0, 3)), days.slice(3)];
    expect(await linesOf({ 'leak-tests-1.csv': first, 'leak-tests-2.csv': leaks('S1', rest) })).toEqual([
      'Nothing of leak-tests-1.csv was read (3 of 3 rows): the name of the unit is not known, or not on that day, found "AUT1"',
    ]);
    expect(await linesOf({ 'leak-tests-1.csv': first, 'leak-tests-2.csv': leaks('AUT2', rest) })).toEqual([
      'Nothing of leak_tests (2 files) was read (28 of 28 rows): the name of the unit is not known, or not on that day, found "AUT1"',
    ]);
  });

  it('a file whose header is not found, where its source gave nothing else', async () => {
    const wrong = leaks('S1').replace('time', 'when');
    expect(await linesOf({ 'cycles.csv': cycles, 'leak-tests.csv': wrong })).toEqual([
      'Nothing of leak-tests.csv was read: no row holds the headers that the source needs, found "unit | when | leak_rate_kpa_min"',
    ]);
    expect(await linesOf({ 'leak-tests-1.csv': wrong, 'leak-tests-2.csv': leaks('S1') })).toEqual([]);
  });

  it.each<[string, Record<string, string>]>([
    ['some rows of it were read', { 'leak-tests.csv': leaks('AUT1').replace('AUT1', 'S1') }],
    ['its rows are duplicates', { 'leak-tests-1.csv': leaks('S1'), 'leak-tests-2.csv': leaks('S1') }],
    ['it holds a header alone', { 'leak-tests.csv': leaks('S1', []) }],
    ['it is empty', { 'leak-tests.csv': '' }],
    ['it is not there', {}],
  ])('no file of which %s', async (_, files) => {
    expect(await linesOf({ 'cycles.csv': cycles, ...files })).toEqual([]);
  });

  it('no file whose rows are all of another site', async () => {
    const site = `${SITE}sources:\n  - { name: a, kind: leak_tests, files: l.csv, skip: { unit: [S2] } }\n`;
    expect(await linesOf({ 'l.csv': leaks('S2') }, site)).toEqual([]);
  });
});

describe('a source that gave no record', () => {
  const lost = { 'site.yaml': SITE, 'cycles.csv': cycles, 'leak-tests.csv': leaks('AUT1') };
  const LINE = 'Nothing of leak-tests.csv was read (28 of 28 rows): the name of the unit is not known';

  it('is what check says first; it ends with 1, and shows the line that mends it', async () => {
    const { code, out } = await runProgram('check', folderOf(lost));
    expect(code).toBe(1);
    expect(out.startsWith(LINE)).toBe(true);
    expect(out).toContain(
      '    If it is another name of a unit, its line in the site file is: - { id: …, aliases: [AUT1] }\n',
    );
    const mended = folderOf({ ...lost, 'site.yaml': SITE.replace('id: S1', 'id: S1, aliases: [AUT1]') });
    expect((await runProgram('check', mended)).code).toBe(0);
    const json = await runProgram('check', folderOf(lost), '--json');
    expect([json.code, JSON.parse(json.out).nothing_read]).toEqual([
      1,
      [expect.objectContaining({ files: ['leak-tests.csv'], rows: 28, rejected: 28, code: 'unknown_unit' })],
    ]);
  });

  it('is said beside the review in one line, and the review is made', async () => {
    const folder = folderOf(lost);
    const { code, out, err } = await runProgram(
      'review',
      folder,
      '--month',
      '2025-03',
      '--out',
      join(folder, 'out'),
    );
    expect([code, err.split('\n').length]).toEqual([0, 2]);
    expect(err.startsWith(LINE)).toBe(true);
    expect(out).toContain('Review of 2025-03');
  });
});

describe('chamber cleanings', () => {
  const cleanings = (task: (at: number) => string) =>
    table(
      'unit,task,time',
      days.map((day, at) => `S1,${task(at)},${day} 15:00:00`),
    );
  const checked = async (text: string) => {
    const folder = folderOf({ 'site.yaml': SITE, 'cycles.csv': cycles, 'cleanings.csv': text });
    return runProgram('check', folder);
  };

  it('on most days of use are called in doubt, and are no error', async () => {
    const { code, out } = await checked(cleanings(() => 'chamber'));
    expect(code).toBe(0);
    expect(out.split('\n')[0]).toBe(
      'Chambers are said to be cleaned nearly each day: S1 (28 days, 28 days of use). Look at what the site file takes for the task in cleanings',
    );
  });

  it.each([
    ['of the strainer', () => 'drain_strainer'],
    ['each week', (at: number) => (at % 7 === 0 ? 'chamber' : 'drain_strainer')],
    ['each third day', (at: number) => (at % 3 === 1 ? 'chamber' : 'drain_strainer')],
  ])('%s are not', async (_, task) => {
    expect((await checked(cleanings(task))).out).not.toContain('Chambers are said');
  });
});
