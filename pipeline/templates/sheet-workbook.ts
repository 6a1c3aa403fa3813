import {
  getCellAddress,
  getOrderOfSiblings,
  insertElementMarkupAccordingToOrderOfSiblings,
  sanitizeAttributeValue,
  sanitizeTextContent,
} from 'write-excel-file/utility';
import { SHEET, writeWorkbook } from '../report/tables/write-workbook.ts';
import type { RecordSheet, SheetColumn } from './record-sheets.ts';

/** Lines that are made ready: cells for dates, lists for words. More can be written below them. */
const READY_LINES = 500;

/**
 * A blank record sheet as a workbook: the first sheet is the table, with lists in the cells that take fixed words, and limits where a number can't be otherwise; the second says
 * what to write. Lists are data validation of the format (ECMA-376 part 1, 18.3.1.32); a program that does not know them reads the words on the second sheet.
 */
export async function sheetWorkbook(sheet: RecordSheet): Promise<Uint8Array> {
  const { columns } = sheet;
  const header = columns.map(({ head }) => bold(head));
  // Actions are dated by the day.
  const format = sheet.kind === 'actions' ? 'yyyy-mm-dd' : 'yyyy-mm-dd hh:mm';
  const line = columns.map(({ holds }) => (holds === 'instant' ? { type: Date, format } : null));
  const words = [
    [bold(sheet.title)],
    [text(sheet.use)],
    [],
    [bold('Column'), bold('Needed'), bold('What to write'), bold('Words')],
    ...columns.map(({ head, required, says, words: allowed }) => [
      text(head),
      text(required ? 'yes' : ''),
      text(says),
      text(allowed.join(', ')),
    ]),
    [],
    [bold('Cautions')],
    ...sheet.cautions.map((caution) => [text(caution)]),
  ];
  return writeWorkbook(
    [
      {
        sheet: sheet.title,
        data: [header, ...Array.from({ length: READY_LINES }, () => line)],
        columns: columns.map(({ head, width }) => ({ width: Math.max(head.length + 3, width * 4) })),
        stickyRowsCount: 1,
      },
      {
        sheet: 'What to write',
        data: words,
        columns: [{ width: 24 }, { width: 9 }, { width: 70 }, { width: 50 }],
      },
    ],
    [validation(columns)],
  );
}

const bold = (value: string) => ({ value, type: String, fontWeight: 'bold' as const });
const text = (value: string) => (value === '' ? null : { value, type: String });

/** Puts lists and limits into the first sheet. */
function validation(columns: readonly SheetColumn[]) {
  const rules = columns.flatMap((column, at) => ruleOf(column, at) ?? []);
  const markup = `<dataValidations count="${rules.length}">${rules.join('')}</dataValidations>`;
  return {
    files: {
      transform: {
        [SHEET]: {
          transform: (content: string, _: unknown, { sheetIndex }: { sheetIndex: number }) =>
            sheetIndex === 0
              ? insertElementMarkupAccordingToOrderOfSiblings(
                  content,
                  markup,
                  getOrderOfSiblings(SHEET, 'worksheet')!,
                  'worksheet',
                )
              : content,
        },
      },
    },
  };
}

function ruleOf({ words, limits, holds, head }: SheetColumn, at: number): string | undefined {
  const cells = `${getCellAddress(1, at)}:${getCellAddress(READY_LINES, at)}`;
  const rule = (kind: string, message: string, ...formulas: string[]) =>
    `<dataValidation ${kind} allowBlank="1" showErrorMessage="1" errorTitle="${sanitizeAttributeValue(head)}" error="${sanitizeAttributeValue(message)}" sqref="${cells}">${formulas
      .map((formula, index) => `<formula${index + 1}>${sanitizeTextContent(formula)}</formula${index + 1}>`)
      .join('')}</dataValidation>`;
  if (words.length > 0)
    return rule('type="list"', `Must be one of ${words.join(', ')}.`, `"${words.join(',')}"`);
  if (limits) {
    const [least, most] = limits;
    const kind = holds === 'integer' ? 'whole' : 'decimal';
    const message = `Must be a ${kind === 'whole' ? 'whole ' : ''}number from ${least} to ${most}.`;
    return rule(`type="${kind}" operator="between"`, message, String(least), String(most));
  }
  return undefined;
}
