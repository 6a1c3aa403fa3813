import type { Cell } from './csv.ts';

/** Every table of a report, by the name of its file and of its sheet, in the order of the workbook. A sheet's name has at most 31 characters. */
export const TABLE_NAMES = [
  'units',
  'next-steps',
  'action-list',
  'tasks-ahead',
  'watch',
  'missing-data',
  'changes-verdicts',
  'changes-drift',
  'changes-attention',
  'changes-cleaning',
  'changes-settings',
  'cleaning-due',
  'cleaning-due-by-unit',
  'cleaning-calendar',
  'failed-days-by-month',
  'aborts-by-month',
  'failed-days-by-clock',
  'aborts-by-clock',
  'ranking',
  'drift',
  'comparisons',
  'strata',
  'unit-days',
  'unit-history',
  'unit-events',
  'contradicted-records',
  'incomplete-returns',
  'requalifications',
  'test-timing',
  'without-pass-cycles',
  'look-back-cycles',
  'early-stops',
  'abort-texts',
  'record-clocks',
  'record-cleaning-clocks',
  'record-entry',
  'record-counters',
  'files',
  'problem-counts',
  'settings',
] as const;
export type TableName = (typeof TABLE_NAMES)[number];

/** Rows of cells, made anew each time they are asked for: those of a large fleet would not fit into memory at once. */
export interface TableRows extends Iterable<readonly Cell[]> {
  readonly length: number;
}

/** A table: cells by row, in the order of the columns. */
export interface Table {
  name: TableName;
  columns: readonly string[];
  rows: TableRows;
}

/** A table of rows with named fields. */
export function tableOf<Row extends object>(
  name: TableName,
  columns: readonly (keyof Row & string)[],
  rows: readonly Row[],
): Table {
  return tableOfParts(name, columns, [rows], (part) => part);
}

/**
 * A table whose rows are made part by part.
 *
 * @param rowsOf rows of a part; asked twice, the first time for their number
 */
export function tableOfParts<Part, Row extends object>(
  name: TableName,
  columns: readonly (keyof Row & string)[],
  parts: readonly Part[],
  rowsOf: (part: Part) => readonly Row[],
): Table {
  let length: number | undefined;
  const rows: TableRows = {
    get length() {
      length ??= parts.reduce((sum, part) => sum + rowsOf(part).length, 0);
      return length;
    },
    *[Symbol.iterator]() {
      for (const part of parts)
        for (const row of rowsOf(part)) yield columns.map((column) => (row[column] ?? null) as Cell);
    },
  };
  return { name, columns, rows };
}
