import { TIME_FIELD } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import { wordList } from './field-concepts.ts';
import type { FieldMatch } from './field-match.ts';
import { type Field, fits, knownShare } from './fits-field.ts';
import { type ColumnProfile, isDates } from './profile-column.ts';
import type { Meaning, Vocabulary } from './vocabulary.ts';

/** What the search by names has left: fields without a column, and columns that are used for none. */
export interface Rest {
  kind: RecordKind;
  fields: readonly Field[];
  matches: readonly FieldMatch[];
  columns: readonly ColumnProfile[];
  /** Columns that are taken; grows. */
  used: Set<ColumnProfile>;
  meanings: ReadonlyMap<ColumnProfile, readonly Meaning[]>;
  vocabulary: Vocabulary;
}

/** Fields whose column is found by what it holds, since its name does not say so: never more than likely. */
export function matchByContent(rest: Rest): FieldMatch[] {
  const found: FieldMatch[] = [];
  for (const find of [byWords, ownTime, ownUnit, ownCounter])
    found.push(...find({ ...rest, matches: [...rest.matches, ...found] }));
  return found;
}

/** Fields of words without a column by name: a column whose words are the field's own, where there is one such column. */
function byWords({ kind, fields, matches, columns, used, meanings, vocabulary }: Rest): FieldMatch[] {
  const found: FieldMatch[] = [];
  for (const field of fields) {
    const wanted = field.required || field.name === 'state' || field.name === 'reason';
    if (
      !wanted ||
      wordList(kind, field.name) === undefined ||
      matches.some((match) => match.field === field.name)
    )
      continue;
    const own = columns.filter(
      (column) =>
        !used.has(column) &&
        column.words.size >= 2 &&
        !meanings
          .get(column)!
          .some(({ key, score }) => (key === 'unread' || key === 'person') && score >= 0.9) &&
        fits(kind, field, column, vocabulary) &&
        knownShare(kind, field.name, column, vocabulary) >= 0.7,
    );
    const [column] = own;
    if (own.length !== 1 || !column) continue;
    used.add(column);
    const why = `its name does not say so, but most of its words are those of ${field.name}`;
    found.push({ field: field.name, columns: [column], confidence: 'likely', why, score: 0.6 });
  }
  return found;
}

const NOT_ITS_TIME: ReadonlySet<string> = new Set(['due', 'unread', 'entered_at']);

/** The record's own time without a column by name: the one column of dates that is left. */
function ownTime({ kind, fields, matches, columns, used, meanings }: Rest): FieldMatch[] {
  const field = TIME_FIELD[kind];
  if (matches.some((match) => match.field === field) || !fields.some(({ name }) => name === field)) return [];
  // A day for which something is planned is none on which it was done.
  const isElse = (column: ColumnProfile): boolean =>
    meanings.get(column)!.some(({ key, score }) => NOT_ITS_TIME.has(key) && score >= 0.6);
  const dated = columns.filter((column) => !used.has(column) && isDates(column) && !isElse(column));
  const [column] = dated;
  if (!column || dated.length > 1) return [];
  used.add(column);
  const why = `"${column.header}" is the one column of dates that is left`;
  return [{ field, columns: [column], confidence: 'likely', why, score: 0.6 }];
}

/** Names of units as they are on a door plate: a short word or two with a number or letter. */
const UNIT_NAME = /^(?=.*[\p{L}])(?=.*(?:\d|(?:^|[ -])\p{Lu}$))[\p{L}\p{N}][\p{L}\p{N} ._/-]{0,23}$/u;

/** The unit without a column by name: the one column left with few names that come again and again. */
function ownUnit({ kind, matches, columns, used, meanings }: Rest): FieldMatch[] {
  if (kind === 'water' || matches.some(({ field }) => field === 'unit')) return [];
  const named = columns.filter(
    (column) =>
      !used.has(column) &&
      !isDates(column) &&
      !meanings.get(column)!.some(({ score }) => score >= 0.6) &&
      column.words.size >= 2 &&
      column.words.size <= 40 &&
      column.texts.length >= 4 * column.words.size &&
      [...column.words.keys()].every((text) => UNIT_NAME.test(text)),
  );
  const [column] = named;
  if (!column || named.length > 1) return [];
  used.add(column);
  const why = `"${column.header}" holds few names that come again and again, as those of units do`;
  return [{ field: 'unit', columns: [column], confidence: 'likely', why, score: 0.6 }];
}

/** Share of the steps of a counter that go up by one; the rest are gaps. */
const COUNTS_UP = 0.8;

/** The cycle number without a column by name: the one column left whose numbers go up by one from cycle to cycle of each unit. */
function ownCounter({ kind, matches, columns, used }: Rest): FieldMatch[] {
  if (kind !== 'cycles' || matches.some(({ field }) => field === 'cycle_number')) return [];
  const units = matches.find(({ field }) => field === 'unit')?.columns[0]?.texts;
  const counting = columns.filter(
    (column) =>
      !used.has(column) && column.integer >= 0.95 && !isDates(column) && countsUp(column.texts, units),
  );
  const [column] = counting;
  if (!column || counting.length > 1) return [];
  used.add(column);
  const why = `the numbers of "${column.header}" go up by one from cycle to cycle`;
  return [{ field: 'cycle_number', columns: [column], confidence: 'likely', why, score: 0.6 }];
}

function countsUp(texts: readonly string[], units: readonly string[] | undefined): boolean {
  if (texts.length < 20 || (units !== undefined && units.length !== texts.length)) return false;
  const last = new Map<string, number>();
  let steps = 0;
  let ones = 0;
  for (const [at, text] of texts.entries()) {
    const unit = units?.[at] ?? '';
    const number = Number(text);
    const before = last.get(unit);
    if (before !== undefined) {
      steps++;
      // A list may run backwards in time.
      if (Math.abs(number - before) === 1) ones++;
    }
    last.set(unit, number);
  }
  return steps >= 10 && ones >= steps * COUNTS_UP;
}
