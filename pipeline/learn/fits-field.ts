import type { recordFields } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import { wordList } from './field-concepts.ts';
import { type ColumnProfile, isDates } from './profile-column.ts';
import type { Vocabulary } from './vocabulary.ts';

export type Field = ReturnType<typeof recordFields>[number];

/** Whether the cells of a column, and the unit of measure in its name, can be what the field holds. A column of blanks fits anything. */
export function fits(kind: RecordKind, field: Field, column: ColumnProfile, vocabulary: Vocabulary): boolean {
  if (column.texts.length === 0) return !field.required;
  const { said } = column;
  const number = column.numeric >= 0.8 && column.dates === undefined;
  switch (field.meta.holds) {
    case 'instant':
      return isDates(column) || column.serial !== undefined;
    case 'duration':
      if (said.duration === undefined && (said.pressure !== undefined || said.temperature !== undefined))
        return false;
      return column.clocks.length > 0 || column.clockCells > 0.5 || column.numeric >= 0.8;
    case 'temperature':
      return number && said.pressure === undefined;
    case 'pressure':
      return number && said.temperature === undefined && !(said.duration && said.pressure === undefined);
    case 'leak_rate':
    case 'number':
      return number;
    case 'integer':
      return column.integer >= 0.8 && column.dates === undefined;
    case 'yes_no':
    case 'word': {
      if (isDates(column) || column.timeOfDay !== undefined) return false;
      if (column.words.size > 60 || (column.numeric > 0.8 && column.words.size > 4)) return false;
      return column.words.size <= 25 || knownShare(kind, field.name, column, vocabulary) >= 0.3;
    }
    default:
      return field.name === 'unit' || field.name === 'point'
        ? column.words.size <= 120 && !isDates(column) && !isMeasured(column)
        : !isDates(column);
  }
}

/** Lengths of time and readings with a unit of measure name nothing: "t_ster_s" is no sterilizer. */
const isMeasured = ({ clocks, said, numeric }: ColumnProfile): boolean =>
  clocks.length > 0 || (numeric >= 0.8 && (said.duration ?? said.pressure ?? said.temperature) !== undefined);

/** Share of the cells whose word is in the vocabulary. */
export function knownShare(
  kind: RecordKind,
  field: string,
  column: ColumnProfile,
  vocabulary: Vocabulary,
): number {
  const list = wordList(kind, field);
  if (list === undefined || column.texts.length === 0) return 0;
  let known = 0;
  for (const [word, count] of column.words)
    if ((vocabulary.word(list, word)[0]?.score ?? 0) >= 0.6) known += count;
  return known / column.texts.length;
}
