// Over 300 lines: every oddity of workbooks, one case each.
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { WORKBOOK_LIMITS } from '../../pipeline/ingest/unpack-workbook.ts';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { BERLIN, brief, cyclesFrom, HEADER, ROW, readFiles, utc } from './read-folder.ts';
import { type TestCell, workbook } from './workbook.ts';

const COLUMNS = ['unit', 'start', 'end', 'kind', 'outcome', 'cycle_number', 'heat_up_s', 'abort_text'];
const shown = (text: string): Date => new Date(`${text}Z`);
const row = (number: number, start: TestCell = shown('2025-03-03T06:30')): TestCell[] => [
  'S1',
  start,
  shown('2025-03-03T07:00'),
  'production',
  'completed',
  number,
  95.5,
  null,
];
const read = async (rows: TestCell[][], site?: SiteFileInput) =>
  readFiles({ 'cycles.xlsx': await workbook([{ name: 'Log', rows }]) }, site);

/** Changes the parts of a workbook, as no spreadsheet program would. */
async function tampered(change: (parts: Record<string, string>) => void): Promise<Uint8Array> {
  const parts = unzipSync(await workbook([{ name: 'Log', rows: [COLUMNS, row(1), row(2)] }]));
  const texts = Object.fromEntries(
    Object.entries(parts).map(([name, part]) => [name, Buffer.from(part).toString('utf8')]),
  );
  change(texts);
  return zipSync(Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, strToU8(text)])));
}
const sheetOf = (parts: Record<string, string>): string =>
  Object.keys(parts).find((name) => /sheets\/.*\.xml$/.test(name))!;

describe('a workbook', () => {
  it('gives the same record as delimited text', async () => {
    const { records, problems, files } = await read([['Report of'], [], COLUMNS, row(17)]);
    expect(problems).toEqual([]);
    const fromText = await readFiles({ 'cycles.csv': `${HEADER}\n${ROW.replace('95', '95.5')}\n` });
    const { origin, ...cycle } = records.cycles[0]!;
    const { origin: ofText, ...expected } = fromText.records.cycles[0]!;
    expect(cycle).toEqual(expected);
    expect(origin).toEqual({ ...ofText, file: 'cycles.xlsx', sheet: 'Log', row: 4 });
    expect(files).toMatchObject([{ sheet: 'Log', rows: 1, records: 1, preamble: 1 }]);
  });

  it('is read from the named sheet, letter case aside', async () => {
    const bytes = await workbook([
      { name: 'Notes', rows: [['x']] },
      { name: 'Cycle Log', rows: [COLUMNS, row(17)] },
    ]);
    const site = cyclesFrom({ files: '*.xlsx', sheet: 'cycle  log' });
    expect((await readFiles({ 'cycles.xlsx': bytes }, site)).records.cycles).toMatchObject([
      { origin: { sheet: 'Cycle Log' } },
    ]);
    const { problems } = await readFiles(
      { 'cycles.xlsx': bytes },
      cyclesFrom({ files: '*.xlsx', sheet: 'Log' }),
    );
    expect(problems).toMatchObject([
      { code: 'sheet_not_found', value: 'Log', expected: 'one of the sheets "Notes", "Cycle Log"' },
    ]);
    expect((await readFiles({ 'cycles.xlsx': bytes })).problems.map(brief)).toEqual([
      'header_not_found file 1 ',
    ]);
  });

  it('shows each second of a day as it was written', async () => {
    const starts = Array.from({ length: 400 }, (_, index) => Date.UTC(2025, 2, 3) + index * 211_000);
    const { records } = await read([
      COLUMNS,
      ...starts.map((start, index) => [
        'S1',
        new Date(start),
        null,
        'production',
        'completed',
        index,
        null,
        null,
      ]),
    ]);
    expect(records.cycles.map(({ start }) => start)).toEqual(starts.map((start) => start - 3_600_000));
  });

  it('takes midnight as a time where other cells of the column have a time, else as a date', async () => {
    const midnight = { value: shown('2025-03-03T00:00'), format: 'yyyy-mm-dd' };
    const timed = await read([COLUMNS, row(1, midnight), row(2)]);
    expect(timed.records.cycles.map(({ start, time_mark }) => [start, time_mark])).toEqual([
      [utc('2025-03-02T23:00Z'), 'time'],
      [utc('2025-03-03T05:30Z'), 'time'],
    ]);
    const dated = await read([COLUMNS, row(1, midnight)]);
    expect(dated.records.cycles).toMatchObject([{ start: utc('2025-03-03T03:00Z'), time_mark: 'day' }]);
  });

  it('joins a date cell to a time of day that is text', async () => {
    const bytes = await workbook([
      {
        name: 'Log',
        rows: [
          ['unit', 'date', 'time', 'kind', 'outcome'],
          [3, { value: shown('2025-03-03T00:00'), format: 'dd.mm.yyyy' }, '06:30', 'production', 'completed'],
        ],
      },
    ]);
    const { records, problems } = await readFiles(
      { 'cycles.xlsx': bytes },
      cyclesFrom({ files: '*.xlsx', columns: { start: ['date', 'time'] }, dates: 'yyyy-MM-dd HH:mm' }),
    );
    expect(problems).toEqual([]);
    expect(records.cycles.map(({ start, time_mark }) => [start, time_mark])).toEqual([
      [utc('2025-03-03T05:30Z'), 'time'],
    ]);
  });

  it('adds a time cell to a date cell, and reads lengths of time', async () => {
    const bytes = await workbook([
      {
        name: 'Log',
        rows: [
          ['unit', 'date', 'time', 'kind', 'outcome', 'heat up', 'number', 'ok'],
          [
            3,
            { value: shown('2025-03-03T00:00'), format: 'dd.mm.yyyy' },
            { value: shown('1899-12-30T06:30'), format: 'hh:mm' },
            'production',
            'completed',
            { value: shown('1899-12-30T00:01:35'), format: 'mm:ss' },
            '17',
            true,
          ],
        ],
      },
    ]);
    const { records, problems } = await readFiles(
      { 'cycles.xlsx': bytes },
      cyclesFrom({
        files: '*.xlsx',
        columns: {
          start: ['date', 'time'],
          heat_up_s: { column: 'heat up', measure: 'mm:ss' },
          cycle_number: 'number',
          abort_text: 'ok',
        },
      }),
    );
    expect(problems).toEqual([]);
    expect(records.cycles).toMatchObject([
      { unit: '3', start: utc('2025-03-03T05:30Z'), heat_up_s: 95, cycle_number: 17, abort_text: 'TRUE' },
    ]);
  });

  it('reads yes and no', async () => {
    const bytes = await workbook([
      {
        name: 'A',
        rows: [
          ['unit', 'time', 'appearance', 'residue_after_rinsing'],
          ['S1', '2025-03-03', 2, true],
        ],
      },
    ]);
    const { records } = await readFiles({ 'inspections.xlsx': bytes });
    expect(records.inspections).toMatchObject([
      { appearance: 2, residue_after_rinsing: true, time_mark: 'day' },
    ]);
  });

  it('reads text dates by the pattern, and reports what does not fit', async () => {
    const { records, problems } = await read([
      COLUMNS,
      row(1, '2025-03-03 06:30'),
      row(2, 45_000),
      row(3, true),
      [
        'S1',
        shown('2025-03-03T09:30'),
        null,
        'production',
        'completed',
        4.5,
        shown('2025-03-03T00:00'),
        null,
      ],
    ]);
    expect(records.cycles).toHaveLength(2);
    expect(problems.map(brief)).toEqual([
      'bad_time row 3 start',
      'bad_time row 4 start',
      'bad_number cell 5 cycle_number',
      'bad_number cell 5 heat_up_s',
    ]);
  });

  it('ignores cells beside the table and keeps text as text', async () => {
    const { records, problems } = await read([
      COLUMNS,
      [...row(1).slice(0, 7), '=HYPERLINK("x") <script>&amp;', 'note beside'],
    ]);
    expect(problems).toEqual([]);
    expect(records.cycles[0]!.abort_text).toBe('=HYPERLINK("x") <script>&amp;');
  });
});

describe('a workbook written by hand', () => {
  it('gives the value stored with a formula, and an error as a bad cell', async () => {
    const bytes = await tampered((parts) => {
      const name = sheetOf(parts);
      parts[name] = parts[name]!.replace(/(<c r="G2"[^>]*>)<v>[^<]*<\/v>/, '$1<f>1+1</f><v>42</v>').replace(
        /<c r="G3"[^>]*>.*?<\/c>/,
        '<c r="G3" t="e"><f>1/0</f><v>#DIV/0!</v></c>',
      );
    });
    const { records, problems } = await readFiles({ 'cycles.xlsx': bytes });
    expect(records.cycles.map(({ heat_up_s }) => heat_up_s)).toEqual([42, undefined]);
    expect(problems).toMatchObject([{ code: 'bad_number', row: 3, value: '#DIV/0!', column: 'heat_up_s' }]);
  });

  it('may count its dates from 1904', async () => {
    const bytes = await tampered((parts) => {
      parts['xl/workbook.xml'] = parts['xl/workbook.xml']!.replace(/<workbookPr[^>]*\/>/g, '').replace(
        /(<workbook[^>]*>)/,
        '$1<workbookPr date1904="1"/>',
      );
    });
    const { records } = await readFiles({ 'cycles.xlsx': bytes });
    // The two systems differ by 1462 days (ECMA-376 part 1, 18.17.4.1).
    expect(records.cycles[0]!.start - utc('2025-03-03T05:30Z')).toBe(1462 * 86_400_000);
  });

  it('does not expand entities', async () => {
    const bytes = await tampered((parts) => {
      const name = sheetOf(parts);
      const levels = Array.from(
        { length: 20 },
        (_, at) => `<!ENTITY e${at + 1} "${`&e${at};`.repeat(10)}">`,
      ).join('');
      const declared = `<!DOCTYPE x [<!ENTITY e0 "boom"><!ENTITY file SYSTEM "file:///etc/hostname">${levels}]>`;
      const bomb = '<c r="H2" t="inlineStr"><is><t>&e20;&file;</t></is></c></row>';
      parts[name] = parts[name]!.replace('<row r="2"', '<row r="2" x="x"')
        .replace(/(<row r="2".*?)<\/row>/, `$1${bomb}`)
        .replace(/^<\?xml[^>]*\?>/, (head) => `${head}${declared}`);
      expect(parts[name]).toContain(bomb);
      expect(parts[name]).toContain(declared);
    });
    const { records, problems } = await readFiles({ 'cycles.xlsx': bytes });
    expect(problems).toEqual([]);
    expect(records.cycles.map(({ abort_text }) => abort_text)).toEqual(['&e20;&file;', undefined]);
  });

  it.each([
    ['a row far down', 'r="2000000000"'],
    ['a row below the last of spreadsheets', `r="${WORKBOOK_LIMITS.rows + 1}"`],
  ])('is refused for %s', async (_, place) => {
    const bytes = await tampered((parts) => {
      const name = sheetOf(parts);
      parts[name] = parts[name]!.replace(/<row r="3"/, `<row ${place}`);
    });
    const { problems } = await readFiles({ 'cycles.xlsx': bytes });
    expect(problems).toMatchObject([
      { code: 'unreadable_file', expected: expect.stringContaining('sheets of at most') },
    ]);
  });

  it.each([['XFDXFD3'], ['ZZZ3'], ["A3' x='"], ['&#65;3'], ['\u00c43']])(
    'is refused for a cell at %s',
    async (place) => {
      const bytes = await tampered((parts) => {
        const name = sheetOf(parts);
        parts[name] = parts[name]!.replace(/r="A3"/, `r="${place}"`);
      });
      const { problems, records } = await readFiles({ 'cycles.xlsx': bytes });
      expect(problems.map(({ code }) => code)).toEqual(['unreadable_file']);
      expect(records.cycles).toEqual([]);
    },
  );

  it('is refused for too many cells between its corners', async () => {
    const bytes = await tampered((parts) => {
      const name = sheetOf(parts);
      parts[name] = parts[name]!.replace(/<row r="3"/, '<row r="1000000"')
        .replaceAll(/r="([A-Z])3"/g, 'r="$11000000"')
        .replace('r="H2"', 'r="ALL2"')
        .replace('r="G2"', 'r="ALK2"');
    });
    const { problems } = await readFiles({ 'cycles.xlsx': bytes });
    expect(problems).toMatchObject([{ code: 'unreadable_file', expected: expect.stringContaining('cells') }]);
  });
});

/** The archive with another unpacked size in each entry of its central directory (APPNOTE.TXT of the ZIP format, 4.3.12). */
function declaring(archive: Uint8Array, size: number): Uint8Array {
  const bytes = Buffer.from(archive);
  for (let at = bytes.indexOf('PK\x01\x02'); at >= 0; at = bytes.indexOf('PK\x01\x02', at + 4))
    bytes.writeUInt32LE(size, at + 24);
  return bytes;
}

describe('an archive made to harm', () => {
  const refused = async (bytes: Uint8Array): Promise<string> => {
    const { problems, records } = await readFiles({ 'cycles.xlsx': bytes }, BERLIN);
    expect(records.cycles).toEqual([]);
    expect(problems.map(({ code }) => code)).toEqual(['unreadable_file']);
    return problems[0]!.expected;
  };

  it('is refused for a part that unpacks too far', async () => {
    const bytes = zipSync({ 'xl/workbook.xml': new Uint8Array(50_000_000) }, { level: 9 });
    expect(bytes.length).toBeLessThan(100_000);
    expect(await refused(bytes)).toContain(`at most ${WORKBOOK_LIMITS.ratio} times`);
  });

  it('is refused for many parts that unpack too far together', async () => {
    const parts = Object.fromEntries(
      Array.from({ length: 300 }, (_, at) => [`xl/p${at}.xml`, strToU8('<x/>')]),
    );
    expect(await refused(declaring(zipSync(parts), 1_000_000))).toContain('unpacked');
  });

  it('is refused for too many parts', async () => {
    const parts = Object.fromEntries(
      Array.from({ length: WORKBOOK_LIMITS.parts + 1 }, (_, at) => [`p${at}`, new Uint8Array()]),
    );
    expect(await refused(zipSync(parts))).toContain('parts');
  });

  it('does not fill memory when it lies about sizes', async () => {
    const honest = Buffer.from(await workbook([{ name: 'Log', rows: [COLUMNS, row(1)] }]));
    for (const size of [0, 1, 0x7fffffff, 0xffffffff]) await refused(declaring(honest, size));
  });

  it('is refused when it is cut, no workbook, or of an older format', async () => {
    const honest = await workbook([{ name: 'Log', rows: [COLUMNS, row(1)] }]);
    for (const length of [4, 30, 100, honest.length >> 1, honest.length - 1])
      await refused(honest.subarray(0, length));
    expect(await refused(Buffer.from('d0cf11e0a1b11ae1', 'hex'))).toContain('without a password');
    await refused(zipSync({ 'a.txt': strToU8('x') }));
    await refused(zipSync({ 'xl/workbook.xml': strToU8('<workbook/>') }));
  });
});
