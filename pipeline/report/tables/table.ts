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

/** A table: cells by row, in the order of the columns. */
export interface Table {
  name: TableName;
  columns: readonly string[];
  rows: readonly (readonly Cell[])[];
}

/** A table of rows with named fields. */
export function tableOf<Row extends object>(
  name: TableName,
  columns: readonly (keyof Row & string)[],
  rows: readonly Row[],
): Table {
  return { name, columns, rows: rows.map((row) => columns.map((column) => (row[column] ?? null) as Cell)) };
}
