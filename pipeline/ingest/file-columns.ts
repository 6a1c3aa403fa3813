import type { FieldHolds } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import type { AnyRecord, Draft, TimeChoices } from './draft.ts';
import type { FileRead, Problem } from './reading.ts';
import type { PartTally } from './settlement.ts';

/** One field of many records. What a record does not have is NaN in numbers, -1 in the others. */
export type Column =
  | { type: 'number'; values: Float64Array }
  | { type: 'yes_no'; values: Int8Array }
  | { type: 'words'; codes: Int32Array; words: string[] };

/** What one source made of one file, in a form that is small and quickly handed from thread to thread. */
export interface FileColumns {
  kind: RecordKind;
  read: FileRead;
  problems: Problem[];
  /** Rows that became a record, in their order. */
  count: number;
  /** Row of each record in the file or sheet. */
  rows: Float64Array;
  columns: [string, Column][];
  /** Of the records with a wall time that occurs twice: place, and the readings of it. */
  choices: [number, TimeChoices][];
}

const NUMBERS: ReadonlySet<FieldHolds> = new Set([
  'instant',
  'duration',
  'temperature',
  'pressure',
  'leak_rate',
  'integer',
  'number',
]);

/** What kind of column holds a field. */
export function columnType(holds: FieldHolds): Column['type'] {
  if (NUMBERS.has(holds)) return 'number';
  return holds === 'yes_no' ? 'yes_no' : 'words';
}

/**
 * The drafts of one file, from its columns: with the fields of each record in the order of its schema.
 *
 * @param sequence place of the first of them in the order of source, file and row
 * @param wanted units whose records are asked for; left out: all records
 */
export function unpackDrafts(
  of: FileColumns,
  sequence: number,
  tally: PartTally,
  wanted?: ReadonlySet<string>,
): Draft[] {
  const { source, file, sheet } = of.read;
  const choices = new Map(of.choices);
  const isWanted = wanted && wantedRows(of, wanted);
  const drafts: Draft[] = [];
  for (let index = 0; index < of.count; index++) {
    if (isWanted && !isWanted(index)) continue;
    const record = {} as AnyRecord;
    for (const [name, column] of of.columns) {
      const value = valueAt(column, index);
      if (value !== undefined) record[name] = value;
    }
    record.origin = { source, file, sheet, row: of.rows[index]! };
    drafts.push({ record, tally, sequence: sequence + index, choices: choices.get(index) });
  }
  return drafts;
}

/** Which records are of wanted units. */
function wantedRows({ columns }: FileColumns, wanted: ReadonlySet<string>): (index: number) => boolean {
  const unit = columns.find(([name]) => name === 'unit')?.[1];
  if (unit?.type !== 'words') return () => false;
  const codes = new Set(unit.words.flatMap((word, code) => (wanted.has(word) ? [code] : [])));
  return (index) => codes.has(unit.codes[index]!);
}

/** The value of a field at a place; undefined where there is none. */
export function valueAt(column: Column, index: number): unknown {
  if (column.type === 'words') {
    const code = column.codes[index]!;
    return code < 0 ? undefined : column.words[code];
  }
  const value = column.values[index]!;
  if (column.type === 'number') return Number.isNaN(value) ? undefined : value;
  return value < 0 ? undefined : value === 1;
}
