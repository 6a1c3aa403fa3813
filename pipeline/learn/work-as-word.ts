import type { RecordKind } from '../site/vocabulary.ts';
import type { FieldMatch } from './field-match.ts';
import { type Field, fits, knownShare } from './fits-field.ts';
import type { ColumnProfile } from './profile-column.ts';
import type { Meaning, Vocabulary } from './vocabulary.ts';

/** The field that says what work was done, by kind of record: sheets often keep it under a name that elsewhere means a remark ("What was done"). */
const WORK_FIELD: Partial<Record<RecordKind, string>> = { cleanings: 'task', service: 'kind' };

/** Names of columns under which it may stand. */
const LIKE_A_NOTE: ReadonlySet<string> = new Set(['note', 'work', 'task', 'action', 'service_kind']);

/** Different texts that can be asked about one by one, and how often each comes at least, on the average. */
const FEW = { words: 20, times: 4, letters: 40 } as const;

/** Share of the rows whose word must be known, where the name of the column does not speak of work; and where it speaks of what was done or not. */
const KNOWN_FROM = 0.25;
const MOST = 0.5;

/**
 * Where no column says which work was done: a column that by its name is a note (or says whether work was done), and whose few short texts come again and again. It is taken for the work, likely and no
 * more; what of its words is not known is asked word by word, instead of once for all rows.
 *
 * @param matches fields found so far
 * @param used columns that are taken; grows
 */
export function workAsWord(
  kind: RecordKind,
  fields: readonly Field[],
  matches: readonly FieldMatch[],
  columns: readonly ColumnProfile[],
  used: Set<ColumnProfile>,
  meanings: ReadonlyMap<ColumnProfile, readonly Meaning[]>,
  vocabulary: Vocabulary,
): FieldMatch[] {
  const field = fields.find(({ name }) => name === WORK_FIELD[kind]);
  if (!field || matches.some((match) => match.field === field.name)) return [...matches];
  const columnOf = (name: string) => matches.find((match) => match.field === name)?.columns[0];
  const [noted, stated] = [columnOf('note'), columnOf('state')];
  // Each visit of a service is told in other words.
  const isFreeWork = ({ words }: ColumnProfile, known: number): boolean =>
    kind === 'service' && known >= MOST && words.size <= FEW.words;
  const found = columns
    .filter((column) => column === noted || column === stated || !used.has(column))
    .flatMap((column) => {
      const meant = meanings.get(column)!;
      const means = (...keys: string[]): boolean =>
        meant.some(({ key, score }) => keys.includes(key) && score >= 0.7);
      const known = knownShare(kind, field.name, column, vocabulary);
      // "Done" above "Strainer cleaned" and "Chamber washed" says which work, not whether.
      const isNamed =
        column === stated
          ? known >= MOST && known > knownShare(kind, 'state', column, vocabulary)
          : means(...LIKE_A_NOTE) && (known >= KNOWN_FROM || means('work', 'task'));
      const isWork =
        isNamed &&
        !means('person') &&
        (comesAgain(column) || isFreeWork(column, known)) &&
        fits(kind, field, column, vocabulary);
      return isWork ? { column, known } : [];
    })
    .sort((a, b) => b.known - a.known || a.column.at - b.column.at);
  const [best] = found;
  if (!best) return [...matches];
  used.add(best.column);
  const isNote = best.column === noted && kind === 'service';
  const work: FieldMatch = {
    field: field.name,
    columns: [best.column],
    confidence: 'likely',
    why: comesAgain(best.column)
      ? `"${best.column.header}" may mean something else, but its few texts come again and again, as words of ${field.name} do`
      : `"${best.column.header}" is a remark, but most of its texts speak of ${field.name}`,
    score: 0.6,
  };
  // What was mended says more than its kind, so it stays a note as well.
  return [...matches.filter(({ columns: [column] }) => isNote || column !== best.column), work];
}

/** Whether few short texts fill the column. */
const comesAgain = ({ words, texts }: ColumnProfile): boolean =>
  words.size >= 1 &&
  words.size <= FEW.words &&
  texts.length >= FEW.times * words.size &&
  [...words.keys()].every((text) => text.length <= FEW.letters);
