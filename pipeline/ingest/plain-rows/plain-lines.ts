import { isAscii } from 'node:buffer';
import { type LineSplitter, MAX_ROW_LENGTH } from '../split-lines.ts';
import type { RowSplitter } from '../split-rows.ts';
import type { PlainRows } from './plain-text.ts';

/** Most lines that are handed on together. */
const BLOCK = 256;

/** Fewest plain rows on end after which a line that isn't plain counts as rare. */
const RUN = 16;

const CARRIAGE_RETURN = 13;

/**
 * Hands the plain rows of a file's bytes to who takes them, and gives back the lines between that are not plain, for the splitters of lines and rows. Each of these must have gone through the
 * splitters before the next is asked for, so that rows keep their order.
 */
export class PlainLines {
  /** Bytes after the last line end so far. */
  rest: Uint8Array = new Uint8Array();
  readonly #taker: PlainRows;
  readonly #rows: RowSplitter;
  readonly #lines: LineSplitter;
  /** Lines that are handed on at once: one, or more where few lines are plain. */
  #block = 1;

  constructor(taker: PlainRows, rows: RowSplitter, lines: LineSplitter) {
    this.#taker = taker;
    this.#rows = rows;
    this.#lines = lines;
  }

  *through(piece: Uint8Array): Generator<Uint8Array, void, undefined> {
    const bytes =
      this.rest.length > 0
        ? Buffer.concat([this.rest, piece])
        : Buffer.from(piece.buffer, piece.byteOffset, piece.length);
    const end = bytes.lastIndexOf('\n') + 1;
    const whole = bytes.subarray(0, end);
    const text = whole.toString('latin1');
    const plain = isAscii(whole);
    let at = 0;
    while (at < end) {
      const before = this.#rows.nextRow;
      at = this.#take(text, at, plain);
      const isRare = this.#rows.nextRow - before >= RUN;
      this.#block = isRare ? 1 : Math.min(BLOCK, this.#block * 2);
      const from = at;
      for (let line = 0; line < this.#block && at < end; line++) at = text.indexOf('\n', at) + 1;
      if (at === from) break;
      yield whole.subarray(from, at);
    }
    this.rest = bytes.subarray(end);
    if (this.rest.length <= MAX_ROW_LENGTH) return;
    yield this.rest;
    this.rest = new Uint8Array();
  }

  /** Has rows taken from a place on, as long as they are plain; answers the place behind them. */
  #take(text: string, from: number, isAscii: boolean): number {
    if (!this.#lines.isBetweenLines || !this.#rows.isBetweenRows) return from;
    let at = from;
    while (at < text.length) {
      const lineFeed = text.indexOf('\n', at);
      const end =
        lineFeed > at && text.charCodeAt(lineFeed - 1) === CARRIAGE_RETURN ? lineFeed - 1 : lineFeed;
      if (!this.#taker.take(text, at, end, isAscii, this.#rows.nextRow)) break;
      this.#rows.skipLine();
      at = lineFeed + 1;
    }
    return at;
  }
}
