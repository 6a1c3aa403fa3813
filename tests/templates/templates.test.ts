import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Reading, readRecords, readSite } from '../../pipeline/index.ts';
import { RECORD_SHEETS } from '../../pipeline/templates/record-sheets.ts';
import { templateFiles } from '../../pipeline/templates/write-templates.ts';
import { runProgram } from '../commands/terminal.ts';
import { fillCsv, fillWorkbook, LINES } from './filled-sheets.ts';

const folder = mkdtempSync(join(tmpdir(), 'templates-'));
const blank = (path: string) => readFileSync(join(folder, 'sheets', path));
let written: { code: number; out: string };

beforeAll(async () => {
  written = await runProgram('templates', '--out', join(folder, 'sheets'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A folder of exports that holds all sheets, filled in. */
function exportsOf(name: string, format: 'csv' | 'xlsx'): string {
  const place = join(folder, name);
  mkdirSync(place);
  for (const { kind, file } of RECORD_SHEETS) {
    const bytes = blank(`${format}/${file}.${format}`);
    const filled = format === 'csv' ? fillCsv(bytes.toString(), kind) : fillWorkbook(bytes, kind);
    writeFileSync(join(place, `${file}-2026-09.${format}`), filled);
  }
  return place;
}

const countsOf = ({ records }: Reading) =>
  Object.fromEntries(RECORD_SHEETS.map(({ kind }) => [kind, records[kind].length]));
const EXPECTED = Object.fromEntries(RECORD_SHEETS.map(({ kind }) => [kind, LINES[kind]!.length]));

describe('blank record sheets', () => {
  it('are written, three forms of each, and never over sheets that may be filled in', async () => {
    expect(written.code).toBe(0);
    for (const { file } of RECORD_SHEETS)
      for (const path of [`csv/${file}.csv`, `xlsx/${file}.xlsx`, `print/${file}.html`])
        expect(existsSync(join(folder, 'sheets', path)), path).toBe(true);
    const again = await runProgram('templates', '--out', join(folder, 'sheets'));
    expect([again.code, again.err]).toEqual([1, expect.stringContaining('must not exist yet')]);
  });

  it('have the same bytes each time', async () => {
    for (const { path, content } of await templateFiles())
      expect(Buffer.from(content as Uint8Array).equals(blank(path)), path).toBe(true);
  });

  it('have cells with lists of the words that may stand in them', async () => {
    const { unzipSync, strFromU8 } = await import('fflate');
    const sheet = strFromU8(unzipSync(blank('xlsx/air-removal-tests.xlsx'))['xl/worksheets/sheet1.xml']!);
    expect(sheet).toContain('type="list"');
    expect(sheet).toContain('sqref="C2:C501"><formula1>"pass,fail,invalid"</formula1>');
    const inspections = strFromU8(unzipSync(blank('xlsx/inspections.xlsx'))['xl/worksheets/sheet1.xml']!);
    expect(inspections).toMatch(
      /type="whole" operator="between"[^>]*sqref="C2:C501"><formula1>0<\/formula1><formula2>4<\/formula2>/,
    );
    // Elements of a worksheet stand in a fixed order (ECMA-376 part 1, 18.3.1.99).
    const places = ['<sheetViews', '<cols', '<sheetData', '<dataValidations'].map((tag) =>
      sheet.indexOf(tag),
    );
    expect(places.every((at) => at > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('use each field once and say which are needed', () => {
    for (const { kind, columns } of RECORD_SHEETS) {
      const heads = columns.map(({ head }) => head);
      expect(new Set(heads).size, kind).toBe(heads.length);
      expect(columns.filter(({ required }) => required).length, kind).toBeGreaterThan(0);
      expect(
        columns.some(({ holds }) => holds === 'person'),
        kind,
      ).toBe(false);
    }
  });
});

for (const format of ['csv', 'xlsx'] as const)
  describe(`filled in and typed as ${format}`, () => {
    it('every line is a record with the smallest site file, and the review is made', {
      timeout: 120_000,
    }, async () => {
      const place = exportsOf(`smallest-${format}`, format);
      writeFileSync(join(place, 'site.yaml'), 'sites: [{ zone: Europe/Berlin }]\n');
      const site = await readSite(join(place, 'site.yaml'));
      const reading = await readRecords(site, place);
      expect(reading.problems.filter(({ code }) => code !== 'no_file')).toEqual([]);
      expect(countsOf(reading)).toEqual(EXPECTED);
      expect(reading.records.leak_tests[0]).toMatchObject({
        unit: 'A',
        time: Date.parse('2026-09-01T06:20+02:00'),
        leak_rate_kpa_min: 0.02,
        limit_kpa_min: 0.13,
        cycle_number: 90,
      });
      expect(reading.records.cleanings.find(({ task }) => task === 'chamber')).toMatchObject({
        unit: 'A',
        minutes: 55,
        state: 'done',
        reason: 'routine',
        note: 'scale at the door',
      });
      expect(reading.records.inspections[0]).toMatchObject({
        appearance: 0,
        residue_after_rinsing: true,
        time_mark: 'day',
      });
      expect(reading.records.actions.map(({ state }) => state).sort()).toEqual(['done', 'dropped', 'open']);
      const { code, out } = await runProgram(
        'review',
        place,
        '--month',
        '2026-09',
        '--out',
        join(place, 'reports'),
      );
      expect(code, out).toBe(0);
    });

    it('every line is a record with the site file that learn proposes', { timeout: 120_000 }, async () => {
      const place = exportsOf(`learned-${format}`, format);
      const learned = await runProgram('learn', place, '--yes', '--zone', 'Europe/Berlin');
      expect(learned.code, learned.err).toBe(0);
      const text = readFileSync(join(place, 'site.yaml'), 'utf8');
      expect(text).not.toContain('Open questions');
      const site = await readSite(join(place, 'site.yaml'));
      const reading = await readRecords(site, place);
      expect(reading.problems).toEqual([]);
      expect(countsOf(reading)).toEqual(EXPECTED);
      expect(reading.records.leak_tests[0]).toMatchObject({ leak_rate_kpa_min: 0.02, limit_kpa_min: 0.13 });
      const { code, out } = await runProgram(
        'review',
        place,
        '--month',
        '2026-09',
        '--out',
        join(place, 'reports'),
      );
      expect(code, out).toBe(0);
    });
  });
