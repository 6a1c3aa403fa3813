import { unzipSync, zipSync } from 'fflate';
import writeXlsxFile from 'write-excel-file/node';
import type { CellValue, Table } from './table.ts';

const BYTE_ORDER_MARK = '\uFEFF';

export const utf8WithMark = (text: string): Uint8Array => new TextEncoder().encode(BYTE_ORDER_MARK + text);
export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The characters of Windows-1252 that Latin-1 has not and the exports use (WHATWG encoding table of windows-1252). */
const ABOVE = new Map([
  ['€', 0x80],
  ['‘', 0x91],
  ['’', 0x92],
  ['–', 0x96],
  ['œ', 0x9c],
]);

export function windows1252(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => {
    const code = ABOVE.get(character) ?? character.charCodeAt(0);
    if (code > 0xff) throw new Error(`no byte of Windows-1252 for "${character}"`);
    return code;
  });
}

/** The table as a workbook of one sheet; dates become typed cells. The same rows give the same bytes. */
export async function workbook(table: Table, sheet: string, widths: number[]): Promise<Uint8Array> {
  const rows = [
    ...table.preamble.map((line) => [line]),
    table.header,
    ...table.rows.map(({ cells }) => cells),
  ];
  const buffer = await writeXlsxFile(
    rows.map((cells) => cells.map(typed)),
    { sheet, columns: widths.map((width) => ({ width })) },
  ).toBuffer();
  return withFixedDates(new Uint8Array(buffer));
}

function typed(value: CellValue) {
  if (value === null || value === '') return null;
  if (value instanceof Date) return { value, type: Date, format: 'yyyy-mm-dd hh:mm' };
  return typeof value === 'number' ? { value, type: Number } : { value, type: String };
}

/** Packs the parts again with one date: the library stamps them with the present. ZIP holds local time, hence the local constructor. */
function withFixedDates(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  const mtime = new Date(2026, 9, 1, 5, 0, 0);
  const names = Object.keys(parts).sort();
  return zipSync(Object.fromEntries(names.map((name) => [name, [parts[name]!, { mtime, level: 9 }]])));
}
