import { parseDay } from '../../site/day.ts';
import { fitText } from '../html/html.ts';
import type { ReportContext } from '../page-context.ts';
import type { Cell } from './csv.ts';
import { csvPath } from './review-tables.ts';
import type { Table } from './table.ts';
import { writeWorkbook } from './write-workbook.ts';

/** Rows of one sheet: more take seconds to write and open slowly in an office program. The table's CSV has them all. */
const MOST_ROWS = 10_000;
/** Characters that a cell of the format can hold. */
const LONGEST_TEXT = 32_767;
/** Column widths in characters. */
const [NARROWEST, WIDEST] = [6, 60];
/** Rows that a column's width is taken from. */
const WIDTH_ROWS = 200;
/** Days before which the calendar of the format is not that of everyone (it knows a 29 February 1900). */
const FIRST_DAY = parseDay('1900-03-01')!;

type SheetCell =
  | { value: string; type: StringConstructor; fontWeight?: 'bold'; wrap?: boolean }
  | {
      value: number;
      type: NumberConstructor;
    }
  | { value: boolean; type: BooleanConstructor }
  | { value: Date; type: DateConstructor; format: string }
  | null;

/** A table as its sheet has it: as many rows as a sheet has, and how many there are. */
export interface SheetTable extends Omit<Table, 'rows'> {
  rows: (readonly Cell[])[];
  count: number;
}

export function sheetTable({ name, columns, rows: all }: Table): SheetTable {
  const rows: (readonly Cell[])[] = [];
  for (const row of all) {
    if (rows.length === MOST_ROWS) break;
    rows.push(row);
  }
  return { name, columns, rows, count: all.length };
}

/** What the first sheet says of the report. */
export type WorkbookAbout = Pick<ReportContext, 'words' | 'month' | 'span' | 'fingerprint'>;

/**
 * All tables as one workbook, the first sheet says what each other one holds. Numbers, dates and yes or no are cells of their kind; text is text whatever it begins
 * with: no cell is a formula. Headers stay in sight. The same tables give the same bytes.
 *
 * A column whose every value (in the rows of the sheet) is a date (or a wall time) is one of dates; months stay text.
 */
export async function workbookFile(about: WorkbookAbout, tables: readonly SheetTable[]): Promise<Uint8Array> {
  const sheets = tables.map((table) => {
    const { rows } = table;
    const kinds = table.columns.map((_, at) => kindOf(rows.map((row) => row[at]!)));
    return {
      sheet: table.name,
      data: [
        table.columns.map(header),
        ...rows.map((row) => row.map((cell, at) => sheetCell(cell, kinds[at]!))),
      ],
      columns: table.columns.map((name, at) => ({ width: widthOf(name, rows, at) })),
      stickyRowsCount: 1,
    };
  });
  return writeWorkbook([contentsSheet(about, tables), ...sheets]);
}

const header = (text: string): SheetCell => ({ value: text, type: String, fontWeight: 'bold' });

function contentsSheet({ words, month, span, fingerprint }: WorkbookAbout, tables: readonly SheetTable[]) {
  const text = words.workbook;
  const line = (value: string): SheetCell[] => [textCell(value)];
  return {
    sheet: text.contents,
    data: [
      [header(text.title(month))],
      line(text.data(span, fingerprint)),
      line(text.note),
      [],
      [header(text.heads.sheet), header(text.heads.what), header(text.heads.rows)],
      ...tables.map((table): SheetCell[] => [
        textCell(table.name),
        textCell(
          table.count > MOST_ROWS
            ? `${text.table[table.name]}. ${text.cut(MOST_ROWS, table.count, csvPath(table))}`
            : text.table[table.name],
        ),
        { value: table.count, type: Number },
      ]),
    ],
    columns: [{ width: 24 }, { width: 90 }, { width: 10 }],
    stickyRowsCount: 5,
  };
}

type Kind = 'date' | 'time' | 'other';

const WALL = /^(\d{4}-\d{2}-\d{2}) ([01]\d|2[0-3]):([0-5]\d)$/;

/** Whether all values of a column are dates, or all wall times. */
function kindOf(cells: readonly Cell[]): Kind {
  const filled = cells.filter((cell) => cell !== null && cell !== '');
  if (filled.length === 0) return 'other';
  const all = (test: (text: string) => boolean) =>
    filled.every((cell) => typeof cell === 'string' && test(cell));
  const isDay = (text: string) => (parseDay(text) ?? Number.NEGATIVE_INFINITY) >= FIRST_DAY;
  if (all(isDay)) return 'date';
  return all((text) => isDay(WALL.exec(text)?.[1] ?? '')) ? 'time' : 'other';
}

function sheetCell(cell: Cell, kind: Kind): SheetCell {
  if (cell === null || cell === undefined || cell === '') return null;
  if (typeof cell === 'boolean') return { value: cell, type: Boolean };
  if (typeof cell === 'number') return Number.isFinite(cell) ? { value: cell, type: Number } : null;
  if (kind === 'date') return { value: new Date(`${cell}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' };
  if (kind === 'time')
    return { value: new Date(`${cell.replace(' ', 'T')}:00Z`), type: Date, format: 'yyyy-mm-dd hh:mm' };
  return textCell(cell);
}

const textCell = (text: string): SheetCell => ({ value: fitText(text).slice(0, LONGEST_TEXT), type: String });

function widthOf(name: string, rows: readonly (readonly Cell[])[], at: number): number {
  const longest = rows
    .slice(0, WIDTH_ROWS)
    .reduce((most, row) => Math.max(most, String(row[at] ?? '').length), name.length);
  return Math.min(WIDEST, Math.max(NARROWEST, longest + 2));
}
