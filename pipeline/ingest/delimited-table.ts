import type { Source } from '../site/site-schema.ts';
import type { RawRow } from './cell.ts';
import { type TextDecoding, textDecoding } from './decode-text.ts';
import { findHeader, HEADER_WITHIN, type HeaderSearch } from './find-header.ts';
import { PlainLines } from './plain-rows/plain-lines.ts';
import type { PlainRows } from './plain-rows/plain-text.ts';
import { type Line, LineSplitter } from './split-lines.ts';
import { RowSplitter } from './split-rows.ts';
import type { TablePart } from './table.ts';

/** A delimiter, and the header under it. */
interface Found {
  delimiter: string;
  search: HeaderSearch;
}

const LINE_FEED = 10;

const DELIMITERS = [',', ';', '\t', '|'] as const;

/** Bytes among which the header is looked for at first; then among as many more, until it is found or {@link HEADER_WITHIN} lines are there. */
const OPENING = 2048;

/**
 * Reads a table from delimited text, piece by piece. Rows are numbered by the line of the file on which they start, so that they are found in an
 * editor. Where no delimiter is declared, it is the one under which the header is found soonest (then: with most cells; then: comma, semicolon, tab, bar).
 * Who takes plain rows ({@link PlainText}) takes them in their order between the others.
 */
export async function* delimitedTable(
  pieces: AsyncIterable<Uint8Array>,
  source: Pick<Source, 'delimiter' | 'encoding' | 'header_rows'>,
  required: readonly string[],
): AsyncGenerator<TablePart> {
  let decoding: TextDecoding | undefined;
  const splitter = new LineSplitter();
  const head: Line[] = [];
  let rows: RowSplitter | undefined;
  let headerRow = Number.POSITIVE_INFINITY;
  let plain: PlainLines | undefined;

  const open = function* (
    final: boolean,
    found = chooseDelimiter(head, final, source, required, decoding!),
  ): Generator<TablePart> {
    rows = new RowSplitter(found.delimiter, decoding!.isSuspect);
    headerRow = found.search.header?.row ?? Number.POSITIVE_INFINITY;
    const { decodeCharacters: decode, isSuspect } = decoding!;
    const { delimiter } = found;
    const use = (taker: PlainRows): void => {
      plain = new PlainLines(taker, rows!, splitter);
    };
    yield {
      type: 'header',
      search: found.search,
      hint: found.search.header ? undefined : hintOf(head, decoding!),
      isSuspect,
      ...(decode &&
        delimiter.length === 1 &&
        delimiter < '\u0080' && { plain: { delimiter, decode, isSuspect, use } }),
    };
  };
  const below = (lines: readonly Line[], final: boolean): RawRow[] =>
    rows!.push(lines, final).filter(({ row }) => row > headerRow);
  const linesOf = (bytes: Uint8Array): Line[] => splitter.push(decoding!.decode(bytes));

  let failure: unknown;
  try {
    for await (const piece of atLeastFour(pieces)) {
      const archive = decoding ? undefined : archiveFault(piece);
      if (archive) {
        yield archive;
        for await (const _ of pieces);
        return;
      }
      decoding ??= textDecoding(piece, source.encoding);
      let bytes = piece;
      while (!rows && bytes.length > 0) {
        const end = endOfLine(bytes, OPENING);
        for (const line of linesOf(bytes.subarray(0, end))) head.push(line);
        bytes = bytes.subarray(end);
        if (head.length < HEADER_WITHIN) {
          const found = headerAbove(head, source, required, decoding);
          if (!found) continue;
          yield* open(false, found);
        } else yield* open(false);
        yield { type: 'rows', rows: below(head.splice(0), false) };
      }
      if (plain)
        for (const lines of plain.through(bytes)) yield { type: 'rows', rows: below(linesOf(lines), false) };
      else if (headerRow < Number.POSITIVE_INFINITY)
        yield { type: 'rows', rows: below(linesOf(bytes), false) };
    }
  } catch (error) {
    failure = error;
  }
  if (failure !== undefined && !rows && head.length === 0) throw failure;
  decoding ??= textDecoding(new Uint8Array(), source.encoding);
  // A line that is not whole because reading failed is left; the failure says so.
  if (failure === undefined) {
    if (plain) head.push(...linesOf(plain.rest));
    head.push(...splitter.push(decoding.end()), ...splitter.end());
  }
  if (!rows) yield* open(true);
  const tail = below(head, true);
  if (!splitter.terminated && tail.length > 0) tail.at(-1)!.unterminated = true;
  yield { type: 'rows', rows: tail };
  if (failure !== undefined) throw failure;
}

/** The first place at or after so many bytes that stands behind a line end; else the end of the bytes. */
function endOfLine(bytes: Uint8Array, least: number): number {
  const at = bytes.indexOf(LINE_FEED, Math.min(least, bytes.length) - 1);
  return at < 0 ? bytes.length : at + 1;
}

/**
 * The header among the first lines, where more lines couldn't make another of it: each line is a row by itself whatever the delimiter.
 */
function headerAbove(
  head: readonly Line[],
  source: Pick<Source, 'delimiter' | 'header_rows'>,
  required: readonly string[],
  decoding: TextDecoding,
): Found | undefined {
  if (head.some((line) => typeof line !== 'string' || line.includes('"'))) return undefined;
  const found = chooseDelimiter(head, false, source, required, decoding);
  return found.search.header ? found : undefined;
}

/** A file that by its first bytes is an archive, such as a workbook under another name. */
function archiveFault(piece: Uint8Array): TablePart | undefined {
  const starts = [Buffer.from('PK\u0003\u0004', 'latin1'), Buffer.from('d0cf11e0', 'hex')];
  if (!starts.some((start) => start.equals(piece.subarray(0, start.length)))) return undefined;
  const expected =
    'delimited text; the file is a workbook or another archive: set format to workbook, or export it as text';
  return { type: 'fault', code: 'unreadable_file', expected };
}

function chooseDelimiter(
  head: readonly Line[],
  final: boolean,
  source: Pick<Source, 'delimiter' | 'header_rows'>,
  required: readonly string[],
  decoding: TextDecoding,
): Found {
  const lines = head.slice(0, HEADER_WITHIN);
  const isEnd = final || lines.length < head.length;
  let best: Found | undefined;
  for (const delimiter of source.delimiter ? [source.delimiter] : DELIMITERS) {
    const rows = new RowSplitter(delimiter, decoding.isSuspect).push(lines, isEnd);
    // What is found below the header of another delimiter can't be better.
    const last = best?.search.header?.row ?? Number.POSITIVE_INFINITY;
    const search = findHeader(
      rows.filter(({ row }) => row <= last),
      required,
      source.header_rows,
    );
    if (!best || isBetter(search, best.search)) best = { delimiter, search };
  }
  return best!;
}

function isBetter(a: HeaderSearch, b: HeaderSearch): boolean {
  const rowOf = (search: HeaderSearch) => search.header?.row ?? Number.POSITIVE_INFINITY;
  if (rowOf(a) !== rowOf(b)) return rowOf(a) < rowOf(b);
  if (a.missing.length !== b.missing.length) return a.missing.length < b.missing.length;
  return (a.nearest?.cells.length ?? 0) > (b.nearest?.cells.length ?? 0);
}

/** What may explain that no header was found. */
function hintOf(head: readonly Line[], decoding: TextDecoding): string | undefined {
  const texts = head.filter((line) => typeof line === 'string');
  if (texts.some((line) => line.includes('\0')))
    return `the text holds NUL bytes as ${decoding.encoding}: set encoding to utf-16le or utf-16be if that is what the file is`;
  if (texts.some(decoding.isSuspect))
    return `the text holds bytes that ${decoding.encoding} does not know: set encoding if the file has another`;
  return undefined;
}

/** The same pieces, the first of them long enough to hold a byte order mark or the signature of an archive. */
async function* atLeastFour(pieces: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let held: Uint8Array | undefined = new Uint8Array();
  for await (const piece of pieces) {
    if (held === undefined) yield piece;
    else {
      held = Buffer.concat([held, piece]);
      if (held.byteLength >= 4) {
        yield held;
        held = undefined;
      }
    }
  }
  if (held !== undefined && held.byteLength > 0) yield held;
}
