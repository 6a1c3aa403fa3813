import { codeOf } from '../packed-rows.ts';
import { recordFields } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import type { RowFields, TimeChoices } from './draft.ts';
import { type Column, columnType, type FileColumns } from './file-columns.ts';

/** Values of one field as they come: numbers, or codes of words. */
interface Growing {
  name: string;
  type: Column['type'];
  values: number[];
  /** Code of each word, in the order in which they came. */
  codes: Map<string, number>;
  /** Whether any record has the field. */
  held: boolean;
}

/** Takes the records of one file, one by one, into columns; no record is kept. */
export class ColumnWriter {
  readonly #kind: RecordKind;
  readonly #columns: Growing[];
  readonly #rows: number[] = [];
  readonly #choices: [number, TimeChoices][] = [];

  constructor(kind: RecordKind) {
    this.#kind = kind;
    const fields = recordFields(kind).map(({ name, meta }) => ({ name, type: columnType(meta.holds) }));
    this.#columns = [...fields, { name: 'time_mark', type: 'words' as const }].map((field) => ({
      ...field,
      values: [],
      codes: new Map(),
      held: field.name === 'time_mark',
    }));
  }

  /** @param row of the record in the file or sheet */
  add(record: RowFields, row: number, choices: TimeChoices | undefined): void {
    if (choices) this.#choices.push([this.#rows.length, choices]);
    this.#rows.push(row);
    for (const column of this.#columns) addValue(column, record[column.name]);
  }

  /** Everything that was added. Fields that no record has get no column. */
  columns({ read, problems }: Pick<FileColumns, 'read' | 'problems'>): FileColumns {
    return {
      kind: this.#kind,
      read,
      problems,
      count: this.#rows.length,
      rows: Float64Array.from(this.#rows),
      columns: this.#columns.filter(({ held }) => held).map((column) => [column.name, columnOf(column)]),
      choices: this.#choices,
    };
  }
}

function addValue(column: Growing, value: unknown): void {
  if (value === undefined) {
    column.values.push(column.type === 'number' ? Number.NaN : -1);
    return;
  }
  column.held = true;
  column.values.push(column.type === 'words' ? codeOf(column.codes, value as string) : Number(value));
}

function columnOf({ type, values, codes }: Growing): Column {
  if (type === 'number') return { type, values: Float64Array.from(values) };
  if (type === 'yes_no') return { type, values: Int8Array.from(values) };
  return { type, codes: Int32Array.from(values), words: [...codes.keys()] };
}
