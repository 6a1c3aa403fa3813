import { parse } from 'csv-parse/sync';
import { strFromU8, unzipSync } from 'fflate';
import readWorkbook from 'read-excel-file/node';
import { beforeAll, describe, expect, it } from 'vitest';
import { reportContext } from '../../../pipeline/report/page-context.ts';
import { writeReport } from '../../../pipeline/report/report.ts';
import type { ReportFile } from '../../../pipeline/report/report-file.ts';
import type { Cell } from '../../../pipeline/report/tables/csv.ts';
import { TABLE_NAMES } from '../../../pipeline/report/tables/table.ts';
import { sheetTable, workbookFile } from '../../../pipeline/report/tables/workbook.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { fleetInput } from '../fixtures/fleet.ts';
import { HOSTILE, hostileInput } from '../fixtures/hostile.ts';
import { reviewOf } from '../fixtures/review-of.ts';

const bytesOf = (files: readonly ReportFile[]) =>
  files.find((file) => file.path === 'review.xlsx')!.content as Uint8Array;
/** Sheets by name. A time is a fraction of a day, which the reader cuts to whole milliseconds: it is taken to the nearest second. */
const read = async (file: Uint8Array) =>
  new Map(
    (await readWorkbook(Buffer.from(file))).map(({ sheet, data }) => [
      sheet,
      data.map((row) =>
        row.map((cell) => (cell instanceof Date ? new Date(Math.round(cell.getTime() / 1000) * 1000) : cell)),
      ),
    ]),
  );

const context = reportContext(reviewOf(), [], () => [], en);
const made = (columns: string[], rows: Cell[][]) =>
  workbookFile(context, [sheetTable({ name: 'units', columns, rows })]);

let files: ReportFile[];
beforeAll(async () => {
  files = await writeReport(fleetInput(3));
});

/** A cell of the workbook as the CSV has it. */
function asText(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  if (!(cell instanceof Date)) return String(cell);
  const text = cell.toISOString();
  return text.endsWith('T00:00:00.000Z') ? text.slice(0, 10) : text.slice(0, 16).replace('T', ' ');
}

describe('the workbook', () => {
  it('holds each table as its CSV has it, cell by cell', async () => {
    const sheets = await read(bytesOf(files));
    expect([...sheets.keys()]).toEqual(['contents', ...TABLE_NAMES]);
    for (const name of TABLE_NAMES) {
      const csv = parse(String(files.find((file) => file.path === `tables/${name}.csv`)!.content), {
        bom: true,
      }) as string[][];
      const sheet = sheets.get(name)!.map((row) => csv[0]!.map((_, at) => asText(row[at])));
      // Text that begins like a formula is set off by an apostrophe in a CSV, where a cell has no type.
      const plain = csv.map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@])/, '')));
      // Midnight as a wall time reads back as its date.
      expect(
        sheet.map((row) => row.map((cell) => cell.trim())),
        name,
      ).toEqual(plain.map((row) => row.map((cell) => cell.replace(/ 00:00$/, '').trim())));
    }
  });

  it('says of each sheet what it holds and how many rows', async () => {
    const sheets = await read(bytesOf(files));
    const lines = sheets.get('contents')!.slice(5);
    expect(lines.map(([name]) => name)).toEqual([...TABLE_NAMES]);
    for (const [name, what, rows] of lines) {
      expect(what).toBe(en.workbook.table[name as (typeof TABLE_NAMES)[number]]);
      expect(rows, String(name)).toBe(sheets.get(String(name))!.length - 1);
    }
  });

  it('has names of sheets that the format allows', () => {
    // ECMA-376 part 1, 18.2.19: at most 31 characters; [ ] * ? / \ : are not allowed (office programs).
    for (const name of [...TABLE_NAMES, en.workbook.contents]) expect(name).toMatch(/^[^[\]*?/\\:]{1,31}$/);
  });

  it('gives the same bytes each time, whatever the hour', async () => {
    expect(Buffer.compare(bytesOf(files), bytesOf(await writeReport(fleetInput(3))))).toBe(0);
    // Headers of a ZIP in its directory, at its end, and before each entry (APPNOTE 4.3.12, 4.3.16, 4.3.7): signature, later time and date; 1980-01-01 is 0x0021.
    const bytes = Buffer.from(bytesOf(files));
    let at = bytes.readUInt32LE(bytes.length - 22 + 16);
    let entries = 0;
    while (bytes.readUInt32LE(at) === 0x02014b50) {
      const local = bytes.readUInt32LE(at + 42);
      expect(bytes.readUInt32LE(local)).toBe(0x04034b50);
      expect([bytes.readUInt16LE(at + 12), bytes.readUInt16LE(at + 14)]).toEqual([0, 0x21]);
      expect([bytes.readUInt16LE(local + 10), bytes.readUInt16LE(local + 12)]).toEqual([0, 0x21]);
      at += 46 + bytes.readUInt16LE(at + 28) + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
      entries++;
    }
    expect(entries).toBeGreaterThan(TABLE_NAMES.length);
  });

  it('keeps headers in sight, and selects its first sheet alone', async () => {
    const entries = unzipSync(bytesOf(files));
    const sheets = Object.entries(entries).filter(([path]) => /worksheets\/sheet\d+\.xml$/.test(path));
    expect(sheets).toHaveLength(TABLE_NAMES.length + 1);
    for (const [path, content] of sheets) {
      const xml = strFromU8(content);
      expect(xml, path).toMatch(/<pane ySplit="[15]"[^>]*state="frozen"/);
      expect(xml, path).toMatch(/<col min="1" max="1" width="\d+"/);
      expect(xml.includes('tabSelected="1"'), path).toBe(path.endsWith('/sheet1.xml'));
    }
  });
});

describe('cells of the workbook', () => {
  const xmlOf = (file: Uint8Array, path = 'xl/worksheets/sheet2.xml') => strFromU8(unzipSync(file)[path]!);

  it('are text where text begins like a formula', async () => {
    const texts = ['=1+1', '+1', '-2+3', '@SUM(A1)', '=HYPERLINK("http://x","y")', '\t=1', '＝1'];
    const file = await made(
      ['name'],
      texts.map((text) => [text]),
    );
    expect(xmlOf(file)).not.toMatch(/<f[ >/]|t="str"/);
    const cells = [...xmlOf(file).matchAll(/<c r="A\d+"([^>]*)>/g)].map((match) => match[1]);
    expect(cells.every((attributes) => attributes!.includes('t="s"'))).toBe(true);
    const rows = (await read(file)).get('units')!;
    expect(rows.slice(1).map(([cell]) => String(cell).trim())).toEqual(texts.map((text) => text.trim()));
  });

  it('are of the kind of their values', async () => {
    const file = await made(
      ['date', 'time', 'number', 'yes_no', 'month', 'mixed'],
      [
        ['2026-03-01', '2026-03-01 06:30', 1.5, true, '2026-03', '2026-03-01'],
        [null, null, -2, false, '2026-02', 'later'],
      ],
    );
    const [, first, second] = (await read(file)).get('units')!;
    expect(first).toEqual([
      new Date('2026-03-01T00:00:00Z'),
      new Date('2026-03-01T06:30:00Z'),
      1.5,
      true,
      '2026-03',
      '2026-03-01',
    ]);
    expect(second).toEqual([null, null, -2, false, '2026-02', 'later']);
    // Days are numbers of the format: 2026-03-01 is day 46082 (days since 1899-12-30, ECMA-376 part 1, 18.17.4.1).
    expect(xmlOf(file)).toContain('<v>46082</v>');
    expect(xmlOf(file, 'xl/styles.xml')).toContain('yyyy-mm-dd');
  });

  it('are empty where a number is none, and text where a date is of no calendar', async () => {
    const rows = (await read(await made(['n', 'd'], [[Number.NaN, '2026-02-30']]))).get('units')!;
    expect(rows[1]).toEqual([null, '2026-02-30']);
  });

  it('cut a table that is too long, and say so', async () => {
    const rows = Array.from({ length: 10_003 }, (_, index): Cell[] => [index]);
    const sheets = await read(await made(['n'], rows));
    expect(sheets.get('units')).toHaveLength(10_001);
    expect(String(sheets.get('contents')!.at(-1)![1])).toContain(
      'Only the first 10,000 of 10,003 rows; all of them are in tables/units.csv.',
    );
  });

  it('hold hostile text as it stands', async () => {
    const file = bytesOf(await writeReport(hostileInput()));
    const entries = unzipSync(file);
    for (const [path, content] of Object.entries(entries))
      if (path.includes('worksheets')) expect(strFromU8(content), path).not.toMatch(/<f[ >/]|t="str"/);
    const units = (await read(file)).get('units')!;
    expect(String(units[1]![0]).replaceAll('\ufffd', '')).toContain(HOSTILE.slice(0, 60));
  });
});
