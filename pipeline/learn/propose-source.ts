import { nameUnpacked } from '../ingest/archives.ts';
import type { RawRow } from '../ingest/cell.ts';
import { looksPersonal } from '../ingest/personal-columns.ts';
import { tableName } from '../ingest/reading.ts';
import { recordFields } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import { doubtKind } from './doubt-kind.ts';
import { wordList } from './field-concepts.ts';
import type { FieldMatch } from './field-match.ts';
import type { FoundTable } from './find-table.ts';
import { patternsOf, type TableGroup } from './group-files.ts';
import { certain, type Guess, leastSure, likely } from './guess.ts';
import { guessDecimalMark } from './guess-numbers.ts';
import { mapWords, type ProposedWord } from './map-words.ts';
import { COMMON, guessKind, type KindMatch, matchKinds } from './match-fields.ts';
import { missingFields, sheetsOf, starParts } from './missing-fields.ts';
import { type ColumnProfile, isDates, profileColumn } from './profile-column.ts';
import type { ProposedColumn, ProposedSource } from './proposal.ts';
import { proposeMeasures } from './propose-measures.ts';
import { proposeWide } from './propose-wide.ts';
import { SAMPLE } from './read-sample.ts';
import type { Vocabulary } from './vocabulary.ts';

/** Names of units that are listed at most. */
const MOST_UNITS = 200;

/**
 * Proposes how the tables of a group are to be read: kind, columns, measures, dates, words. Undefined where they hold no record of a kind that is known.
 *
 * @param all all files that were found, so that a pattern means no others
 */
export function proposeSource(
  { tables, files }: TableGroup,
  all: readonly string[],
  vocabulary: Vocabulary,
): ProposedSource | undefined {
  const [first] = tables;
  if (!first) return undefined;
  const rows = tables.flatMap((table) => table.rows).slice(0, SAMPLE.together);
  const days = new Set(first.dayColumns);
  const columns = first.headers
    .map((header, at) => ({ header, at }))
    .filter(({ header, at }) => !days.has(at) && (header !== '' || (days.size > 0 && at === 0)))
    .map(({ header, at }) => profileColumn(header, at, rows, first.underGroups.get(at)));
  const titles = [
    ...first.above,
    ...files.map(baseName),
    ...tables.flatMap(({ sample }) => sample.sheet ?? []),
  ];
  const wide = days.size > 0;
  const kinds = wide ? wideKinds(columns, titles, vocabulary) : matchKinds(columns, titles, vocabulary);
  const kind = wide
    ? likely<RecordKind>('cleanings', 'a column a day with marks is how cleaning is kept on paper')
    : guessKind(kinds);
  const best = kinds[0];
  if (!best || (kind.confidence === 'open' && best.score <= 2)) return undefined;
  const looked: Looked = { tables, files, first, rows, columns, titles, wide, all, vocabulary };
  const source = sourceOf(best, kind, looked);
  if (source.kind.confidence !== 'open') return source;
  const others = kinds.filter((one) => one !== best && source.kind.options.includes(one.kind));
  return {
    ...source,
    asKind: new Map(others.map((one) => [one.kind, sourceOf(one, source.kind, looked)])),
  };
}

/** What is seen of a group of tables before it is decided what they hold. */
interface Looked extends TableGroup {
  first: FoundTable;
  rows: readonly RawRow[];
  columns: readonly ColumnProfile[];
  titles: readonly string[];
  wide: boolean;
  all: readonly string[];
  vocabulary: Vocabulary;
}

/** The tables read as records of one kind. */
function sourceOf(
  best: KindMatch,
  kind: Guess<RecordKind>,
  { tables, files, first, rows, columns, titles, wide, all, vocabulary }: Looked,
): ProposedSource {
  const { patterns, star } = patternsOf(files, all);
  const names = sheetsOf(tables);
  const proposedWide = wide ? proposeWide(first, tables, star, vocabulary) : undefined;
  const fixed = best.matches
    .map((match) => asSureAsItsKind(match, kind, wide))
    .filter(({ field }) => !wide || field === 'unit' || field === 'task' || field === 'note');
  const mark = guessDecimalMark(numericTexts(columns));
  const used = new Set(fixed.flatMap((match) => match.columns));
  const found: ProposedColumn[] = fixed.map((match) => toColumn(best.kind, match));
  proposeMeasures(fixed, found, mark.value ?? '.');
  sameOrder(found);
  const lacking = missingFields(best.kind, found, wide, { star, names, tables, titles, vocabulary });
  const words: Record<string, readonly ProposedWord[]> = {};
  for (const match of fixed) {
    const list = wordsOf(best.kind, match, vocabulary);
    if (list) words[match.field] = list;
  }
  if (proposedWide) words.state = proposedWide.marks;
  const unitRows = unitsOf(fixed, lacking, star, tables);
  const told = {
    titles,
    read: columns.filter((column) => used.has(column)).map(({ header }) => header),
    unread: columns.filter((column) => !used.has(column)).map(({ header }) => header),
  };
  return {
    name: '',
    kind: doubtKind(kind, told, found, words.kind ?? [], vocabulary),
    files: patterns,
    found: tables.map(({ sample }) => tableName(sample)),
    workbook: first.delimiter === undefined,
    delimiter: first.delimiter,
    encoding: tables.find(({ sample }) => !sample.ascii)?.sample.encoding ?? first.sample.encoding,
    sheet: names.sheet,
    sheets: names.sheets,
    headerRows: first.headerRows,
    headerRow: first.headerRow,
    comment: first.comment,
    decimalMark: mark,
    columns: [...found, ...lacking],
    words,
    skip: skipOf(tables),
    wide: proposedWide?.wide,
    unread: columns
      .filter((column) => !used.has(column))
      .map(({ header, samples, texts }) => ({ header, samples, personal: looksPersonal(header, texts) })),
    units: [...unitRows.keys()],
    unitRows,
    rows: tables.reduce((sum, table) => sum + table.rows.length, 0),
    cut:
      tables.some(({ sample }) => sample.cut) ||
      rows.length < tables.reduce((sum, table) => sum + table.rows.length, 0),
    language: languageOf(columns, vocabulary),
  };
}

/** A column is not surer than the kind of record whose field it is; what most kinds have is. */
function asSureAsItsKind(match: FieldMatch, kind: Guess<RecordKind>, wide: boolean): FieldMatch {
  if (wide || kind.confidence === 'certain' || COMMON.has(match.field) || match.confidence !== 'certain')
    return match;
  return {
    ...match,
    confidence: leastSure(match.confidence, 'likely'),
    why: `${match.why}; the kind of record is not sure`,
  };
}

/** Names of units with their rows: from their column, or from the names of files or sheets. */
function unitsOf(
  fixed: readonly FieldMatch[],
  lacking: readonly ProposedColumn[],
  star: string | undefined,
  tables: readonly FoundTable[],
): Map<string, number> {
  const from = lacking.find(({ field }) => field === 'unit')?.from;
  const nameOf =
    from && 'file_name' in from && star !== undefined
      ? (table: FoundTable) => starParts(star, [table])[0]!
      : from && 'sheet_name' in from
        ? ({ sample }: FoundTable) => sample.sheet!
        : undefined;
  if (nameOf) {
    const counts = new Map<string, number>();
    for (const table of tables)
      counts.set(nameOf(table), (counts.get(nameOf(table)) ?? 0) + table.rows.length);
    return counts;
  }
  const column = fixed.find(({ field }) => field === 'unit')?.columns[0];
  return new Map([...(column?.words ?? [])].slice(0, MOST_UNITS));
}

export const baseName = (file: string): string =>
  nameUnpacked(file.slice(file.lastIndexOf('/') + 1))
    .replace(/\.[^.]*$/, '')
    .replace(/[-_]+/g, ' ');

function toColumn(kind: RecordKind, match: FieldMatch): ProposedColumn {
  const field = recordFields(kind).find(({ name }) => name === match.field)!;
  return {
    field: match.field,
    required: field.required,
    from: { headers: match.columns.map(({ header }) => header) },
    match: { confidence: match.confidence, why: match.why },
    measure: undefined,
    dates: field.meta.holds === 'instant' ? datesOf(match.columns) : undefined,
    samples: match.columns.length === 1 ? match.columns[0]!.samples : joinedSamples(match.columns),
  };
}

function joinedSamples([a, b]: readonly ColumnProfile[]): string[] {
  return a!.texts.slice(0, 3).map((text, at) => `${text} ${b!.texts[at] ?? ''}`.trim());
}

/**
 * The date pattern of one column, or of a date column and a time column joined with a blank. Undefined: date cells of a workbook need none, alone or with cells of time;
 * with a time of day as text they are joined as ISO dates.
 */
function datesOf([date, clock]: readonly ColumnProfile[]): Guess<string> | undefined {
  const isCells = date!.dateCells > 0.5;
  const time = clock?.timeOfDay;
  const typed = date!.dates ?? (isCells ? undefined : date!.serial);
  const own = isCells && time !== undefined && clock!.clockCells <= 0.5 ? withCells(typed) : typed;
  if (!own || time === undefined) return own;
  const join = (patterns: string): string =>
    patterns
      .split(' | ')
      .map((pattern) => `${pattern} ${time}`)
      .join(' | ');
  return {
    ...own,
    value: own.value === undefined ? undefined : join(own.value),
    options: own.options.map(join),
  };
}

/** The pattern by which cells of dates are joined with texts, and that of dates in the same column which are typed as text. */
function withCells(typed: Guess<string> | undefined): Guess<string> {
  const cells = 'yyyy-MM-dd';
  if (!typed) return certain(cells, 'cells of dates with the time of day as text');
  const both = (pattern: string): string => (pattern === cells ? cells : `${cells} | ${pattern}`);
  return {
    ...typed,
    value: typed.value === undefined ? undefined : both(typed.value),
    options: typed.options.map(both),
  };
}

/** A column that proves the order of day and month speaks for the others of its table. */
function sameOrder(columns: readonly ProposedColumn[]): void {
  const orderOf = (pattern: string): string => pattern.replace(/[^yMd]/g, '').replace(/(.)\1+/g, '$1');
  const proved =
    columns.find(({ dates }) => dates?.value !== undefined && dates.confidence === 'certain') ??
    columns.find(({ dates }) => dates?.value !== undefined && dates.confidence === 'likely');
  if (!proved) return;
  const order = orderOf(proved.dates!.value!);
  for (const column of columns) {
    if (column.dates?.confidence !== 'open') continue;
    const same = column.dates.options.find((option) => orderOf(option) === order);
    if (same !== undefined)
      column.dates = likely(same, `as ${proved.field}, which speaks for it`, column.dates.options);
  }
}

function* numericTexts(columns: readonly ColumnProfile[]): Generator<string> {
  for (const column of columns)
    if (column.numeric >= 0.8 && !isDates(column) && column.timeOfDay === undefined) yield* column.texts;
}

function wordsOf(
  kind: RecordKind,
  { field, columns }: FieldMatch,
  vocabulary: Vocabulary,
): ProposedWord[] | undefined {
  const { schema, meta } = recordFields(kind).find(({ name }) => name === field)!;
  if (wordList(kind, field) === undefined) return undefined;
  const options =
    meta.holds === 'yes_no' ? ['yes', 'no'] : (schema as unknown as { options: readonly string[] }).options;
  return mapWords(kind, field, columns[0]!, options, vocabulary);
}

function skipOf(tables: readonly FoundTable[]): Record<string, string[]> {
  const skip: Record<string, string[]> = Object.create(null);
  for (const { totals } of tables)
    if (totals) skip[totals.header] = [...new Set([...(skip[totals.header] ?? []), ...totals.texts])];
  return { ...skip };
}

function wideKinds(
  columns: readonly ColumnProfile[],
  titles: readonly string[],
  vocabulary: Vocabulary,
): KindMatch[] {
  const all = matchKinds(columns, titles, vocabulary);
  const cleanings = all.find(({ kind }) => kind === 'cleanings')!;
  // The column of a paper log that names the rows often has no header: it names units, or tasks where its words are known as such.
  if (cleanings.matches.some(({ field }) => field === 'unit' || field === 'task')) return [cleanings];
  const [column] = columns;
  if (!column) return [cleanings];
  const tasks = [...column.words.keys()].filter(
    (text) => (vocabulary.word('task', text)[0]?.score ?? 0) >= 0.6,
  ).length;
  const field = tasks > column.words.size / 2 ? 'task' : 'unit';
  const match: FieldMatch = {
    field,
    columns: [column],
    confidence: 'likely',
    why: 'the first column names the rows',
    score: 0.6,
  };
  return [{ ...cleanings, matches: [...cleanings.matches, match] }];
}

/** The language in which most of the headers are known. */
function languageOf(columns: readonly ColumnProfile[], vocabulary: Vocabulary): string | undefined {
  const counts = new Map<string, number>();
  for (const { header, underGroup } of columns) {
    const best = vocabulary.header(underGroup ?? header);
    const top = best[0]?.score ?? 0;
    for (const language of new Set(
      best.filter(({ score }) => score >= top && score >= 0.9).map(({ language }) => language),
    ))
      counts.set(language, (counts.get(language) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}
