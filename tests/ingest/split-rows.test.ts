import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RawRow } from '../../pipeline/ingest/cell.ts';
import { LineSplitter, LongLine, MAX_ROW_LENGTH } from '../../pipeline/ingest/split-lines.ts';
import { MAX_ROW_LINES, RowSplitter } from '../../pipeline/ingest/split-rows.ts';

/** Cuts a text into rows, handed over in pieces. */
function rowsOf(text: string, { delimiter = ',', piece = Math.max(1, text.length) } = {}): RawRow[] {
  const lines = new LineSplitter();
  const rows = new RowSplitter(delimiter, () => false);
  const found: RawRow[] = [];
  for (let at = 0; at < text.length; at += piece)
    found.push(...rows.push(lines.push(text.slice(at, at + piece)), false));
  return [...found, ...rows.push(lines.end(), true)];
}
const cellsOf = (...args: Parameters<typeof rowsOf>) =>
  rowsOf(...args).map(({ row, cells, fault }) => (fault ? `${row} ${fault.code}` : [row, ...cells]));

describe('lines', () => {
  const linesOf = (...pieces: string[]) => {
    const splitter = new LineSplitter();
    const lines = [...pieces.flatMap((piece) => splitter.push(piece)), ...splitter.end()];
    return { lines, terminated: splitter.terminated };
  };

  it('end with LF, CRLF or CR alone', () => {
    expect(linesOf('a\nb\n').lines).toEqual(['a', 'b']);
    expect(linesOf('a\r\nb\r\n').lines).toEqual(['a', 'b']);
    expect(linesOf('a\rb\r').lines).toEqual(['a', 'b']);
    expect(linesOf('a\r', '\nb\r', '\n').lines).toEqual(['a', 'b']);
    expect(linesOf('a\r', 'b').lines).toEqual(['a', 'b']);
    expect(linesOf('a\n\nb').lines).toEqual(['a', '', 'b']);
  });

  it('tell whether the last one is ended', () => {
    expect(linesOf('a\nb\n').terminated).toBe(true);
    expect(linesOf('a\nb').terminated).toBe(false);
    expect(linesOf('').terminated).toBe(true);
  });

  it('are let go beyond the limit, and the next ones are read', () => {
    const piece = 'x'.repeat(300_000);
    const { lines } = linesOf('a\n', ...Array(30).fill(piece), 'end\nb\n', `${piece.repeat(4)}\nc`);
    expect(lines.map((line) => (line instanceof LongLine ? line.beginning.length : line))).toEqual([
      'a',
      200,
      'b',
      200,
      'c',
    ]);
  });

  it('of exactly the limit are kept', () => {
    expect(linesOf(`${'x'.repeat(MAX_ROW_LENGTH)}\n`).lines[0]).toHaveLength(MAX_ROW_LENGTH);
  });
});

describe('rows of well-formed text', () => {
  // csv-spectrum: acid tests for readers of comma-separated text (RFC 4180), each with the expected objects as JSON.
  const folder = path.dirname(createRequire(import.meta.url).resolve('csv-spectrum/package.json'));
  const names = readdirSync(path.join(folder, 'csvs')).map((name) => path.parse(name).name);

  it('finds the acid tests', () => expect(names.length).toBeGreaterThanOrEqual(11));

  it.each(names)('csv-spectrum %s', (name) => {
    const text = readFileSync(path.join(folder, 'csvs', `${name}.csv`), 'utf8');
    // Line breaks inside cells are handed on as LF.
    const json = readFileSync(path.join(folder, 'json', `${name}.json`), 'utf8').replaceAll('\\r\\n', '\\n');
    const expected = [JSON.parse(json)].flat() as Record<string, string>[];
    // The package's own expectation of this table has another telephone number than the table.
    if (name === 'location_coordinates') expected[0]!['Contact Phone Number'] = '2095257564';
    for (const piece of [1, 7, text.length]) {
      const [header, ...rows] = rowsOf(text, { piece });
      const objects = rows.map(({ cells }) =>
        Object.fromEntries(header!.cells.map((head, at) => [head, cells[at]])),
      );
      expect(objects).toEqual(expected);
    }
  });

  it('cuts as csv-parse does, however the text is cut into pieces', () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 6 }),
      fc.stringMatching(/^[",;\na ]{0,5}$/),
      fc.constant(''),
    );
    const quote = (text: string): string =>
      /[",\r\n]/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text;
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 40 }),
        (table, piece) => {
          const clean = table.map((row) => row.map((text) => text.replaceAll(/[\r\0]/g, '')));
          const text = clean.map((row) => row.map(quote).join(',')).join('\n');
          const rows = rowsOf(`${text}\n`, { piece }).map(({ cells }) => cells);
          expect(rows).toEqual(clean);
          expect(parse(`${text}\n`, { record_delimiter: '\n', relax_column_count: true })).toEqual(clean);
        },
      ),
      { seed: 1, numRuns: 300 },
    );
  });

  it('numbers rows by the line on which they start', () => {
    expect(cellsOf('a,b\n\n"x\ny",1\nc,d\n')).toEqual([
      [1, 'a', 'b'],
      [2, ''],
      [3, 'x\ny', '1'],
      [5, 'c', 'd'],
    ]);
  });

  it('reads quotes after blanks, and tabs as delimiters', () => {
    expect(cellsOf('a, "b,c" ,d')).toEqual([[1, 'a', 'b,c', 'd']]);
    expect(cellsOf('a\t"b\tc"\t\td', { delimiter: '\t' })).toEqual([[1, 'a', 'b\tc', '', 'd']]);
  });

  it('takes a quote inside a cell that is not quoted as text', () => {
    expect(cellsOf('a,5" pipe,c\nd,e,f')).toEqual([
      [1, 'a', '5" pipe', 'c'],
      [2, 'd', 'e', 'f'],
    ]);
  });
});

describe('rows of broken text', () => {
  it('loses the row with text behind a closing quote, and no other', () => {
    expect(cellsOf('a,b\n"x"y,1\n"c",d\ne,f')).toEqual([
      [1, 'a', 'b'],
      '2 quote',
      [3, 'c', 'd'],
      [4, 'e', 'f'],
    ]);
  });

  it('loses the row whose quote is never closed, and no other', () => {
    expect(cellsOf('a,b\n1,"x\nc,d\n"e",f\ng,h')).toEqual([
      [1, 'a', 'b'],
      '2 quote',
      [3, 'c', 'd'],
      [4, 'e', 'f'],
      [5, 'g', 'h'],
    ]);
    expect(cellsOf('a,b\n1,"x')).toEqual([[1, 'a', 'b'], '2 quote']);
  });

  it('gives up a quote that stays open over too many lines', () => {
    const many = Array.from({ length: MAX_ROW_LINES + 50 }, (_, index) => `${index},x`);
    const rows = cellsOf(`a,"open\n${many.join('\n')}\n`, { piece: 100 });
    expect(rows[0]).toBe('1 quote');
    expect(rows).toHaveLength(many.length + 1);
    expect(rows.at(-1)).toEqual([many.length + 1, String(many.length - 1), 'x']);
  });

  it('rejects rows with NUL bytes', () => {
    expect(cellsOf('a,b\n\0\0\0,1\nc,"d\0"\ne,f')).toEqual([
      [1, 'a', 'b'],
      '2 nul_byte',
      '3 nul_byte',
      [4, 'e', 'f'],
    ]);
  });

  it('rejects rows that are too long and goes on', () => {
    expect(cellsOf(`a,b\n${'x'.repeat(MAX_ROW_LENGTH + 1)},1\nc,d\n`)).toEqual([
      [1, 'a', 'b'],
      '2 too_long',
      [3, 'c', 'd'],
    ]);
  });

  it('reads thousands of quoted rows around one broken row', () => {
    const lines = Array.from({ length: 3000 }, (_, index) => `"${index}","x, y"`);
    lines[1234] = '"1234"z,"x"';
    const rows = rowsOf(lines.join('\n'), { piece: 5000 });
    expect(rows.map(({ row }) => row)).toEqual(lines.map((_, index) => index + 1));
    expect(rows.filter(({ fault }) => fault).map(({ row }) => row)).toEqual([1235]);
    expect(rows[2999]!.cells).toEqual(['2999', 'x, y']);
  });
});
