import { Fault } from '../cell.ts';
import type { ReadInstant } from '../codecs/instant.ts';
import type { FieldCheck } from '../field-check.ts';
import type { GrowingColumn } from '../growing-column.ts';
import { saysNoValue } from '../read-cell.ts';
import type { FieldReader } from '../read-fields.ts';
import type { CutRow } from './cut-row.ts';
import type { PlainField } from './plain-field.ts';
import type { PlainText } from './plain-text.ts';

type FieldOfInstants = Extract<FieldReader, { value: undefined }>;

/** An instant. Wall times that occur twice or never are not plain: what they mean rests on the record's other times. */
export class InstantField implements PlainField {
  readonly #field: FieldOfInstants;
  readonly #check: FieldCheck;
  readonly #column: GrowingColumn;
  readonly #text: PlainText;
  /** What was read last; undefined where the cell was blank. */
  value: ReadInstant | undefined;

  constructor(field: FieldOfInstants, check: FieldCheck, column: GrowingColumn, text: PlainText) {
    this.#field = field;
    this.#check = check;
    this.#column = column;
    this.#text = text;
  }

  read(row: CutRow): boolean {
    const { required } = this.#field;
    this.value = undefined;
    const read = this.#instantOf(row);
    if (read === 'not plain') return false;
    if (read === undefined) return !required;
    this.value = read;
    if (read.later !== undefined || read.mark === 'shifted') return false;
    return this.#check(read.at) === undefined;
  }

  #instantOf(row: CutRow): ReadInstant | undefined | 'not plain' {
    const { instant, positions, constant } = this.#field;
    const [cell] = positions;
    if (positions.length === 1 && !row.hasBytes(cell!)) {
      const start = row.starts[cell!]!;
      const end = row.ends[cell!]!;
      if (start === end) return undefined;
      const read = instant(row.text, start, end);
      return read instanceof Fault ? this.#without(row.text.slice(start, end)) : read;
    }
    const text = constant ?? this.#textOf(row);
    if (text === undefined) return 'not plain';
    const trimmed = text.trim();
    if (trimmed === '') return undefined;
    const read = instant(trimmed);
    return read instanceof Fault ? this.#without(trimmed) : read;
  }

  /** The text of the field's cells; undefined where it isn't plain. */
  #textOf(row: CutRow): string | undefined {
    const { positions } = this.#field;
    const bytes = row.charactersOf(positions);
    if (!positions.some((cell) => row.hasBytes(cell))) return bytes;
    if (positions.length > 1) return undefined;
    const text = this.#text.decode(bytes);
    return this.#text.isSuspect(text) ? undefined : text;
  }

  #without(text: string): undefined | 'not plain' {
    return saysNoValue(text) ? undefined : 'not plain';
  }

  put(at: number): void {
    if (this.value) this.#column.set(at, this.value.at);
  }
}
