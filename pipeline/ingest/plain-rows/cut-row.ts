import { MAX_ROW_LENGTH } from '../split-lines.ts';

const QUOTE = 34;

/** A row as places in a text: where each cell starts and ends, without quotes and blanks around it. */
export class CutRow {
  text = '';
  /** Whether all of the text is ASCII. */
  isAscii = true;
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  readonly #width: number;
  readonly #delimiter: number;
  /** The highest of the characters that end a cell: most characters are above it. */
  readonly #highest: number;

  /** @param width cells of a row */
  constructor(width: number, delimiter: string) {
    this.#width = width;
    this.#delimiter = delimiter.charCodeAt(0);
    this.#highest = Math.max(this.#delimiter, QUOTE);
    this.starts = new Int32Array(width);
    this.ends = new Int32Array(width);
  }

  /**
   * Cuts a row. False where it has another number of cells, a NUL byte, or a quote that doesn't stand around a cell which is whole and has no quote inside: such rows are for the reader of rows.
   */
  cut(text: string, from: number, to: number, isAscii: boolean): boolean {
    if (to - from > MAX_ROW_LENGTH) return false;
    this.text = text;
    this.isAscii = isAscii;
    let cell = 0;
    let start = from;
    for (;;) {
      if (cell === this.#width) return false;
      const end =
        start < to && text.charCodeAt(start) === QUOTE
          ? this.#quoted(cell, start + 1, to)
          : this.#unquoted(cell, start, to);
      if (end < 0) return false;
      cell++;
      if (end === to) return cell === this.#width;
      start = end + 1;
    }
  }

  /** Takes the cell that starts at `start`; answers the place of the delimiter after it, or of the row's end; -1 where it isn't plain. */
  #unquoted(cell: number, start: number, to: number): number {
    const { text } = this;
    const delimiter = this.#delimiter;
    const highest = this.#highest;
    let end = start;
    for (; end < to; end++) {
      const code = text.charCodeAt(end);
      if (code > highest) continue;
      if (code === delimiter) break;
      if (code === QUOTE || code === 0) return -1;
    }
    this.#trim(cell, start, end);
    return end;
  }

  /** The same for a cell in quotes, `start` being behind the first. */
  #quoted(cell: number, start: number, to: number): number {
    const { text } = this;
    let end = start;
    for (; end < to; end++) {
      const code = text.charCodeAt(end);
      if (code === QUOTE) break;
      if (code === 0) return -1;
    }
    const after = end + 1;
    if (end === to || (after < to && text.charCodeAt(after) !== this.#delimiter)) return -1;
    this.#trim(cell, start, end);
    return after;
  }

  #trim(cell: number, from: number, to: number): void {
    const { text } = this;
    let start = from;
    let end = to;
    while (start < end && isBlank(text.charCodeAt(start))) start++;
    while (end > start && isBlank(text.charCodeAt(end - 1))) end--;
    this.starts[cell] = start;
    this.ends[cell] = end;
  }

  /** Whether a cell holds characters beyond ASCII, which stand for bytes. */
  hasBytes(cell: number): boolean {
    if (this.isAscii) return false;
    const end = this.ends[cell]!;
    for (let at = this.starts[cell]!; at < end; at++) if (this.text.charCodeAt(at) > 127) return true;
    return false;
  }

  /** A cell's characters; of several cells those that aren't blank, joined with a blank. */
  charactersOf(cells: readonly number[]): string {
    if (cells.length === 1) return this.text.slice(this.starts[cells[0]!], this.ends[cells[0]!]);
    const texts = cells.map((cell) => this.text.slice(this.starts[cell], this.ends[cell]));
    return texts.filter((text) => text !== '').join(' ');
  }
}

/** Blanks of ASCII, as `trim` takes them: a blank, and tab to carriage return. */
const isBlank = (code: number): boolean => code === 32 || (code >= 9 && code <= 13);
