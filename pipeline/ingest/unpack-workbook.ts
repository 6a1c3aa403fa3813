import { unzipSync, zipSync } from 'fflate';
import { declaredChecks, isWhole } from './zip-checks.ts';

/** What a workbook may be at most; larger ones are refused before they are unpacked. Delimited text has no such limits. */
export const WORKBOOK_LIMITS = {
  /** Size of the file, bytes. */
  file: 100_000_000,
  /** Size of its parts unpacked, bytes. */
  unpacked: 200_000_000,
  /** How many times larger a part of more than 1 MB may be unpacked than packed: sheets of text pack 10 to 50 times, archives made to fill memory 1000 times. */
  ratio: 300,
  parts: 2000,
  rows: 1_048_576,
  columns: 1000,
  /** Rows times columns of one sheet, empty cells included. */
  cells: 20_000_000,
} as const;

/** A workbook that can't be read; the message says what was expected. */
export class WorkbookFault extends Error {
  override readonly name = 'WorkbookFault';
}

/**
 * Takes a workbook (XLSX) apart within the limits and puts its parts together again, stored plainly: what the spreadsheet library gets holds what was
 * checked and nothing else. Cells of errors such as #N/A become texts, so that they are seen as bad cells and not as empty ones.
 *
 * The sizes that the archive declares bound what is unpacked, so false ones cut a part short and don't fill memory.
 *
 * @throws WorkbookFault where the bytes are no such archive or exceed a limit
 */
export function unpackWorkbook(bytes: Uint8Array): Buffer {
  const parts = unpack(bytes);
  const checked: Record<string, Uint8Array> = Object.create(null);
  for (const [name, part] of Object.entries(parts)) {
    const text = Buffer.from(part.buffer, part.byteOffset, part.byteLength).toString('latin1');
    checked[name] = /<(?:\w+:)?sheetData[\s>/]/.test(text) ? checkSheet(text) : part;
  }
  return Buffer.from(zipSync({ ...checked }, { level: 0, mtime: Date.UTC(2000, 0, 2) }));
}

function unpack(bytes: Uint8Array): Record<string, Uint8Array> {
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf)
    throw new WorkbookFault('a workbook in the XLSX format without a password; older formats are not read');
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) throw new WorkbookFault('a workbook in the XLSX format');
  const checks = declaredChecks(bytes);
  const wanted = new Map<string, number | undefined>();
  let total = 0;
  let count = 0;
  let parts: Record<string, Uint8Array>;
  try {
    parts = unzipSync(bytes, {
      filter: ({ name, size, originalSize, compression }) => {
        const unpacked = compression === 0 ? Math.max(size, originalSize) : originalSize;
        total += unpacked;
        if (++count > WORKBOOK_LIMITS.parts)
          throw new WorkbookFault(`at most ${WORKBOOK_LIMITS.parts} parts`);
        if (unpacked > 1_000_000 && unpacked > size * WORKBOOK_LIMITS.ratio)
          throw new WorkbookFault(`parts at most ${WORKBOOK_LIMITS.ratio} times as large as they are packed`);
        if (total > WORKBOOK_LIMITS.unpacked)
          throw new WorkbookFault(
            `at most ${WORKBOOK_LIMITS.unpacked} bytes unpacked; export larger tables as text`,
          );
        const isPart = /\.(?:xml|rels)$/i.test(name) && !name.startsWith('__');
        if (isPart) wanted.set(name, checks?.[count - 1]);
        return isPart;
      },
    });
  } catch (error) {
    if (error instanceof WorkbookFault) throw error;
    throw new WorkbookFault('a workbook in the XLSX format whose archive is whole');
  }
  for (const [name, part] of Object.entries(parts))
    if (!isWhole(part, wanted.get(name)))
      throw new WorkbookFault('a workbook in the XLSX format whose parts are whole; a check sum is another');
  return parts;
}

const PLACES = /<(?:\w+:)?(row|c)\b(?:[^>]*?\sr\s*=\s*["']([^"']*)["'])?/g;

/** Checks how far the rows and columns of a sheet reach, since a reader fills the gaps between them. */
function checkSheet(text: string): Uint8Array {
  let rows = 0;
  let columns = 0;
  for (const [, tag, place = ''] of text.matchAll(PLACES)) {
    if (place === '') {
      if (tag === 'row') rows++;
      continue;
    }
    const match = /^([A-Z]{0,8})(\d{1,10})$/.exec(place);
    if (!match) throw new WorkbookFault(`cells with places such as B2, found "${place.slice(0, 20)}"`);
    rows = Math.max(rows, Number(match[2]));
    columns = Math.max(columns, columnNumber(match[1]!));
    if (rows > WORKBOOK_LIMITS.rows || columns > WORKBOOK_LIMITS.columns)
      throw new WorkbookFault(
        `sheets of at most ${WORKBOOK_LIMITS.rows} rows and ${WORKBOOK_LIMITS.columns} columns, found ${place}`,
      );
  }
  if (rows * columns > WORKBOOK_LIMITS.cells)
    throw new WorkbookFault(
      `sheets of at most ${WORKBOOK_LIMITS.cells} cells, found ${rows} rows x ${columns} columns`,
    );
  return Buffer.from(text.replace(/(<(?:\w+:)?c\b[^>]*?\st\s*=\s*)(?:"e"|'e')/g, '$1"str"'), 'latin1');
}

function columnNumber(letters: string): number {
  let number = 0;
  for (const letter of letters) number = number * 26 + letter.charCodeAt(0) - 64;
  return number;
}
