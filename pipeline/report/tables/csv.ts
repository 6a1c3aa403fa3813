/** A cell of a table. */
export type Cell = string | number | boolean | null;

const FORMULA = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;
const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * Rows as CSV (RFC 4180: comma, CRLF, quotes doubled) in UTF-8 with a byte order mark, which spreadsheets need to read it as such. Text
 * that a spreadsheet would take for a formula gets an apostrophe before it; plain negative numbers stay numbers. Null is an empty cell.
 */
export function csvText<Row extends object>(
  columns: readonly (keyof Row & string)[],
  rows: readonly Row[],
): string {
  return csvLines(
    columns,
    rows.map((row) => columns.map((column) => row[column] as Cell)),
  );
}

/** The same for rows of cells in the order of the columns. */
export function csvLines(columns: readonly string[], rows: Iterable<readonly Cell[]>): string {
  return [...csvPieces(columns, rows)].join('');
}

/** Lines of one piece. */
const LINES_OF_PIECE = 1000;

/** The same in pieces, since a text has an end: half a billion characters. */
export function* csvPieces(columns: readonly string[], rows: Iterable<readonly Cell[]>): Generator<string> {
  const line = (cells: readonly Cell[]): string => `${cells.map(csvCell).join(',')}\r\n`;
  let piece = `\ufeff${line(columns)}`;
  let lines = 0;
  for (const row of rows) {
    piece += line(row);
    lines++;
    if (lines % LINES_OF_PIECE > 0) continue;
    yield piece;
    piece = '';
  }
  yield piece;
}

/** One cell, harmless and quoted where it must be. */
export function csvCell(value: Cell): string {
  if (value === null || value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  const harmless = FORMULA.test(value) && !PLAIN_NUMBER.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
