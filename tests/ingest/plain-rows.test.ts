import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalReader } from '../../pipeline/ingest/codecs/decimal.ts';
import type { FileColumns } from '../../pipeline/ingest/file-columns.ts';
import { CutRow } from '../../pipeline/ingest/plain-rows/cut-row.ts';
import { openInputs, readJob, readJobs } from '../../pipeline/ingest/read-jobs.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { SiteFileInput } from '../../pipeline/site/site-schema.ts';
import { BERLIN, cyclesFrom, HEADER, ROW, withFolder } from './read-folder.ts';

type Way = 'plain rows where they stand' | 'row by row';
const WAYS: readonly Way[] = ['plain rows where they stand', 'row by row'];

/** What becomes of each file of a folder. Who watches rows sees each of them, so that none is read where it stands. */
async function readBoth(
  site: string,
  folder: string,
  pieces?: (bytes: Uint8Array) => Uint8Array[],
): Promise<Record<Way, FileColumns[]>> {
  const read = async (way: Way): Promise<FileColumns[]> => {
    const inputs = await openInputs(readSiteFile(site, 'site.yaml'), folder, {
      ignore: [path.join(folder, 'site.yaml')],
      ...(pieces && {
        open: async function* (file) {
          yield* pieces(readFileSync(file));
        },
      }),
    });
    const columns: FileColumns[] = [];
    for (const source of inputs.readers.keys())
      for (const job of await readJobs(inputs, source))
        columns.push(await readJob(inputs, job, way === 'row by row' ? { watch: () => {} } : {}));
    return columns;
  };
  const [plain, each] = WAYS;
  return { [plain!]: await read(plain!), [each!]: await read(each!) } as Record<Way, FileColumns[]>;
}

const isSame = (both: Record<Way, FileColumns[]>): void =>
  expect(both['plain rows where they stand']).toEqual(both['row by row']);

describe('rows that are read where they stand give the same records, problems and counts', () => {
  const folders = [
    'data-samples',
    ...readdirSync('tests/runs', { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => `tests/runs/${name}/input`),
    'tests/main-job/fleet-a',
    'tests/main-job/fleet-b',
  ];
  it.each(folders)('of the files in %s', async (folder) => {
    const own = path.join(folder, 'site.yaml');
    const site = readdirSync(folder).includes('site.yaml')
      ? readFileSync(own, 'utf8')
      : JSON.stringify(BERLIN);
    const both = await readBoth(site, folder);
    expect(both['row by row'].reduce((sum, { count }) => sum + count, 0)).toBeGreaterThan(0);
    isSame(both);
  });

  /** Cells that are as they should be, and all that a hand, a spreadsheet or a broken unit may put in their place. */
  const odd = fc.constantFrom(
    '',
    ' ',
    '-',
    '–',
    '\u00a0',
    '\ufeff',
    '\u0000',
    '"',
    '""',
    '"a"b',
    ' "x"',
    '"x" ',
    '"a,b"',
    '"a;b"',
    '"a\nb"',
    'a\rb',
    'ß',
    '\u00a0ß\u00a0',
    '\ufffd',
    '#',
    '# note',
    'skip me',
    'SKIP ME',
    '"open',
    '1,5',
    '1.234.567',
    '−3',
    '1e3',
    '00012',
    '999999999999999999',
    'unit',
    'start',
  );
  const time = fc.oneof(
    fc
      .integer({ min: Date.UTC(2025, 2, 29, 22) / 60_000, max: Date.UTC(2025, 2, 30, 6) / 60_000 })
      .map((minutes) => new Date(minutes * 60_000).toISOString().slice(0, 19).replace('T', ' ')),
    fc
      .integer({ min: Date.UTC(2025, 9, 25, 22) / 60_000, max: Date.UTC(2025, 9, 26, 6) / 60_000 })
      .map((minutes) => new Date(minutes * 60_000).toISOString().slice(0, 16).replace('T', ' ')),
    fc.constantFrom(
      '2025-10-26',
      '2025-02-30 06:00:00',
      '2025-03-03T06:30:00Z',
      '1999-01-01 00:00',
      '3.3.2025',
    ),
  );
  const usual = fc.tuple(
    fc.constantFrom('S1', 'S1', 'Gerät 2', ' S1 ', 'U-3'),
    time,
    time,
    fc.constantFrom('production', 'production', 'warm up', 'LIQUIDS', 'Produktion'),
    fc.constantFrom('completed', 'completed', 'aborted', 'Übung'),
    fc.integer({ min: 0, max: 99_999 }).map(String),
    fc.oneof(
      fc.integer({ min: 0, max: 90_000 }).map(String),
      fc.constantFrom('12.5', '12,5', '.5', '5.', '+7'),
    ),
    fc.constantFrom('', '', 'Door, locked', 'Tür „offen“', 'a long text that is more than a few characters'),
    fc.constantFrom('', '', '06:30:00'),
  );
  const amiss = fc.tuple(usual, fc.nat(8), odd).map(([cells, at, cell]) => cells.with(at, cell));
  const misshapen = fc
    .tuple(usual, fc.constantFrom(0, 1, 6, 8, 10, 11))
    .map(([cells, width]) => [...cells, '', 'x'].slice(0, width));
  const row = fc.oneof(
    { weight: 6, arbitrary: usual },
    { weight: 2, arbitrary: amiss },
    { weight: 1, arbitrary: misshapen },
  );
  const sites: SiteFileInput[] = [
    BERLIN,
    cyclesFrom({
      columns: {
        unit: 'unit',
        start: ['start', 'clock'],
        kind: 'kind',
        outcome: 'outcome',
        heat_up_s: 'heat_up_s',
      },
      comment: '#',
      skip: { kind: ['skip me'], abort_text: ['ß', ''] },
      decimal_mark: ',',
      values: { kind: { production: ['Produktion'], liquids: ['–', '1,5'] } },
    }),
    cyclesFrom(
      { encoding: 'windows-1252', values: { outcome: { completed: ['ß'] } } },
      { units: [{ id: 'S1' }, { id: 'U-3', aliases: [{ name: 'Gerät 2' }] }] },
    ),
    cyclesFrom({
      columns: {
        unit: { always: ' S1 ' },
        start: { column: 'start', dates: 'dd.MM.yyyy HH:mm | yyyy-MM-dd HH:mm:ss' },
        kind: 'kind',
        outcome: 'outcome',
        heat_up_s: { column: 'heat_up_s', measure: 'min' },
      },
    }),
  ];

  it('of any rows, delimiters, line ends, encodings and pieces', async () => {
    let records = 0;
    await withFolder({ 'cycles.csv': '' }, async (folder) => {
      await fc.assert(
        fc.asyncProperty(
          fc.array(row, { maxLength: 60, size: 'max' }),
          fc.constantFrom(',', ';', '\t'),
          fc.constantFrom('\n', '\r\n', '\r'),
          fc.constantFrom('', '\n', '\r\n'),
          fc.constantFrom(...sites),
          fc.constantFrom('utf8', 'latin1', 'utf16le'),
          fc.constantFrom(1, 7, 100, 4096, 1 << 20),
          fc.boolean(),
          async (rows, delimiter, lineEnd, last, site, encoding, size, isQuoted) => {
            const quote = (cell: string) => (isQuoted ? `"${cell.replaceAll('"', '')}"` : cell);
            const lines = [[...HEADER.split(','), 'clock'], ...rows].map((cells) =>
              cells.map(quote).join(delimiter),
            );
            const mark = encoding === 'utf16le' ? '\ufeff' : '';
            const bytes = Buffer.from(mark + lines.join(lineEnd) + last, encoding as BufferEncoding);
            const cut = (whole: Uint8Array): Uint8Array[] => {
              const pieces: Uint8Array[] = [];
              for (let at = 0; at < whole.length; at += size) pieces.push(whole.subarray(at, at + size));
              return pieces;
            };
            const both = await readBoth(JSON.stringify(site), folder, () => cut(bytes));
            records += both['row by row'].reduce((sum, { count }) => sum + count, 0);
            isSame(both);
          },
        ),
        { numRuns: 400 },
      );
    });
    expect(records).toBeGreaterThan(1000);
  });
});

describe('a row that is cut where it stands', () => {
  /** The cells, or undefined where the row isn't plain. */
  const cellsOf = (line: string, width: number, delimiter = ','): string[] | undefined => {
    const cut = new CutRow(width, delimiter);
    const text = `before\n${line}\nafter`;
    if (!cut.cut(text, 7, 7 + line.length, true)) return undefined;
    return Array.from({ length: width }, (_, cell) => cut.charactersOf([cell]));
  };

  it('has the cells that csv-parse finds in it, if it is cut at all', () => {
    const piece = fc.constantFrom('a', 'b c', ' ', '"', ',', ';', '\t', '12.5', '""', '\u0000');
    let plain = 0;
    fc.assert(
      fc.property(
        fc.array(
          fc.array(piece, { maxLength: 3 }).map((parts) => parts.join('')),
          { minLength: 1, maxLength: 5 },
        ),
        fc.constantFrom(',', ';', '\t'),
        (cells, delimiter) => {
          const line = cells.join(delimiter);
          for (let width = 1; width <= 8; width++) {
            const found = cellsOf(line, width, delimiter);
            if (!found) continue;
            plain++;
            const options = { delimiter, ltrim: delimiter !== '\t', rtrim: delimiter !== '\t' };
            const expected =
              line.trim() === '' && !line.includes(delimiter)
                ? ['']
                : (parse(line, options)[0] as unknown as string[]);
            expect(found).toEqual(expected.map((cell) => cell.trim()));
          }
        },
      ),
      { numRuns: 5000 },
    );
    expect(plain).toBeGreaterThan(500);
  });

  it.each([
    ['the usual row', 'S1,2025-03-03 06:30:00,, 12 ', ['S1', '2025-03-03 06:30:00', '', '12']],
    ['cells in quotes', '"S1","a, b",c,""', ['S1', 'a, b', 'c', '']],
    ['a cell too few', 'a,b,c', undefined],
    ['a cell too many', 'a,b,c,d,e', undefined],
    ['a quote inside a cell', 'a,b"c,d,e', undefined],
    ['a doubled quote', '"a""b",c,d,e', undefined],
    ['an open quote', 'a,b,c,"d', undefined],
    ['text behind a quote', '"a" ,b,c,d', undefined],
    ['a NUL byte', 'a,b,c,\0', undefined],
  ])('%s', (_, line, cells) => expect(cellsOf(line, 4)).toEqual(cells));
});

describe('plain rows', () => {
  /** Rows that the reader of rows saw, of a file with so many rows of each line. */
  async function leftOver(lines: readonly string[], times: number): Promise<number> {
    const { RowSplitter } = await import('../../pipeline/ingest/split-rows.ts');
    const text = [HEADER, ...Array.from({ length: times }, () => lines).flat()].join('\n');
    const push = RowSplitter.prototype.push;
    let seen = 0;
    RowSplitter.prototype.push = function (more, final) {
      const rows = push.call(this, more, final);
      seen += rows.length;
      return rows;
    };
    try {
      await withFolder({ 'cycles.csv': `${text}\n` }, async (folder) => {
        const inputs = await openInputs(readSiteFile(JSON.stringify(BERLIN), 'site.yaml'), folder, {});
        const [job] = await readJobs(inputs, 0);
        const { read, count } = await readJob(inputs, job!);
        expect(read.rows).toBe(times * lines.length);
        expect(count).toBeGreaterThan(0);
      });
    } finally {
      RowSplitter.prototype.push = push;
    }
    return seen;
  }

  it('are nearly all rows of a usual file, with umlauts too', async () => {
    const umlauts = ROW.replace('S1', 'Gerät 1');
    expect(await leftOver([ROW, `${ROW}"Door, locked"`, umlauts], 1000)).toBeLessThan(600);
  });

  it('are left to the reader of rows where something is amiss', async () => {
    expect(await leftOver([ROW, ROW.replace('2025-03-03 07', '2025-03-02 07')], 1000)).toBeGreaterThan(1000);
  });
});

describe('a decimal number', () => {
  it('is the number that JavaScript reads from the same text (ECMA-262, StringToNumber)', () => {
    const read = decimalReader('.');
    fc.assert(
      fc.property(
        fc.stringMatching(/^\d{1,9}(\.\d{0,9})?$/),
        fc.constantFrom('', 'x,', '99'),
        (text, before) => {
          expect(read(before + text, before.length)).toBe(Number(text));
        },
      ),
      { numRuns: 5000 },
    );
  });
});
