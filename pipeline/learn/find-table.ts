import { type Cell, cellText, type RawRow, WallDate } from '../ingest/cell.ts';
import { monthOfName } from '../ingest/codecs/month-names.ts';
import { joinHeader } from '../ingest/find-header.ts';
import { foldHeader } from '../ingest/source-columns.ts';
import { dayNumber } from '../ingest/wide-table.ts';
import type { Beside } from './compose-header.ts';
import { certain, type Guess, likely } from './guess.ts';
import { looksLikeTime } from './guess-dates.ts';
import { isClearWithGroups, namesUnderGroups } from './header-groups.ts';
import { withoutMeasure } from './header-measure.ts';
import { DELIMITERS, type Delimiter, type Sample } from './read-sample.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A table found in a sample: where its header stands and what is below. */
export interface FoundTable {
  sample: Sample;
  delimiter: Guess<Delimiter> | undefined;
  headerRows: 1 | 2;
  headerRow: number;
  headers: readonly string[];
  /** Of a header in two rows: the own names of the columns that stand under a group, by their place. */
  underGroups: ReadonlyMap<number, string>;
  /** Texts of the rows above the header. */
  above: readonly string[];
  /** Rows below the header that hold cells; comments, totals and repeated headers are left out and counted. */
  rows: readonly RawRow[];
  comment: string | undefined;
  /** Column and texts of totals lines. */
  totals: { header: string; texts: string[] } | undefined;
  /** Positions of the columns that are days of a sheet with a column a day. */
  dayColumns: readonly number[];
  score: number;
}

const HEADER_WITHIN = 60;
const NOTHING_BESIDE: Beside = { hot: undefined, said: undefined };
/** Columns that are looked at; a word for a total stands in one of the first. */
const MOST_COLUMNS = 400;
const TOTALS_WITHIN = 4;
/** So many days in a row make a sheet with a column a day. */
const LEAST_DAYS = 5;

/** Finds the table of a sample: with the delimiter under which header and rows fit best. Undefined where there is none. */
export function findTable(sample: Sample, vocabulary: Vocabulary): FoundTable | undefined {
  const found: { delimiter: Delimiter | 'workbook'; table: FoundTable }[] = [];
  for (const delimiter of [...DELIMITERS, 'workbook'] as const) {
    const rows = sample.readings.get(delimiter);
    const table = rows && tableIn(rows, sample, vocabulary);
    if (table) found.push({ delimiter, table });
  }
  found.sort((a, b) => b.table.score - a.table.score);
  const best = found[0];
  if (!best) return undefined;
  if (best.delimiter === 'workbook') return best.table;
  const second = found[1]?.table.score ?? 0;
  const clear = second < best.table.score * 0.7;
  const why = `${best.table.headers.length} columns in each row`;
  return { ...best.table, delimiter: clear ? certain(best.delimiter, why) : likely(best.delimiter, why) };
}

interface FoundHeader {
  at: number;
  lines: 1 | 2;
  header: RawRow;
  score: number;
}

/** The same header with the row of groups above it, where its columns are only clear with it. */
function withGroups(found: FoundHeader, rows: readonly RawRow[], vocabulary: Vocabulary): FoundHeader {
  const { at, lines } = found;
  const upper = rows[at - 1];
  if (!upper || lines === 2 || !isSecondLine(rows, at - 1)) return found;
  const header = joinHeader(upper, rows[at]);
  return header && !upper.cells.some(isTyped) && isClearWithGroups(upper, rows[at]!, vocabulary)
    ? { ...found, at: at - 1, lines: 2, header }
    : found;
}

function tableIn(all: readonly RawRow[], sample: Sample, vocabulary: Vocabulary): FoundTable | undefined {
  const comment = commentOf(all);
  const isComment = (row: RawRow): boolean =>
    comment !== undefined && cellText(row.cells[0]).startsWith(comment);
  const rows = all.filter((row) => row.fault === undefined && !isComment(row));
  let best: FoundHeader | undefined;
  for (let at = 0; at < Math.min(rows.length - 1, HEADER_WITHIN); at++) {
    for (const lines of [1, 2] as const) {
      const header = lines === 1 ? rows[at]! : joinHeader(rows[at]!, rows[at + 1]);
      if (!header || (lines === 2 && !isSecondLine(rows, at))) continue;
      const score =
        headerScore(header, rows.slice(at + lines, at + lines + 40), vocabulary) + (lines === 2 ? 1 : 0);
      if (score > (best?.score ?? 0)) best = { at, lines, header, score };
    }
  }
  if (!best) return undefined;
  best = withGroups(best, rows, vocabulary);
  const { header } = best;
  const width = Math.min(MOST_COLUMNS, lastFilled(header) + 1);
  const headers = numbered(header.cells.slice(0, width).map(cellText));
  const below = rows.slice(best.at + best.lines);
  const raw = rows.slice(best.at, best.at + best.lines).map(rowText);
  const kept = below.filter((row) => !raw.includes(rowText(row)));
  const totals = totalsOf(kept, headers, vocabulary);
  const isTotal = (row: RawRow): boolean =>
    totals?.texts.includes(cellText(row.cells[headers.indexOf(totals.header)])) === true;
  const table = kept.filter((row) => !isTotal(row));
  const sameWidth = table.filter(({ cells }) => Math.abs(cells.length - header.cells.length) <= 1).length;
  if (width < 2) return undefined;
  return {
    sample,
    delimiter: undefined,
    headerRows: best.lines,
    headerRow: header.row,
    headers,
    underGroups:
      best.lines === 2 ? namesUnderGroups(rows[best.at]!, rows[best.at + 1]!) : new Map<number, string>(),
    above: rows.slice(0, best.at).map((row) => row.cells.map(cellText).filter(Boolean).join(' ')),
    rows: table,
    comment:
      comment !== undefined && all.some((row) => isComment(row) && row.row > header.row)
        ? comment
        : undefined,
    totals,
    dayColumns: dayColumnsOf(header.cells),
    score: best.score + 4 * (table.length === 0 ? 0 : sameWidth / table.length),
  };
}

/** Headers that stand more than once get a number, by which reading knows them too. */
function numbered(headers: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const header of headers) counts.set(foldHeader(header), (counts.get(foldHeader(header)) ?? 0) + 1);
  const seen = new Map<string, number>();
  return headers.map((header) => {
    const name = foldHeader(header);
    if (name === '' || counts.get(name) === 1) return header;
    const at = (seen.get(name) ?? 0) + 1;
    seen.set(name, at);
    return `${header} (${at})`;
  });
}

const rowText = (row: RawRow): string => row.cells.map(cellText).join('\u0000');

function lastFilled(header: RawRow): number {
  return header.cells.findLastIndex((cell) => cellText(cell) !== '');
}

const COMMENTS = ['#', '//', ';;', '%', '--', '*'];

/** A mark at the start of some rows of one cell, and of no others. */
function commentOf(rows: readonly RawRow[]): string | undefined {
  return COMMENTS.find((mark) => {
    const marked = rows.filter((row) => cellText(row.cells[0]).startsWith(mark));
    return (
      marked.length > 0 &&
      marked.length < rows.length / 2 &&
      marked.every((row) => !/^\S+$/.test(rowText(row).replaceAll('\u0000', '')) || row.cells.length <= 2)
    );
  });
}

export const isNumeric = (cell: Cell | undefined): boolean =>
  typeof cell === 'number' ||
  (typeof cell === 'string' && /^[+\-\u2212]?\d[\d.,' \u00a0\u202f]*(?:e[+-]?\d+)?$/i.test(cell.trim()));

export const isTyped = (cell: Cell | undefined): boolean =>
  cell instanceof WallDate ||
  typeof cell === 'number' ||
  (typeof cell === 'string' && (isNumeric(cell) || looksLikeTime(cell.trim())));

/** How much a row looks like the header of what is below it. */
function headerScore(header: RawRow, below: readonly RawRow[], vocabulary: Vocabulary): number {
  const filled = header.cells
    .slice(0, MOST_COLUMNS)
    .map((cell, at) => ({ cell, at }))
    .filter(({ cell }) => cellText(cell) !== '');
  if (filled.length < 2 || below.length === 0) return 0;
  const days = dayColumnsOf(header.cells);
  if (days.length >= LEAST_DAYS) {
    const others = filled.filter(({ at }) => !days.includes(at));
    return others.some(({ cell }) => !isTyped(cell)) ? 8 + days.length / 2 : 0;
  }
  const texts = filled.filter(({ cell }) => !isTyped(cell));
  if (texts.length < filled.length * 0.8) return 0;
  const known = texts.filter(({ cell }) =>
    vocabulary.headerOf(withoutMeasure(cellText(cell)), NOTHING_BESIDE).some(({ score }) => score >= 0.7),
  ).length;
  const typed = filled.filter(({ at }) => {
    const cells = below.map((row) => row.cells[at]).filter((cell) => cellText(cell) !== '');
    return cells.length > 0 && cells.filter(isTyped).length > cells.length / 2;
  }).length;
  // A column that holds something has a name: a row that leaves some of them blank is the lower part of a header, or none.
  const width = Math.max(...below.map(({ cells }) => cells.length));
  let nameless = 0;
  for (let at = 0; at < Math.min(width, MOST_COLUMNS); at++)
    if (
      cellText(header.cells[at]) === '' &&
      below.filter((row) => cellText(row.cells[at]) !== '').length > below.length / 2
    )
      nameless++;
  const distinct = new Set(filled.map(({ cell }) => cellText(cell).toLowerCase())).size / filled.length;
  return Math.max(0, (2 * known + typed + Math.min(filled.length, 10) / 5) * distinct - 3 * nameless);
}

/**
 * Whether the row after this one belongs to the header: it holds texts (measures, lower headings) where the columns hold numbers and times further down, or fills
 * cells that the upper row leaves empty.
 */
function isSecondLine(rows: readonly RawRow[], at: number): boolean {
  const upper = rows[at]!;
  const lower = rows[at + 1];
  const below = rows.slice(at + 2, at + 22);
  if (!lower || below.length === 0) return false;
  if (upper.cells.filter((cell) => cellText(cell) !== '').length < 2) return false;
  const filled = lower.cells
    .map((cell, index) => ({ cell, index }))
    .filter(({ cell }) => cellText(cell) !== '');
  if (filled.length < 2 || filled.some(({ cell }) => isTyped(cell))) return false;
  const overNumbers = filled.filter(({ index }) => {
    const cells = below.map((row) => row.cells[index]).filter((cell) => cellText(cell) !== '');
    return cells.length > 0 && cells.filter(isTyped).length > cells.length / 2;
  });
  return overNumbers.length >= 2;
}

/** Positions of header cells that are days one after the other: 1, 2, 3 … or dates. */
function dayColumnsOf(cells: readonly Cell[]): number[] {
  const days = cells.map((cell) =>
    cell instanceof WallDate ? Math.floor(cell.wallMs / 86_400_000) : (dayNumber(cell) ?? dateNumber(cell)),
  );
  let best: number[] = [];
  let run: number[] = [];
  for (const [at, day] of days.entries()) {
    const last = run.at(-1);
    if (day !== undefined && last === at - 1 && days[last] !== undefined && day - days[last]! === 1)
      run.push(at);
    else run = day === undefined ? [] : [at];
    if (run.length > best.length) best = [...run];
  }
  return best.length >= LEAST_DAYS ? best : [];
}

/** A header such as 03.03.2025 or 2025-03-03, as a number that grows by one a day inside a month. */
function dateNumber(cell: Cell): number | undefined {
  const text = cellText(cell);
  const iso = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (iso) return Math.floor(Date.UTC(Number(iso[1]), Number(iso[2]) - 1, Number(iso[3])) / 86_400_000);
  const named = /^(\d{1,2})[-. /]{1,2}(\p{L}{3,10}\.?)[-. /]{1,2}(\d{2,4})$/u.exec(text);
  const month = named ? monthOfName(named[2]!) : undefined;
  if (named && month !== undefined) {
    const year = named[3]!.length === 2 ? 2000 + Number(named[3]) : Number(named[3]);
    return Math.floor(Date.UTC(year, month - 1, Number(named[1])) / 86_400_000);
  }
  const dayFirst = /^(\d{1,2})[./](\d{1,2})[./](\d{4})$/.exec(text);
  if (!dayFirst) return undefined;
  const [, a, b, year] = dayFirst.map(Number) as [number, number, number, number];
  return Math.floor(Date.UTC(year, b - 1, a) / 86_400_000);
}

const filledCells = (row: RawRow): number => row.cells.filter((cell) => cellText(cell) !== '').length;

/** A column in which few rows hold a word for a total and little else stands beside it. */
function totalsOf(
  rows: readonly RawRow[],
  headers: readonly string[],
  vocabulary: Vocabulary,
): FoundTable['totals'] {
  const counts = rows.map(filledCells).sort((a, b) => a - b);
  const usual = counts[counts.length >> 1] ?? 0;
  for (const [at, header] of headers.slice(0, TOTALS_WITHIN).entries()) {
    if (header === '') continue;
    const marked = rows.filter((row) => vocabulary.isTotal(cellText(row.cells[at])));
    // A row as full as the others is a record, whatever its words: "media" is a mean in one language and a load in another.
    if (marked.some((row) => filledCells(row) > usual * 0.75)) continue;
    if (marked.length > 0 && marked.length <= Math.max(3, rows.length * 0.1))
      return { header, texts: [...new Set(marked.map((row) => cellText(row.cells[at])))] };
  }
  return undefined;
}
