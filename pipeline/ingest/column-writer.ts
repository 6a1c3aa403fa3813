import { recordFields } from '../site/records.ts';
import type { RecordKind } from '../site/vocabulary.ts';
import type { RowFields, TimeChoices } from './draft.ts';
import { columnType, type FileColumns } from './file-columns.ts';
import { GrowingColumn } from './growing-column.ts';

/** Takes the records of one file, one by one, into columns; no record is kept. */
export class ColumnWriter {
  readonly #kind: RecordKind;
  readonly #columns: ReadonlyMap<string, GrowingColumn>;
  readonly #rows = new GrowingColumn('number');
  readonly #choices: [number, TimeChoices][] = [];
  #count = 0;

  constructor(kind: RecordKind) {
    this.#kind = kind;
    this.#columns = new Map([
      ...recordFields(kind).map(
        ({ name, meta }) => [name, new GrowingColumn(columnType(meta.holds))] as const,
      ),
      ['time_mark', new GrowingColumn('words')] as const,
    ]);
  }

  /** @param row of the record in the file or sheet */
  add(record: RowFields, row: number, choices: TimeChoices | undefined): void {
    const at = this.begin(row);
    if (choices) this.#choices.push([at, choices]);
    for (const [name, column] of this.#columns) {
      const value = record[name];
      if (value !== undefined) column.put(at, value);
    }
  }

  /**
   * Begins a record whose fields are put into their columns by the caller.
   *
   * @param row of the record in the file or sheet
   * @returns the record's place in each column
   */
  begin(row: number): number {
    const at = this.#count++;
    this.#rows.set(at, row);
    return at;
  }

  /** The column of a field of the kind, or of `time_mark`. */
  column(name: string): GrowingColumn {
    const column = this.#columns.get(name);
    if (!column) throw new Error(`${name} is no field of ${this.#kind}`);
    return column;
  }

  /** Everything that was added. Fields that no record has get no column. */
  columns({ read, problems }: Pick<FileColumns, 'read' | 'problems'>): FileColumns {
    const count = this.#count;
    const held = [...this.#columns].filter(([name, { isHeld }]) => isHeld || name === 'time_mark');
    return {
      kind: this.#kind,
      read,
      problems,
      count,
      rows: this.#rows.numbers(count),
      columns: held.map(([name, column]) => [name, column.column(count)]),
      choices: this.#choices,
    };
  }
}
