import { Fault } from '../cell.ts';
import type { ValueCodec } from '../codecs/value-codec.ts';
import type { FieldCheck } from '../field-check.ts';
import type { GrowingColumn } from '../growing-column.ts';
import { saysNoValue } from '../read-cell.ts';
import type { FieldReader } from '../read-fields.ts';
import type { CutRow } from './cut-row.ts';
import type { PlainField } from './plain-field.ts';

type FieldOfOneCell = Pick<FieldReader, 'required'> & {
  stretch: NonNullable<ValueCodec['stretch']>;
  cell: number;
};

/** A number in a cell of its own, read where it stands. */
export class NumberField implements PlainField {
  readonly #field: FieldOfOneCell;
  readonly #check: FieldCheck;
  readonly #column: GrowingColumn;
  #value = Number.NaN;

  constructor(field: FieldOfOneCell, check: FieldCheck, column: GrowingColumn) {
    this.#field = field;
    this.#check = check;
    this.#column = column;
  }

  read(row: CutRow): boolean {
    const { stretch, cell, required } = this.#field;
    const start = row.starts[cell]!;
    const end = row.ends[cell]!;
    this.#value = Number.NaN;
    if (start === end) return !required;
    if (row.hasBytes(cell)) return false;
    const value = stretch(row.text, start, end);
    if (value instanceof Fault) return !required && saysNoValue(row.text.slice(start, end));
    this.#value = value;
    return this.#check(value) === undefined;
  }

  put(at: number): void {
    if (!Number.isNaN(this.#value)) this.#column.set(at, this.#value);
  }
}
