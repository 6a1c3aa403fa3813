import type { ReportFile } from '../report/report-file.ts';
import { csvLines } from '../report/tables/csv.ts';
import { RECORD_SHEETS } from './record-sheets.ts';
import { sheetPage } from './sheet-page.ts';
import { sheetWorkbook } from './sheet-workbook.ts';

/**
 * All blank record sheets, each as CSV, as a workbook and as a page for printing. A file that is filled in and put among the exports is read without any mapping, by
 * its name and the names of its columns.
 */
export async function templateFiles(): Promise<ReportFile[]> {
  const files = RECORD_SHEETS.map(async (sheet): Promise<ReportFile[]> => {
    const heads = sheet.columns.map(({ head }) => head);
    return [
      { path: `csv/${sheet.file}.csv`, content: csvLines(heads, []) },
      { path: `xlsx/${sheet.file}.xlsx`, content: await sheetWorkbook(sheet) },
      { path: `print/${sheet.file}.html`, content: sheetPage(sheet) },
    ];
  });
  return (await Promise.all(files)).flat();
}
