import { z } from 'zod';
import type { Records } from '../site/records.ts';

/** Codes of what can be wrong with an input. A code's meaning never changes; its wording may. */
export const PROBLEM_CODES = {
  no_file: 'No file matches the pattern of the source',
  unreadable_file: 'The file can’t be opened or read to its end',
  empty_file: 'The file holds no row',
  no_rows: 'The file holds a header and no row below it',
  header_not_found: 'No row holds the headers that the source needs',
  repeated_header: 'A header that the source needs stands twice',
  column_not_found: 'A column that the source names is not in the header; the field stays empty',
  sheet_not_found: 'The workbook holds no sheet of that name',
  encoding: 'The row holds bytes that the encoding does not know',
  nul_byte: 'The row holds NUL bytes',
  too_long: 'The row or cell is longer than the limit',
  quote: 'A quoted cell is not closed or is followed by text',
  short_row: 'The row ends before the last column that the source needs',
  long_row: 'The row holds more cells than the header, so its values may stand in the wrong columns',
  missing_value: 'A required cell is empty',
  unknown_unit: 'The name of the unit is not known, or not on that day',
  unknown_word: 'The word is not mapped to one that the record may hold',
  bad_time: 'The text is no time of the pattern, or no time of the calendar',
  bad_number: 'The text is no number',
  out_of_range: 'The value lies outside what is possible',
  end_before_start: 'The end lies before the start',
  clock_reset: 'The time lies before the unit could have been in service, or later than can be',
  conflicting_duplicate: 'Two rows of the same key differ; the first is kept',
  lone_record:
    'A few cycles or tests lie more than 62 days from all others: taken for slips of a clock or a hand, they count in no month but their own, if it is asked for',
} as const;
export type ProblemCode = keyof typeof PROBLEM_CODES;

/**
 * One thing that could not be read as it stands. `costs` says what it cost: the whole file (or the source's pattern), the row, only an optional
 * cell of a row that became a record without it, or the place in the review of a row that became a record.
 */
export const problemSchema = z.strictObject({
  code: z.enum(Object.keys(PROBLEM_CODES) as [ProblemCode, ...ProblemCode[]]),
  costs: z.enum(['file', 'row', 'cell', 'review']),
  source: z.string(),
  file: z.string(),
  sheet: z.string().nullable(),
  row: z.number().int().nullable(),
  column: z.string().nullable(),
  value: z.string().nullable().describe('Value found, cut to 120 characters'),
  expected: z.string(),
  more: z
    .number()
    .int()
    .optional()
    .describe('How many more alike (code, cost, column) the file has that are counted here and not listed'),
});
export type Problem = z.infer<typeof problemSchema>;

/** Problems alike that are listed of one file; the rest are counted with the last of them. */
export const MOST_ALIKE = 1000;

/** How many problems a list stands for. */
export const countProblems = (problems: readonly Problem[]): number =>
  problems.reduce((sum, { more = 0 }) => sum + 1 + more, 0);

/** One file (or sheet of a workbook) as one source read it. rows = records + duplicates + rejected + skipped, always. */
export const fileReadSchema = z.strictObject({
  source: z.string(),
  kind: z.string(),
  file: z.string(),
  sheet: z.string().nullable(),
  bytes: z.number().int(),
  sha256: z.string().describe('SHA-256 of the whole file, hexadecimal'),
  rows: z.number().int().describe('Rows below the header that are not blank'),
  records: z.number().int().describe('Rows that became a record'),
  duplicates: z.number().int().describe('Rows that say again what another row says'),
  rejected: z.number().int().describe('Rows with a problem that cost the row'),
  skipped: z
    .number()
    .int()
    .describe('Rows that the source file says to skip, and headers repeated below the header'),
  preamble: z.number().int().describe('Rows above the header'),
  cells_lost: z.number().int().describe('Optional cells that were left out because of a problem'),
});
export type FileRead = z.infer<typeof fileReadSchema>;

/** Everything that was read: the answer of the ingest stage. */
export interface Reading {
  records: Records;
  problems: Problem[];
  files: FileRead[];
}

/** A file, or one sheet of a workbook, as it is named to a person. */
export const tableName = ({ file, sheet }: { file: string; sheet: string | null }): string =>
  sheet === null ? file : `${file} (sheet ${sheet})`;
