import writeExcelFile from 'write-excel-file/node';
import { withFixedTimes } from './fixed-times.ts';

type Sheets = Parameters<typeof writeExcelFile>[0];
type Feature = NonNullable<NonNullable<Parameters<typeof writeExcelFile>[1]>['features']>[number];

/** The part of a workbook that is one sheet, as features name it. */
export const SHEET = 'xl/worksheets/sheet{id}.xml';

/** The first sheet alone is selected: sheets that are selected together are edited together. */
const FIRST_SELECTED = {
  files: {
    transform: {
      [SHEET]: {
        transform: (content: string, _: unknown, { sheetIndex }: { sheetIndex: number }) => {
          const head = sheetIndex === 0 ? 0 : content.indexOf('<sheetData');
          return `${content.slice(0, head).replace(' tabSelected="1"', '')}${content.slice(head)}`;
        },
      },
    },
  },
};

/** Writes a workbook; the same sheets give the same bytes. */
export async function writeWorkbook(sheets: Sheets, features: readonly Feature[] = []): Promise<Uint8Array> {
  const file = writeExcelFile(sheets, { features: [FIRST_SELECTED, ...features] });
  return withFixedTimes(await file.toBuffer());
}
