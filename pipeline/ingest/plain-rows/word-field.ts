import { Fault } from '../cell.ts';
import { copyText } from '../codecs/value-codec.ts';
import type { FieldCheck } from '../field-check.ts';
import type { GrowingColumn } from '../growing-column.ts';
import { readCell } from '../read-cell.ts';
import type { FieldReader } from '../read-fields.ts';
import type { CutRow } from './cut-row.ts';
import type { PlainField } from './plain-field.ts';
import type { PlainText } from './plain-text.ts';

/** Most cells of a field that are remembered. */
const MOST_CELLS = 4000;

/** What a cell says, which is the same wherever its characters stand. */
interface Known {
  /** Its characters. */
  characters: string;
  /** Whether the row may be taken as it stands. */
  isPlain: boolean;
  value: string | number | boolean | undefined;
  /** Code of the value in its column; -1 until a record has it. */
  code: number;
}

/** A field of words or text: what its cells say is remembered. */
export class WordField implements PlainField {
  readonly #field: FieldReader;
  readonly #check: FieldCheck;
  readonly #column: GrowingColumn;
  readonly #text: PlainText;
  readonly #known = new Map<string, Known>();
  readonly #constant: Known | undefined;
  #last: Known;

  constructor(field: FieldReader, check: FieldCheck, column: GrowingColumn, text: PlainText) {
    this.#field = field;
    this.#check = check;
    this.#column = column;
    this.#text = text;
    const { constant } = field;
    this.#constant = constant === undefined ? undefined : this.#knownOf(constant, constant);
    this.#last = this.#constant ?? this.#knownOf('', '');
  }

  /** What was read last; undefined where the cell was blank. */
  get value(): Known['value'] {
    return this.#last.value;
  }

  read(row: CutRow): boolean {
    if (this.#constant) return this.#constant.isPlain;
    const { positions } = this.#field;
    if (positions.length > 1) {
      for (const cell of positions) if (row.hasBytes(cell)) return false;
      this.#last = this.#lookUp(row.charactersOf(positions), true);
    } else {
      const cell = positions[0]!;
      const start = row.starts[cell]!;
      const end = row.ends[cell]!;
      if (!isAt(row.text, start, end, this.#last.characters))
        this.#last = this.#lookUp(row.text.slice(start, end), row.isAscii);
    }
    return this.#last.isPlain;
  }

  put(at: number): void {
    const last = this.#last;
    if (typeof last.value !== 'string') {
      if (last.value !== undefined) this.#column.set(at, Number(last.value));
      return;
    }
    if (last.code < 0) last.code = this.#column.codeOf(last.value);
    this.#column.set(at, last.code);
  }

  #lookUp(characters: string, isAscii: boolean): Known {
    const known = this.#known.get(characters);
    if (known) return known;
    // A slice would keep the whole text alive.
    const own = copyText(characters);
    const found = this.#knownOf(own, isAscii ? own : this.#text.decode(own));
    if (this.#known.size < MOST_CELLS) this.#known.set(own, found);
    return found;
  }

  #knownOf(characters: string, text: string): Known {
    const { required } = this.#field;
    const cell = text.trim();
    const value = cell === '' ? undefined : readCell(this.#field, cell);
    const isPlain =
      value === undefined
        ? !required
        : !(value instanceof Fault) &&
          typeof value !== 'object' &&
          !this.#text.isSuspect(text) &&
          this.#check(value) === undefined;
    return { characters, isPlain, value: isPlain ? (value as Known['value']) : undefined, code: -1 };
  }
}

/** Whether a stretch of a text is the same as another text. */
function isAt(text: string, from: number, to: number, other: string): boolean {
  if (to - from !== other.length) return false;
  for (let at = 0; at < other.length; at++)
    if (text.charCodeAt(from + at) !== other.charCodeAt(at)) return false;
  return true;
}
