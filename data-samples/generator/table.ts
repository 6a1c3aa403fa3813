/** A table on its way to a file, with what the generator knows of each row. */

export type CellValue = string | number | Date | null;

/** What reading should make of a row. `cell`: a record that loses an optional cell. Rows that repeat another are told by their key. */
export type Fate = 'record' | 'cell' | 'rejected' | 'skipped' | 'blank';

export interface TableRow {
  cells: CellValue[];
  fate: Fate;
  /** Rows of a source with the same key are one record. */
  key: string;
  /** Instant by which faults find their place. */
  at: number;
}

export interface Table {
  /** File, relative to the folder of exports. */
  file: string;
  /** Name of the source in the site file. */
  source: string;
  preamble: string[];
  header: string[];
  rows: TableRow[];
}

export const row = (cells: CellValue[], key: string, at: number): TableRow => ({
  cells,
  fate: 'record',
  key,
  at,
});

/** Delimited text; cells that hold the delimiter, a quote or a line end are quoted. A row of one cell with a line end in front is written raw. */
export function delimitedText(table: Table, delimiter: string, lineEnd: string): string {
  const lines = [...table.preamble, quoteRow(table.header, delimiter)];
  for (const { cells } of table.rows) {
    const [only] = cells;
    lines.push(cells.length === 1 && typeof only === 'string' ? only : quoteRow(cells, delimiter));
  }
  return `${lines.join(lineEnd)}${lineEnd}`;
}

function quoteRow(cells: readonly CellValue[], delimiter: string): string {
  return cells
    .map((cell) => {
      const text = cell === null ? '' : String(cell);
      const special = text.includes(delimiter) || text.includes('"') || text.includes('\n');
      return special ? `"${text.replaceAll('"', '""')}"` : text;
    })
    .join(delimiter);
}
