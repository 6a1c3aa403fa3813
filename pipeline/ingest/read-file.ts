import path from 'node:path';
import type { Site } from '../site/site.ts';
import type { Source } from '../site/site-schema.ts';
import { Fault } from './cell.ts';
import { delimitedTable } from './delimited-table.ts';
import type { Draft } from './draft.ts';
import { FileBytes, type OpenFile } from './file-bytes.ts';
import type { FileTally } from './file-tally.ts';
import type { HeaderSearch } from './find-header.ts';
import type { SourceReader } from './read-fields.ts';
import { type RowReader, rowReader } from './row-reader.ts';
import { requiredHeaders } from './source-columns.ts';
import type { TablePart } from './table.ts';
import { workbookTable } from './workbook-table.ts';

export interface FileSettings {
  site: Site;
  folder: string;
  open: OpenFile;
  /** Called after each piece of the file, with the bytes so far. */
  onPiece: (bytes: number) => void;
  /** Takes each row that became a record. */
  emit: (draft: Draft) => void;
  /** Place of the next row in the order of source, file and row. */
  nextSequence: () => number;
}

/**
 * Reads one file as one source: each row into a draft or a count, each fault into the tally. A fault of the file itself ends the reading of this file, and
 * what was read of it until then stays.
 */
export async function readFile(
  reader: SourceReader,
  tally: FileTally,
  settings: FileSettings,
): Promise<void> {
  const { read } = tally;
  const bytes = new FileBytes(settings.open(path.join(settings.folder, read.file)), settings.onPiece);
  const required = requiredHeaders(reader.source);
  const table = isWorkbook(reader.source, read.file) ? workbookTable : delimitedTable;
  let rows: RowReader | undefined;
  let faulty = false;
  try {
    for await (const part of table(bytes.pieces(), reader.source, required)) {
      if (part.type === 'header') {
        read.sheet = part.sheet ?? null;
        rows = openRows(part, reader, tally, settings);
        faulty ||= rows === undefined;
      } else if (part.type === 'fault') {
        tally.fileProblem('file', new Fault(part.code, part.expected), { value: part.value });
        faulty = true;
      } else if (rows) for (const row of part.rows) rows.read(row, settings.nextSequence());
    }
  } catch (error) {
    if (!isFileError(error)) throw error;
    const after = read.rows > 0 ? `; ${read.rows} rows were read before` : '';
    tally.fileProblem('file', new Fault('unreadable_file', `a file that can be read to its end${after}`), {
      value: error.code,
    });
    faulty = true;
  }
  read.bytes = bytes.bytes;
  read.sha256 = bytes.sha256();
  if (!faulty && read.rows === 0) tally.fileProblem('file', new Fault('no_rows', 'a row below the header'));
}

/** Endings that mean a workbook where the source does not say; of these, formats other than XLSX are refused when they are opened. */
const WORKBOOK_ENDING = /\.(?:xlsx|xlsm|xls|xlsb|ods)$/i;

function isWorkbook({ format }: Pick<Source, 'format'>, file: string): boolean {
  return format === 'by_name' ? WORKBOOK_ENDING.test(file) : format === 'workbook';
}

function openRows(
  part: Extract<TablePart, { type: 'header' }>,
  reader: SourceReader,
  tally: FileTally,
  { site, emit }: FileSettings,
): RowReader | undefined {
  const { search } = part;
  if (search.header) {
    tally.read.preamble = search.preamble;
    return rowReader(site, reader, { ...search, header: search.header }, part.isSuspect, tally, emit);
  }
  if (search.nearest === undefined && search.preamble === 0)
    tally.fileProblem('file', new Fault('empty_file', 'a header and rows'));
  else tally.fileProblem('file', ...headerFault(search, part.hint));
  return undefined;
}

function headerFault(
  { nearest, missing }: HeaderSearch,
  hint: string | undefined,
): [Fault, { row?: number; value?: string }] {
  const expected = `a header with ${missing.map((header) => `"${header}"`).join(', ')}${hint ? `; ${hint}` : ''}`;
  const fault = new Fault('header_not_found', expected);
  return nearest ? [fault, { row: nearest.row, value: nearest.cells.map(String).join(' | ') }] : [fault, {}];
}

/** Errors of the file system carry a code such as ENOENT or EIO. */
function isFileError(error: unknown): error is Error & { code: string } {
  return (
    error instanceof Error && 'syscall' in error && typeof (error as { code?: unknown }).code === 'string'
  );
}
