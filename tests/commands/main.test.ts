import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { runProgram } from './terminal.ts';

const scratch = mkdtempSync(join(tmpdir(), 'commands-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const good = fileURLToPath(new URL('../runs/smallest-site-file/input', import.meta.url));

/** A folder with the given files. */
function folderOf(name: string, files: Record<string, string>): string {
  const folder = join(scratch, name);
  mkdirSync(folder, { recursive: true });
  for (const [file, content] of Object.entries(files)) writeFileSync(join(folder, file), content);
  return folder;
}

describe('usage', () => {
  it('prints help from the definitions and exits 0', async () => {
    const { code, out, err } = await runProgram('review', '--help');
    expect([code, err]).toEqual([0, '']);
    for (const word of ['--site', '--month', '--out', '--json', 'FOLDER']) expect(out).toContain(word);
    expect((await runProgram('--help')).out).toMatch(/review.*\n.*check/);
  });

  it.each([
    [[], ''],
    [['shine'], 'The command must be one of'],
    [['check', '--colour'], 'The option must be one of --site, --rows, --json, found "--colour"'],
    [['check', 'a', 'b'], 'There is one argument too many: "b"'],
  ])('wrong usage %j exits 2', async (argv, message) => {
    const { code, err } = await runProgram(...argv);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });
});

describe('a mistake of the user is one clean message and exit code 1', () => {
  const smallest = 'sites: [{ zone: Europe/Berlin }]\n';
  it.each([
    [
      'no such folder',
      ['check', join(scratch, 'nowhere')],
      /nowhere: must be a folder with exports, found nothing$/m,
    ],
    [
      'a file for a folder',
      ['check', join(good, 'cycles.csv')],
      /must be a folder with exports, found a file/,
    ],
    [
      'no site file',
      ['check', folderOf('no-site', {})],
      /no-site: holds no site\.yaml yet\nRun first: cleaning-evidence learn .*no-site$/m,
    ],
    [
      'a site file that is named and not there',
      ['check', good, '--site', join(scratch, 'other.yaml')],
      /other\.yaml: must be a site file that can be read \(ENOENT\)$/m,
    ],
    [
      'a folder for a site file',
      ['check', good, '--site', scratch],
      /: must be a site file that can be read \(EISDIR\)$/m,
    ],
    [
      'a slip in the site file',
      ['check', folderOf('slip', { 'site.yaml': 'sites: [{ zone: Europe/Berlin }]\nunit: []\n' })],
      /site\.yaml line 2, unit: must be a key of the site file, found "unit"/,
    ],
    [
      'an empty folder',
      ['check', folderOf('empty', { 'site.yaml': smallest })],
      /must hold at least one file that a source of .* can read, found none/,
    ],
    [
      'an empty file',
      ['review', folderOf('empty-file', { 'site.yaml': smallest, 'cycles.csv': '' })],
      /the first problem: cycles.csv: /,
    ],
    [
      'a month that is none',
      ['review', good, '--month', '2025-13'],
      /--month must be a month like 2026-03, found "2025-13"/,
    ],
    [
      'a month without data',
      ['review', good, '--month', '2031-01'],
      /must be a month with cycles or tests, found "2031-01"; the records run from 2025-02-01 to 2025-03-31/,
    ],
    [
      'an output folder that is a file',
      ['review', good, '--out', join(good, 'cycles.csv')],
      /must be a place that can be written, found (ENOTDIR|EEXIST)/,
    ],
  ])('%s', async (_, argv, message) => {
    const { code, out, err } = await runProgram(...(argv as string[]));
    expect(err).toMatch(message as RegExp);
    expect(err.trim().split('\n').length).toBeLessThanOrEqual(2);
    expect([code, out]).toEqual([1, '']);
  });
});

describe('check', () => {
  it('writes nothing and gives JSON whose counts add up', async () => {
    const before = readdirSync(good);
    const { out } = await runProgram('check', good, '--json');
    const { totals, files } = JSON.parse(out);
    expect(totals.rows).toBe(totals.records + totals.duplicates + totals.rejected + totals.skipped);
    expect(files.reduce((sum: number, file: { rows: number }) => sum + file.rows, 0)).toBe(totals.rows);
    expect(readdirSync(good)).toEqual(before);
  });
});

describe('watch', () => {
  it('says that nothing moves, names the cycles that ran after a failed test, and exits 10 for these', async () => {
    const { code, out, err } = await runProgram('watch', good);
    expect([code, err]).toEqual([10, '']);
    expect(out).toMatch(
      /^To 2025-03-31: nothing moves.*\nOne: 4 cycles of this month ran after the failed test/,
    );
  });

  it('exits 10 and names the unit where a probe of the demo moves', async () => {
    const demo = fileURLToPath(new URL('../../data-samples', import.meta.url));
    const { code, out } = await runProgram('watch', demo, '--json');
    expect(code).toBe(10);
    const { to, moving } = JSON.parse(out);
    expect(to).toBe('2026-09-30');
    // Q4's evacuation time was made to rise from seven weeks before the end: data-samples/README.md.
    expect(moving.map((of: { unit: string; probe: string }) => `${of.unit} ${of.probe}`)).toContain(
      'Q4 evacuation_time',
    );
  });
});
