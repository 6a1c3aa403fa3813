import {
  Column as ArrowColumn,
  batchType,
  columnFromArray,
  dictionary,
  float64,
  int8,
  int16,
  int32,
  type Table,
  tableFromColumns,
  tableFromIPC,
  tableToIPC,
  utf8,
} from '@uwdata/flechette';
import { type FieldHolds, recordFields } from '../../site/records.ts';
import type { RecordKind } from '../../site/vocabulary.ts';
import type { TimeChoices } from '../draft.ts';
import { type Column, columnType, type FileColumns } from '../file-columns.ts';
import type { FileRead, Problem } from '../reading.ts';

/** What an Arrow file holds beside its columns, as text of its schema. */
interface About {
  kind: RecordKind;
  read: FileRead;
  problems: Problem[];
  choices: [number, TimeChoices][];
  /** The columns that any record has, and what each holds, in their order. */
  types: [string, Column['type']][];
}

/** Name of the column with each record's row in its file. */
const ROW = 'row';

/**
 * What one source made of one file, as an Arrow file (IPC format): a column for each field of the kind, whether or not a record has it, and one for the row in the export.
 * Codes of words take as many bytes as they need. A number that is not there is NaN, a yes or no that is not there is -1, a text that is not there is null. Counts and problems stand in the
 * metadata of the schema, under `reading`.
 */
export function toArrow(of: FileColumns): Uint8Array {
  const columns: Record<string, ArrowColumn<unknown>> = {
    [ROW]: rowColumn(of.rows),
  };
  const held = new Map(of.columns);
  for (const { name, meta } of recordFields(of.kind))
    columns[name] = arrowColumn(held.get(name) ?? emptyColumn(meta.holds, of.count));
  columns.time_mark = arrowColumn(held.get('time_mark')!);
  const table = tableFromColumns(columns);
  const about: About = {
    kind: of.kind,
    read: of.read,
    problems: of.problems,
    choices: of.choices,
    types: of.columns.map(([name, { type }]) => [name, type]),
  };
  table.schema.metadata = new Map([['reading', JSON.stringify(about)]]);
  const bytes = tableToIPC(table, { format: 'file' });
  if (!bytes) throw new Error('an Arrow file must have bytes');
  return bytes;
}

function emptyColumn(holds: FieldHolds, count: number): Column {
  const type = columnType(holds);
  if (type === 'number') return { type, values: new Float64Array(count).fill(Number.NaN) };
  if (type === 'yes_no') return { type, values: new Int8Array(count).fill(-1) };
  return { type, codes: new Int32Array(count).fill(-1), words: [] };
}

/** Rows of a file, which has fewer than two thousand million lines. */
const rowColumn = (rows: Float64Array): ArrowColumn<unknown> =>
  rows.length > 0
    ? (columnFromArray(Int32Array.from(rows)) as ArrowColumn<unknown>)
    : columnFromArray(rows, int32());

function arrowColumn(column: Column): ArrowColumn<unknown> {
  if (column.type === 'words') return wordColumn(column);
  const { type, values } = column;
  // A column that is made of an array without its type takes the array as it is; one of no values would have no type.
  if (values.length > 0) return columnFromArray(values) as ArrowColumn<unknown>;
  return columnFromArray(values, type === 'number' ? float64() : int8());
}

/** Arrays for codes of few, more and many words. */
const NARROW = [Int8Array, int8] as const;
const MIDDLE = [Int16Array, int16] as const;
const WIDE = [Int32Array, int32] as const;

/** Codes and words as they are, without a search for each word. */
function wordColumn({ codes, words }: Extract<Column, { type: 'words' }>): ArrowColumn<unknown> {
  const text = utf8();
  const [Codes, codeType] = words.length <= 2 ** 7 ? NARROW : words.length <= 2 ** 15 ? MIDDLE : WIDE;
  const type = dictionary(text, codeType());
  if (codes.length === 0) return columnFromArray([], type);
  const validity = new Uint8Array((codes.length + 7) >> 3);
  const values = new Codes(codes.length);
  let nullCount = 0;
  for (let index = 0; index < codes.length; index++) {
    const code = codes[index]!;
    if (code < 0) nullCount++;
    else {
      values[index] = code;
      validity[index >> 3]! |= 1 << (index & 7);
    }
  }
  const Batch = batchType(type, {}) as new (of: object) => DictionaryBatch;
  const batch = new Batch({
    length: codes.length,
    nullCount,
    type,
    validity: nullCount > 0 ? validity : new Uint8Array(0),
    values,
  });
  // A dictionary of no words would be none.
  batch.setDictionary(columnFromArray(words.length > 0 ? words : [''], text));
  return new ArrowColumn([batch], type);
}

type DictionaryBatch = ArrowColumn<unknown>['data'][number] & {
  setDictionary(of: ArrowColumn<unknown>): void;
};

/**
 * What {@link toArrow} was given.
 *
 * @throws Error where the bytes are no such file
 */
export function fromArrow(bytes: Uint8Array): FileColumns {
  const table = tableFromIPC(bytes);
  const about = JSON.parse(table.schema.metadata?.get('reading') ?? 'null') as About;
  const count = table.numRows;
  const columns = about.types.map(([name, type]): [string, Column] => {
    if (type === 'words') return [name, wordsOf(table, name)];
    const values = valuesOf(table, name);
    return type === 'yes_no'
      ? [name, { type, values: new Int8Array(values) }]
      : [name, { type, values: new Float64Array(values) }];
  });
  return {
    kind: about.kind,
    read: about.read,
    problems: about.problems,
    count,
    rows: new Float64Array(valuesOf(table, ROW)),
    columns,
    choices: about.choices,
  };
}

/** The values of a column without nulls; its batch may be longer than the column. */
function valuesOf(table: Table, name: string): ArrayLike<number> {
  const batch = table.getChild(name).data[0];
  return batch ? (batch.values as Float64Array | Int8Array).subarray(0, batch.length) : [];
}

function wordsOf(table: Table, name: string): Column {
  const batch = table.getChild(name).data[0] as unknown as
    | {
        length: number;
        nullCount: number;
        values: Int32Array;
        validity: Uint8Array;
        dictionary: { toArray(): string[] };
      }
    | undefined;
  if (!batch) return { type: 'words', codes: new Int32Array(0), words: [] };
  const codes = new Int32Array(batch.values.subarray(0, batch.length));
  if (batch.nullCount > 0)
    for (let index = 0; index < codes.length; index++)
      if (!((batch.validity[index >> 3]! >> (index & 7)) & 1)) codes[index] = -1;
  return { type: 'words', codes, words: Array.from(batch.dictionary.toArray()) };
}
