import type { ReportContext } from '../page-context.ts';
import type { ReportFile } from '../report-file.ts';
import { chartTables } from './chart-tables.ts';
import { csvLines } from './csv.ts';
import { listTables } from './list-tables.ts';
import { TABLE_NAMES, type Table } from './table.ts';

/** Every table of a report, in the order of the workbook. */
export function reviewTables(context: ReportContext): Table[] {
  const tables = [...listTables(context), ...chartTables(context)];
  return tables.toSorted((a, b) => TABLE_NAMES.indexOf(a.name) - TABLE_NAMES.indexOf(b.name));
}

/** Path of a table's CSV below the report's folder. */
export const csvPath = ({ name }: Pick<Table, 'name'>): string => `tables/${name}.csv`;

/** The tables as CSV files. */
export function tableFiles(tables: readonly Table[]): ReportFile[] {
  return tables.map((table) => ({ path: csvPath(table), content: csvLines(table.columns, table.rows) }));
}
