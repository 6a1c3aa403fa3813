import { readSheet } from 'read-excel-file/node';
import { expect, test } from 'vitest';
import { utf8WithMark, windows1252, workbook } from '../../data-samples/generator/encode.ts';
import { delimitedText, row, type Table } from '../../data-samples/generator/table.ts';

const table = (rows: Table['rows']): Table => ({
  file: 'a.csv',
  source: 'a',
  preamble: ['above'],
  header: ['x', 'y'],
  rows,
});

// Bytes by the table of the Unicode Consortium, MAPPINGS/VENDORS/MICSFT/WINDOWS/CP1252.TXT. (TextDecoder of Node 20 reads windows-1252 as
// ISO 8859-1, so that it can't be the judge here.)
test('windows-1252 gives the bytes of the published table', () => {
  expect([...windows1252('é°’œ–€‘')]).toEqual([0xe9, 0xb0, 0x92, 0x9c, 0x96, 0x80, 0x91]);
});

test('a character that windows-1252 has not is refused', () => {
  expect(() => windows1252('Ω')).toThrow('Windows-1252');
});

test('UTF-8 starts with the byte order mark', () => {
  expect([...utf8WithMark('a')]).toEqual([0xef, 0xbb, 0xbf, 0x61]);
});

test('delimited text quotes what must be quoted and leaves raw lines as they are', () => {
  const rows = [row(['1,5', 'say "no"'], 'a', 0), row(['2', null], 'b', 0), row(['cut;short'], 'c', 0)];
  expect(delimitedText(table(rows), ',', '\n')).toBe('above\nx,y\n"1,5","say ""no"""\n2,\ncut;short\n');
});

test('the workbook holds typed dates', async () => {
  const date = new Date(Date.UTC(2025, 10, 2, 1, 35));
  const bytes = await workbook(table([row(['Q3', date], 'a', 0)]), 'Sheet', [10, 20]);
  const [above, header, cells] = await readSheet(Buffer.from(bytes), 'Sheet');
  expect([above, header]).toEqual([
    ['above', null],
    ['x', 'y'],
  ]);
  expect(cells![0]).toBe('Q3');
  // A workbook holds days as floating-point numbers; a millisecond may be lost on the way.
  expect(Math.abs((cells![1] as unknown as Date).getTime() - date.getTime())).toBeLessThanOrEqual(1);
});
