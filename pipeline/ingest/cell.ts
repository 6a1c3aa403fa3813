import { formatWall } from '../site/wall-clock.ts';
import type { ProblemCode } from './reading.ts';

/** A date of a workbook's cell: the wall time that it shows, written as if it were UTC, ms. `dayOnly`: it is a date without a time of day. */
export class WallDate {
  readonly wallMs: number;
  readonly dayOnly: boolean;

  constructor(wallMs: number, dayOnly: boolean) {
    this.wallMs = wallMs;
    this.dayOnly = dayOnly;
  }
}

/** A cell as it stands. Delimited text has text alone; a workbook also numbers, yes or no, and dates. */
export type Cell = string | number | boolean | WallDate;

/** What is wrong with a cell or row, without its place. Built once for each codec, not for each cell. */
export class Fault {
  readonly code: ProblemCode;
  readonly expected: string;

  constructor(code: ProblemCode, expected: string) {
    this.code = code;
    this.expected = expected;
  }
}

/** One row of a table as it stands. A row that can't be cut into cells has a fault, and its raw text as the one cell. */
export interface RawRow {
  /** Number of the row in the sheet, or of the line of the file on which it starts; from 1. */
  row: number;
  cells: readonly Cell[];
  fault: Fault | undefined;
  /** Some cell holds characters that stand for bytes which the encoding doesn't know. */
  suspect: boolean;
  /** The file ends inside this row or straight after it, without a line end. */
  unterminated: boolean;
  /** Header of the column from which the row was made, where a sheet has a column a day, and its mark as it stands; initials are not kept. */
  column?: string;
  mark?: string;
}

/** A cell as text, trimmed; what a text field keeps and what a message shows. */
export function cellText(cell: Cell | undefined): string {
  if (cell === undefined) return '';
  if (typeof cell === 'string') return cell.trim();
  if (typeof cell === 'number') return String(cell);
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return formatWall(cell.wallMs);
}

/** Whether a row holds nothing. */
export function isBlankRow(cells: readonly Cell[]): boolean {
  for (const cell of cells) if (typeof cell !== 'string' || cell.trim() !== '') return false;
  return true;
}
