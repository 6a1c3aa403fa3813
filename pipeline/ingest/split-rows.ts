import { type Options, parse } from 'csv-parse/sync';
import { type Cell, Fault, type RawRow } from './cell.ts';
import { type Line, MAX_ROW_LENGTH } from './split-lines.ts';

/** Most lines that one row may take up (line breaks inside quoted cells). */
export const MAX_ROW_LINES = 200;

export const FAULTS = {
  nul: new Fault('nul_byte', 'a row without NUL bytes'),
  long: new Fault('too_long', `a row of at most ${MAX_ROW_LENGTH} characters`),
  quote: new Fault(
    'quote',
    `each quoted cell closed by a quote before a delimiter or line end, within ${MAX_ROW_LINES} lines; a quote inside it doubled`,
  ),
} as const;

/** Most lines that are handed to the parser at once. */
const BLOCK = 256;

type Settings = Options<string[], string[]>;

/**
 * Cuts lines into rows of cells. Lines without a quote are cut at the delimiter, lines of quoted cells alone at quotes and delimiter; the others go
 * through csv-parse, many at a time. A row goes on over lines as
 * long as a quoted cell is open. Where such a cell is never closed, or is followed by text, only the line on which the row starts is lost
 * and reading goes on with the next one. A quote inside a cell that isn't quoted is text.
 */
export class RowSplitter {
  readonly #delimiter: string;
  readonly #between: string;
  readonly #isSuspect: (text: string) => boolean;
  readonly #strict: Settings;
  readonly #relaxed: Settings;
  #lines: Line[] = [];
  #row: number;
  #block = BLOCK;
  /** Cells of lines that were parsed ahead, by the number of the line. */
  readonly #ahead = new Map<number, string[]>();

  /** @param firstRow number of the first line that will be pushed */
  constructor(delimiter: string, isSuspect: (text: string) => boolean, firstRow = 1) {
    this.#delimiter = delimiter;
    this.#between = `"${delimiter}"`;
    this.#isSuspect = isSuspect;
    this.#row = firstRow;
    const trim = delimiter !== '\t';
    this.#strict = { delimiter, record_delimiter: '\n', relax_column_count: true, ltrim: trim, rtrim: trim };
    this.#relaxed = { ...this.#strict, relax_quotes: true };
  }

  /** Whether each line so far has become a row, or part of one: then the next line may be read elsewhere. */
  get isBetweenRows(): boolean {
    return this.#lines.length === 0;
  }

  /** Number of the next line, where there is no row that goes on. */
  get nextRow(): number {
    return this.#row;
  }

  /** Counts a line that was read elsewhere. */
  skipLine(): void {
    this.#row++;
  }

  /** @param final whether no line follows, so that an open quote can't be closed any more */
  push(more: readonly Line[], final: boolean): RawRow[] {
    const lines = this.#lines.length > 0 ? [...this.#lines, ...more] : more;
    const rows: RawRow[] = [];
    let at = 0;
    while (at < lines.length) {
      const used = this.#take(lines, at, final, rows);
      if (used === 0) break;
      at += used;
    }
    this.#row += at;
    this.#lines = lines.slice(at);
    return rows;
  }

  /** Reads the row at `at`, or a block of rows; answers how many lines it took, 0 where more lines are needed. */
  #take(lines: readonly Line[], at: number, final: boolean, rows: RawRow[]): number {
    const line = lines[at]!;
    const row = this.#row + at;
    if (typeof line !== 'string') {
      rows.push(faulty(row, line.beginning, FAULTS.long));
      return 1;
    }
    if (!line.includes('"')) {
      rows.push(this.#good(row, line, line.split(this.#delimiter)));
      return 1;
    }
    const quoted = this.#allQuoted(line);
    if (quoted) {
      rows.push(this.#good(row, line, quoted));
      return 1;
    }
    if (!this.#ahead.has(row)) this.#parseAhead(lines, at);
    const ahead = this.#ahead.get(row);
    if (!ahead) return this.#takeOne(lines, at, final, rows);
    this.#ahead.delete(row);
    rows.push(this.#good(row, line, ahead));
    return 1;
  }

  /** The cells of a line in which each cell is quoted and none holds a quote: then the line can be cut at quote, delimiter, quote. */
  #allQuoted(line: string): string[] | undefined {
    if (line.length < 2 || !line.startsWith('"') || !line.endsWith('"')) return undefined;
    const cells = line.slice(1, -1).split(this.#between);
    for (const cell of cells) if (cell.includes('"')) return undefined;
    return cells;
  }

  /**
   * The next lines with quotes, also those with other lines between them, all at once: as many records as lines means that each is a row by itself. A line that
   * goes on would take the next of them into its own record.
   */
  #parseAhead(lines: readonly Line[], at: number): void {
    const places: number[] = [];
    const texts: string[] = [];
    for (let next = at; next < lines.length && places.length < this.#block; next++) {
      const line = lines[next]!;
      if (typeof line !== 'string' || !line.includes('"') || this.#allQuoted(line)) continue;
      places.push(this.#row + next);
      texts.push(line);
    }
    if (texts.length > 1)
      try {
        const records = parse(texts.join('\n'), this.#strict);
        if (records.length === texts.length) {
          for (const [index, place] of places.entries()) this.#ahead.set(place, records[index]!);
          this.#block = Math.min(BLOCK, this.#block * 2);
          return;
        }
      } catch {
        // One of the lines is faulty or goes on: they are read one by one, and the faulty one is reported there.
      }
    this.#block = texts.length > 1 ? Math.max(1, this.#block >> 2) : Math.min(BLOCK, this.#block * 2);
  }

  #takeOne(lines: readonly Line[], at: number, final: boolean, rows: RawRow[]): number {
    const first = lines[at] as string;
    const row = this.#row + at;
    let text = first;
    for (let next = at + 1; ; next++) {
      const cells = this.#cells(text, next - at);
      if (cells === 'faulty') break;
      if (cells !== 'open') {
        rows.push(this.#good(row, text, cells));
        return next - at;
      }
      // The quote can only be closed by a line that holds one.
      let line = lines[next];
      while (typeof line === 'string' && !line.includes('"') && next - at < MAX_ROW_LINES) {
        text += `\n${line}`;
        line = lines[++next];
      }
      if (next >= lines.length && !final && next - at < MAX_ROW_LINES) return 0;
      if (typeof line !== 'string' || next - at >= MAX_ROW_LINES) break;
      text += `\n${line}`;
      if (text.length > MAX_ROW_LENGTH) break;
    }
    rows.push(faulty(row, first, FAULTS.quote));
    return 1;
  }

  #cells(text: string, lines: number): readonly string[] | 'open' | 'faulty' {
    try {
      return parse(text, this.#strict)[0] ?? [];
    } catch (error) {
      const { code } = error as { code?: string };
      if (code === 'CSV_QUOTE_NOT_CLOSED') return 'open';
      if (code !== 'INVALID_OPENING_QUOTE' || lines > 1) return 'faulty';
    }
    try {
      return parse(text, this.#relaxed)[0] ?? [];
    } catch {
      return 'faulty';
    }
  }

  #good(row: number, text: string, cells: readonly string[]): RawRow {
    if (text.includes('\0')) return faulty(row, text, FAULTS.nul);
    return { row, cells, fault: undefined, suspect: this.#isSuspect(text), unterminated: false };
  }
}

function faulty(row: number, text: string, fault: Fault): RawRow {
  const cells: Cell[] = [text];
  return { row, cells, fault, suspect: false, unterminated: false };
}
