import type { InputFile } from '../ingest/archives.ts';
import { ArchiveFault, nameUnpacked } from '../ingest/archives.ts';
import { isBlankRow, type RawRow } from '../ingest/cell.ts';
import { type Encoding, textDecoding } from '../ingest/decode-text.ts';
import { isWorkbook } from '../ingest/read-file.ts';
import { LineSplitter } from '../ingest/split-lines.ts';
import { RowSplitter } from '../ingest/split-rows.ts';
import { workbookRows } from '../ingest/workbook-table.ts';
import { certain, type Guess, likely } from './guess.ts';

/** At most so much of a text file is looked at, so many rows of a table, and so many of all tables of one make. */
export const SAMPLE = { bytes: 16_000_000, rows: 20_000, together: 60_000 } as const;

export type Delimiter = ',' | ';' | '\t' | '|';
export const DELIMITERS: readonly Delimiter[] = [',', ';', '\t', '|'];

/** The rows of a file or sheet as they stand: delimited text once for each delimiter that it may have. */
export interface Sample {
  file: string;
  sheet: string | null;
  encoding: Guess<Encoding> | undefined;
  /** Whether all text is ASCII, so that encodings agree. */
  ascii: boolean;
  /** Rows that are not blank, by delimiter; a workbook has them under "workbook". */
  readings: ReadonlyMap<Delimiter | 'workbook', readonly RawRow[]>;
  /** Whether the file goes on after what was looked at. */
  cut: boolean;
}

/** The samples of a file: one, or one a sheet that holds anything. A text says why there is none. */
export async function readSample(file: InputFile): Promise<Sample[] | string> {
  try {
    if (isWorkbook({ format: 'by_name' }, nameUnpacked(file.path))) {
      const sheets = await workbookRows(file.open());
      if (!sheets) return 'can’t be read as a workbook';
      return sheets
        .filter(({ rows }) => rows.length > 0)
        .map(({ sheet, rows }) => ({
          file: file.path,
          sheet,
          encoding: undefined,
          ascii: true,
          readings: new Map([['workbook' as const, rows.slice(0, SAMPLE.rows)]]),
          cut: rows.length > SAMPLE.rows,
        }));
    }
    return await readText(file);
  } catch (error) {
    if (error instanceof ArchiveFault) return error.message;
    const { code } = error as { code?: string };
    if (code !== undefined) return `can’t be read (${code})`;
    throw error;
  }
}

async function readText(file: InputFile): Promise<Sample[] | string> {
  const pieces: Uint8Array[] = [];
  let size = 0;
  let cut = false;
  for await (const piece of file.open()) {
    pieces.push(piece);
    size += piece.byteLength;
    if (size >= SAMPLE.bytes) {
      cut = true;
      break;
    }
  }
  const bytes = Buffer.concat(pieces);
  if (bytes.length === 0) return 'is empty';
  if (
    bytes.subarray(0, 4).equals(Buffer.from('PK\u0003\u0004', 'latin1')) ||
    bytes.subarray(0, 4).equals(Buffer.from('d0cf11e0', 'hex'))
  )
    return 'is a workbook or archive under another name';
  const encoding = guessEncoding(bytes, cut);
  if (encoding === undefined) return 'holds bytes that are no text';
  const decoding = textDecoding(bytes, encoding.value);
  const splitter = new LineSplitter();
  const lines = [...splitter.push(decoding.decode(bytes) + decoding.end()), ...(cut ? [] : splitter.end())];
  if (lines.length > SAMPLE.rows) cut = true;
  const top = lines.slice(0, SAMPLE.rows);
  const readings = new Map(
    DELIMITERS.map((delimiter) => [
      delimiter,
      new RowSplitter(delimiter, decoding.isSuspect)
        .push(top, true)
        .filter((row) => row.fault !== undefined || !isBlankRow(row.cells)),
    ]),
  );
  return [{ file: file.path, sheet: null, encoding, ascii: isAscii(bytes), readings, cut }];
}

const isAscii = (bytes: Buffer): boolean => !bytes.some((byte) => byte >= 0x80 || byte === 0);

/** By the byte order mark; else NUL bytes in every second place; else UTF-8 where the bytes are well-formed; else Windows-1252. Undefined: no text. */
export function guessEncoding(bytes: Buffer, cut: boolean): Guess<Encoding> | undefined {
  const marked = textDecoding(bytes, undefined).encoding;
  if (marked !== 'utf-8') return certain(marked, 'byte order mark');
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return certain('utf-8', 'byte order mark');
  const head = bytes.subarray(0, 2000);
  const nuls = [0, 0];
  for (const [at, byte] of head.entries()) if (byte === 0) nuls[at % 2]!++;
  const half = head.length / 2;
  if (nuls[1]! > half * 0.6 && nuls[0]! < half * 0.1) return likely('utf-16le', 'NUL in every second place');
  if (nuls[0]! > half * 0.6 && nuls[1]! < half * 0.1) return likely('utf-16be', 'NUL in every second place');
  if (nuls[0]! + nuls[1]! > 0) return undefined;
  if (isAscii(bytes))
    return cut ? likely('utf-8', 'plain letters as far as looked') : certain('utf-8', 'plain letters only');
  if (isUtf8(bytes, cut)) return certain('utf-8', 'its letters are well-formed UTF-8');
  return likely('windows-1252', 'its bytes are no UTF-8');
}

/** A sample that was cut may end inside a character. */
function isUtf8(bytes: Buffer, cut: boolean): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: cut });
    return true;
  } catch {
    return false;
  }
}
