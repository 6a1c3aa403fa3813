import { isBlankRow, type RawRow } from './cell.ts';
import { missingHeaders } from './source-columns.ts';

/** Rows at the top of a file among which the header is looked for. */
export const HEADER_WITHIN = 100;

/** Where the header stands, or which row came nearest to it. */
export interface HeaderSearch {
  header: RawRow | undefined;
  /** Rows above the header that are not blank. */
  preamble: number;
  /** Of the row that came nearest: the headers that it lacks. */
  missing: readonly string[];
  nearest: RawRow | undefined;
}

/** The header is the first row, of the first `HEADER_WITHIN`, that holds all headers which the source's required fields need. */
export function findHeader(rows: readonly RawRow[], required: readonly string[]): HeaderSearch {
  let preamble = 0;
  let missing = required;
  let nearest: RawRow | undefined;
  for (const row of rows.slice(0, HEADER_WITHIN)) {
    if (row.fault === undefined && !isBlankRow(row.cells)) {
      const lacks = missingHeaders(row.cells, required);
      if (lacks.length === 0) return { header: row, preamble, missing: [], nearest: row };
      if (lacks.length < missing.length || nearest === undefined) {
        missing = lacks;
        nearest = row;
      }
    }
    if (row.fault !== undefined || !isBlankRow(row.cells)) preamble++;
  }
  return { header: undefined, preamble, missing, nearest };
}
