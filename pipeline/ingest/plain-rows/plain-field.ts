import type { CutRow } from './cut-row.ts';

/** A field of a record as it is read from rows that are plain. */
export interface PlainField {
  /** Reads the field of a row; false where the row isn't plain: a required cell is blank, or something is amiss with a cell. */
  read(row: CutRow): boolean;
  /** Puts what was read last into the field's column; nothing where the cell was blank. */
  put(at: number): void;
}
