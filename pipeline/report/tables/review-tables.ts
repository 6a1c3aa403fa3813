import type { ReportContext } from '../page-context.ts';
import { inPieces, type ReportFile } from '../report-file.ts';
import { chartTables } from './chart-tables.ts';
import { csvLines, csvPieces } from './csv.ts';
import { listTables } from './list-tables.ts';
import { TABLE_NAMES, type Table } from './table.ts';

/** Every table of a report, in the order of the workbook. */
export function reviewTables(context: ReportContext): Table[] {
  const tables = [...listTables(context), ...chartTables(context)];
  return tables.toSorted((a, b) => TABLE_NAMES.indexOf(a.name) - TABLE_NAMES.indexOf(b.name));
}

/** Path of a table's CSV below the report's folder. */
export const csvPath = ({ name }: Pick<Table, 'name'>): string => `tables/${name}.csv`;

/** Rows from which on a table is written in pieces. */
const MANY_ROWS = 100_000;

/** The tables as CSV files. */
export function tableFiles(tables: readonly Table[]): ReportFile[] {
  return tables.map((table) => {
    const { columns, rows } = table;
    const content =
      rows.length > MANY_ROWS ? inPieces(() => csvPieces(columns, rows)) : csvLines(columns, rows);
    return { path: csvPath(table), content };
  });
}
