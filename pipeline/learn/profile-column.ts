import { type Cell, cellText, type RawRow, WallDate } from '../ingest/cell.ts';
import { isNumeric, isTyped } from './find-table.ts';
import { foldPhrase } from './fold-phrase.ts';
import { type DateGuess, guessDates, guessSerial } from './guess-dates.ts';
import { type HeaderMeasure, measureOfHeader } from './header-measure.ts';
import { timePattern } from './time-pattern.ts';

/** What a column of a table holds, before anything is decided about it. */
export interface ColumnProfile {
  header: string;
  /** Its own name, where the header is that of a group with it. */
  underGroup: string | undefined;
  at: number;
  said: HeaderMeasure;
  /** Texts that are not blank and no dashes, in order of their rows. */
  texts: readonly string[];
  /** Three different values, as they stand. */
  samples: readonly string[];
  /** Different words with their counts, at most 400. */
  words: ReadonlyMap<string, number>;
  numeric: number;
  integer: number;
  clocks: readonly string[];
  /** Share of cells of a workbook that hold a time of day without a date. */
  clockCells: number;
  /** Share of date cells of a workbook. */
  dateCells: number;
  dates: DateGuess | undefined;
  serial: DateGuess | undefined;
  timeOfDay: string | undefined;
}

const MOST_WORDS = 400;
const NO_VALUE = /^[-\u2013\u2014]+$/;
/** What a database writes for no value. */
const NO_VALUE_OF_DATABASE = /^(?:NULL|null|<null>|\(null\)|\\N)$/;
const CLOCK = /^\d{1,3}:\d{2}(?::\d{2})?(?:[.,]\d+)?$/;

export function profileColumn(
  header: string,
  at: number,
  rows: readonly RawRow[],
  underGroup?: string,
): ColumnProfile {
  const cells = valuesOf(rows.map((row) => row.cells[at]));
  const texts = cells.map((cell) => cellText(cell));
  const words = new Map<string, number>();
  for (const text of texts)
    if (words.has(text) || words.size < MOST_WORDS) words.set(text, (words.get(text) ?? 0) + 1);
  const share = (test: (text: string) => boolean): number =>
    texts.length === 0 ? 0 : texts.filter(test).length / texts.length;
  const dateCells =
    cells.length === 0 ? 0 : cells.filter((cell) => cell instanceof WallDate).length / cells.length;
  const clockCells = cells.length === 0 ? 0 : cells.filter(isClockCell).length / cells.length;
  const written = cells.filter((cell) => typeof cell === 'string').map((cell) => cellText(cell));
  return {
    header,
    underGroup,
    at,
    said: measureOfHeader(header),
    texts,
    samples: samplesOf(words),
    words,
    numeric: cells.length === 0 ? 0 : cells.filter(isNumeric).length / cells.length,
    integer: share((text) => /^\d{1,3}(?:[ \u00a0'.,]?\d{3})*$|^\d+$/.test(text)),
    clocks: share((text) => CLOCK.test(text)) > 0.8 ? texts.filter((text) => CLOCK.test(text)) : [],
    dateCells: clockCells > 0.9 ? 0 : dateCells,
    clockCells,
    dates:
      clockCells > 0.9
        ? undefined
        : dateCells > 0.5
          ? written.length > 0
            ? guessDates(written)
            : undefined
          : guessDates(texts),
    serial: guessSerial(texts),
    timeOfDay: clockCells > 0.9 ? 'HH:mm:ss' : dateCells > 0 ? undefined : timePattern(texts),
  };
}

/** Cells that hold something. "NULL" is nothing among numbers and times; among words it is one of them, which is asked about. */
function valuesOf(all: readonly (Cell | undefined)[]): (Cell | undefined)[] {
  const filled = all.filter((cell) => cellText(cell) !== '' && !NO_VALUE.test(cellText(cell)));
  const valued = filled.filter((cell) => !NO_VALUE_OF_DATABASE.test(cellText(cell)));
  return valued.filter(isTyped).length >= valued.length * 0.8 ? valued : filled;
}

/** A workbook keeps a time of day as a part of its day nought; dates after 1904 are no such. */
const isClockCell = (cell: unknown): boolean =>
  cell instanceof WallDate && cell.wallMs < Date.UTC(1904, 0, 2) && !cell.dayOnly;

/** Words first that tell most apart: three different ones, the most frequent first. */
function samplesOf(words: ReadonlyMap<string, number>): string[] {
  return [...words]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 3)
    .map(([text]) => (text.length > 40 ? `${text.slice(0, 39)}…` : text));
}

/** Headers that tell tables of one make: the same names in the same order. */
export const signatureOf = (headers: readonly string[]): string => headers.map(foldPhrase).join('|');

/** Whether a column can be read as dates. */
export const isDates = (column: ColumnProfile): boolean =>
  column.dateCells > 0.5 || column.dates !== undefined;
