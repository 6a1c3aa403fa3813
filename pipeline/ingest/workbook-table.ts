import readWorkbook from 'read-excel-file/node';
import type { Source } from '../site/site-schema.ts';
import { foldName } from '../site/unit-names.ts';
import { type Cell, isBlankRow, type RawRow, WallDate } from './cell.ts';
import { findHeader } from './find-header.ts';
import { MAX_ROW_LENGTH } from './split-lines.ts';
import { FAULTS } from './split-rows.ts';
import type { TablePart } from './table.ts';
import { unpackWorkbook, WORKBOOK_LIMITS, WorkbookFault } from './unpack-workbook.ts';

/** Rows that are handed on at once. */
const BATCH = 5000;

/**
 * Reads a table from a sheet of a workbook (XLSX): the named sheet (letter case aside), else the first. Rows are numbered as in the sheet. Date
 * cells give the wall time that they show, to the second; cells with a formula give the value that was stored with them. The whole file is held in
 * memory, within limits.
 */
export async function* workbookTable(
  pieces: AsyncIterable<Uint8Array>,
  source: Pick<Source, 'sheet' | 'header_rows'>,
  required: readonly string[],
): AsyncGenerator<TablePart> {
  const bytes = await collect(pieces);
  if (bytes === undefined) {
    yield {
      type: 'fault',
      code: 'too_long',
      expected: `a workbook of at most ${WORKBOOK_LIMITS.file} bytes`,
    };
    return;
  }
  if (bytes.length === 0) {
    yield { type: 'header', search: findHeader([], required), hint: undefined, isSuspect: () => false };
    return;
  }
  const sheet = await openSheet(bytes, source.sheet);
  if ('type' in sheet) {
    yield sheet;
    return;
  }
  const withTime = columnsWithTime(sheet.data);
  const rows = sheet.data.map((cells, index) => toRow(cells, index, withTime));
  const search = findHeader(rows, required, source.header_rows);
  yield { type: 'header', search, hint: undefined, isSuspect: () => false, sheet: sheet.sheet };
  const from = search.header?.row ?? rows.length;
  const width = search.header?.cells.length ?? 0;
  for (let at = from; at < rows.length; at += BATCH)
    yield { type: 'rows', rows: rows.slice(at, at + BATCH).map((row) => cutTo(row, width)) };
}

/** Names of the sheets that hold anything; undefined where the workbook can't be read. */
export async function sheetsWithRows(pieces: AsyncIterable<Uint8Array>): Promise<string[] | undefined> {
  return (await workbookRows(pieces))?.filter(({ rows }) => rows.length > 0).map(({ sheet }) => sheet);
}

/** All sheets of a workbook as rows of cells; undefined where it can't be read. */
export async function workbookRows(
  pieces: AsyncIterable<Uint8Array>,
): Promise<{ sheet: string; rows: RawRow[] }[] | undefined> {
  const bytes = await collect(pieces);
  if (bytes === undefined || bytes.length === 0) return undefined;
  try {
    const sheets = await (readWorkbook as unknown as ReadAll)(unpackWorkbook(bytes));
    return sheets.map(({ sheet, data }) => {
      const withTime = columnsWithTime(data);
      const rows = data.map((cells, index) => toRow(cells, index, withTime));
      return { sheet, rows: rows.filter((row) => row.fault !== undefined || !isBlankRow(row.cells)) };
    });
  } catch {
    // Whatever the library throws at a workbook that was unpacked is a fault of the workbook's content; reading it says which.
    return undefined;
  }
}

type SheetCell = string | number | boolean | Date | null;
interface Sheet {
  sheet: string;
  data: SheetCell[][];
}
type ReadAll = (input: Buffer) => Promise<Sheet[]>;
/** The library's option for reading some sheets only, which its types leave out: numbers from 1, or names. */
type Read = (input: Buffer, options: { sheets: [string | number] }) => Promise<Sheet[]>;

async function openSheet(bytes: Uint8Array, name: string | undefined): Promise<Sheet | TablePart> {
  const read = readWorkbook as unknown as Read;
  try {
    const workbook = unpackWorkbook(bytes);
    try {
      return (await read(workbook, { sheets: [name ?? 1] }))[0]!;
    } catch (error) {
      const names = (error as { sheets?: string[] }).sheets;
      if ((error as Error).name !== 'SheetNotFoundError' || !names) throw error;
      const other = names.find((candidate) => name !== undefined && foldName(candidate) === foldName(name));
      if (other !== undefined) return (await read(workbook, { sheets: [other] }))[0]!;
      return {
        type: 'fault',
        code: 'sheet_not_found',
        expected: `one of the sheets ${names.map((candidate) => `"${candidate}"`).join(', ')}`,
        ...(name === undefined ? {} : { value: name }),
      };
    }
  } catch (error) {
    // Whatever the library throws at a workbook that was unpacked is a fault of the workbook's content.
    const expected =
      error instanceof WorkbookFault
        ? error.message
        : `a workbook that can be read: ${(error as Error).message}`;
    return { type: 'fault', code: 'unreadable_file', expected };
  }
}

/** All bytes; undefined where they are more than the limit (they are read to the end all the same, to be hashed). */
async function collect(pieces: AsyncIterable<Uint8Array>): Promise<Uint8Array | undefined> {
  let held: Uint8Array[] = [];
  let size = 0;
  for await (const piece of pieces) {
    size += piece.byteLength;
    if (size <= WORKBOOK_LIMITS.file) held.push(piece);
    else held = [];
  }
  return size <= WORKBOOK_LIMITS.file ? Buffer.concat(held) : undefined;
}

/**
 * Positions of columns in which some date cell shows a time of day. A cell at midnight is a date alone only where all date cells of its column are;
 * else it is a time that happens to be midnight.
 */
function columnsWithTime(rows: readonly (readonly SheetCell[])[]): ReadonlySet<number> {
  const columns = new Set<number>();
  for (const row of rows)
    for (let at = 0; at < row.length; at++) {
      const cell = row[at];
      if (cell instanceof Date && wallMsOf(cell) % 86_400_000 !== 0) columns.add(at);
    }
  return columns;
}

/** The library rounds a date's fraction of a day down to a millisecond, which turns 06:30:00 into 06:29:59.999; no sheet needs less than a second. */
const wallMsOf = (date: Date): number => Math.round(date.getTime() / 1000) * 1000;

function toRow(cells: readonly SheetCell[], index: number, withTime: ReadonlySet<number>): RawRow {
  const length = cells.reduce<number>((sum, cell) => sum + (typeof cell === 'string' ? cell.length : 0), 0);
  return {
    row: index + 1,
    cells: cells.map((cell, at): Cell => {
      if (cell === null) return '';
      return cell instanceof Date ? new WallDate(wallMsOf(cell), !withTime.has(at)) : cell;
    }),
    fault: length > MAX_ROW_LENGTH ? FAULTS.long : undefined,
    suspect: false,
    unterminated: false,
  };
}

/** A sheet's cells beside the table are no part of it. */
function cutTo(row: RawRow, width: number): RawRow {
  return row.cells.length > width ? { ...row, cells: row.cells.slice(0, width) } : row;
}
