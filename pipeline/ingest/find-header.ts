import { type Cell, cellText, isBlankRow, type RawRow } from './cell.ts';
import { missingHeaders } from './source-columns.ts';

/** Rows at the top of a file among which the header is looked for. */
export const HEADER_WITHIN = 100;

/** Where the header stands, or which row came nearest to it. */
export interface HeaderSearch {
  /** Of a header in two rows: the joined texts, at the place of the lower row. */
  header: RawRow | undefined;
  /** The rows of the file that the header is made of. */
  headerRows: readonly RawRow[];
  /** Rows above the header that are not blank. */
  preamble: number;
  /** Texts of the rows above the header. */
  above: readonly string[];
  /** Of the row that came nearest: the headers that it lacks. */
  missing: readonly string[];
  nearest: RawRow | undefined;
}

/**
 * The header is the first row (or pair of rows), of the first `HEADER_WITHIN`, that holds all headers which the source's required fields need.
 *
 * @param lines rows that the header takes up
 */
export function findHeader(
  rows: readonly RawRow[],
  required: readonly string[],
  lines: 1 | 2 = 1,
): HeaderSearch {
  let missing = required;
  let nearest: RawRow | undefined;
  const above: RawRow[] = [];
  const top = rows.slice(0, HEADER_WITHIN);
  for (const [at, row] of top.entries()) {
    if (row.fault === undefined && !isBlankRow(row.cells)) {
      const headerRows = lines === 2 ? top.slice(at, at + 2) : [row];
      const header = lines === 2 ? joinHeader(row, top[at + 1]) : row;
      const lacks = header ? missingHeaders(header.cells, required) : required;
      if (header && lacks.length === 0)
        return {
          header,
          headerRows,
          preamble: above.length,
          above: textsOf(above),
          missing: [],
          nearest: row,
        };
      if (lacks.length < missing.length || nearest === undefined) {
        missing = lacks;
        nearest = row;
      }
    }
    if (row.fault !== undefined || !isBlankRow(row.cells)) above.push(row);
  }
  return {
    header: undefined,
    headerRows: [],
    preamble: above.length,
    above: textsOf(above),
    missing,
    nearest,
  };
}

const textsOf = (rows: readonly RawRow[]): string[] =>
  rows.map((row) =>
    row.cells
      .map(cellText)
      .filter((text) => text !== '')
      .join(' '),
  );

/**
 * A header in two rows as one. The upper text holds for the columns to its right that have none, as a merged cell does; where there is no lower text the
 * column's own upper text stands alone.
 */
export function joinHeader(upper: RawRow, lower: RawRow | undefined): RawRow | undefined {
  if (!lower || lower.fault !== undefined || isBlankRow(lower.cells)) return undefined;
  let held = '';
  const cells: Cell[] = [];
  for (let at = 0; at < Math.max(upper.cells.length, lower.cells.length); at++) {
    const own = cellText(upper.cells[at]);
    const below = cellText(lower.cells[at]);
    if (own !== '') held = own;
    cells.push(below === '' ? own : held === '' ? below : `${held} ${below}`);
  }
  return { ...lower, cells };
}
