import type { FieldHolds } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import type { AnyRecord, Draft, TimeChoices } from './draft.ts';
import { FileTally } from './file-tally.ts';
import type { FileRead, Problem } from './reading.ts';

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
 * @param problems list to which the steps after reading add
 */
export function unpackDrafts(
  of: FileColumns,
  sequence: number,
  problems: Problem[],
): { tally: FileTally; drafts: Draft[] } {
  const tally = FileTally.goOn(of.read, problems);
  const { source, file, sheet } = of.read;
  const choices = new Map(of.choices);
  const drafts: Draft[] = [];
  for (let index = 0; index < of.count; index++) {
    const record = {} as AnyRecord;
    for (const [name, column] of of.columns) {
      const value = valueAt(column, index);
      if (value !== undefined) record[name] = value;
    }
    record.origin = { source, file, sheet, row: of.rows[index]! };
    drafts.push({ record, tally, sequence: sequence + index, choices: choices.get(index) });
  }
  return { tally, drafts };
}

function valueAt(column: Column, index: number): unknown {
  if (column.type === 'words') {
    const code = column.codes[index]!;
    return code < 0 ? undefined : column.words[code];
  }
  const value = column.values[index]!;
  if (column.type === 'number') return Number.isNaN(value) ? undefined : value;
  return value < 0 ? undefined : value === 1;
}
