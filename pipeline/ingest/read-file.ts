import type { Site } from '../site/site.ts';
import type { Source } from '../site/site-schema.ts';
import { ArchiveFault, type InputFile, nameUnpacked } from './archives.ts';
import { Fault, type RawRow } from './cell.ts';
import type { ColumnWriter } from './column-writer.ts';
import { delimitedTable } from './delimited-table.ts';
import { FileBytes } from './file-bytes.ts';
import type { FileTally } from './file-tally.ts';
import type { HeaderSearch } from './find-header.ts';
import type { SourceReader } from './read-fields.ts';
import type { FileRead } from './reading.ts';
import { type RowReader, rowReader } from './row-reader.ts';
import { requiredHeaders } from './source-columns.ts';
import type { TablePart } from './table.ts';
import { narrowTable, WIDE_DAY, WIDE_MARK } from './wide-table.ts';
import { sheetsWithRows, workbookTable } from './workbook-table.ts';

export interface FileSettings {
  site: Site;
  input: InputFile;
  /** Called after each piece of the file, with the bytes so far. */
  onPiece: (bytes: number) => void;
  /** Takes each row that became a record. */
  writer: ColumnWriter;
  watch?: WatchRow;
}

/** Sees a row as it stands, with the header above it. */
export type WatchRow = (read: Readonly<FileRead>, header: RawRow, row: RawRow) => void;

/** How many rows of each table are shown to the one who watches. */
const WATCHED = 500;

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
  const bytes = new FileBytes(settings.input.open(), settings.onPiece);
  const required = requiredHeaders(reader.source).filter((name) => name !== WIDE_DAY && name !== WIDE_MARK);
  const { source } = reader;
  const table = isWorkbook(source, read.file) ? workbookTable : delimitedTable;
  let rows: RowReader | undefined;
  let header: RawRow | undefined;
  let watched = 0;
  let faulty = false;
  try {
    const whole = table(bytes.pieces(), source, required);
    const parts = source.wide
      ? narrowTable(whole, source, { file: nameUnpacked(read.file), sheet: read.sheet })
      : whole;
    for await (const part of parts) {
      if (part.type === 'header') {
        read.sheet = part.sheet ?? null;
        header = part.search.header;
        rows = openRows(part, reader, tally, settings);
        faulty ||= rows === undefined;
        const plain = part.plain && !settings.watch ? rows?.plainRows(part.plain) : undefined;
        if (plain) part.plain!.use(plain);
      } else if (part.type === 'fault') {
        tally.fileProblem('file', new Fault(part.code, part.expected), { value: part.value });
        faulty = true;
      } else if (rows)
        for (const row of part.rows) {
          if (header && watched < WATCHED && settings.watch) {
            watched++;
            settings.watch(read, header, row);
          }
          rows.read(row);
        }
    }
  } catch (error) {
    if (!isReadingFault(error)) throw error;
    const isArchive = error instanceof ArchiveFault;
    const after = read.rows > 0 ? `; ${read.rows} rows were read before` : '';
    const expected = isArchive ? error.message : 'a file that can be read to its end';
    tally.fileProblem('file', new Fault('unreadable_file', `${expected}${after}`), {
      value: isArchive ? undefined : error.code,
    });
    faulty = true;
  }
  read.bytes = bytes.bytes;
  read.sha256 = bytes.sha256();
  if (!faulty && read.rows === 0) tally.fileProblem('file', new Fault('no_rows', 'a row below the header'));
}

/** Endings that mean a workbook where the source does not say; of these, formats other than XLSX are refused when they are opened. */
const WORKBOOK_ENDING = /\.(?:xlsx|xlsm|xls|xlsb|ods)$/i;

export function isWorkbook({ format }: Pick<Source, 'format'>, file: string): boolean {
  return format === 'by_name' ? WORKBOOK_ENDING.test(nameUnpacked(file)) : format === 'workbook';
}

/** The sheets that a source reads of a file; undefined stands for the one that the source names, or the first. */
export async function sheetsToRead(source: Source, file: InputFile): Promise<(string | undefined)[]> {
  if (source.sheets === undefined || !isWorkbook(source, file.path)) return [undefined];
  if (source.sheets !== 'all') return source.sheets;
  try {
    return (await sheetsWithRows(file.open())) ?? [undefined];
  } catch (error) {
    // Reading the file as one table finds the same fault and says so.
    if (isReadingFault(error)) return [undefined];
    throw error;
  }
}

function openRows(
  part: Extract<TablePart, { type: 'header' }>,
  reader: SourceReader,
  tally: FileTally,
  { site, writer }: FileSettings,
): RowReader | undefined {
  const { search } = part;
  if (search.header) {
    tally.read.preamble = search.preamble;
    return rowReader(site, reader, { ...search, header: search.header }, part.isSuspect, tally, writer);
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

/** Whether an error is one of the file and not of the program: of an archive, or of the file system, whose errors carry a code such as ENOENT or EIO. */
export function isReadingFault(error: unknown): error is ArchiveFault | (Error & { code: string }) {
  if (error instanceof ArchiveFault) return true;
  return (
    error instanceof Error && 'syscall' in error && typeof (error as { code?: unknown }).code === 'string'
  );
}
