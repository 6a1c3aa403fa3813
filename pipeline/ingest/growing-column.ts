import { codeOf } from '../packed-rows.ts';
import type { Column } from './file-columns.ts';

type Values = Float64Array | Int8Array | Int32Array;

const FIRST_LENGTH = 1024;

/** Values of one field as they come: numbers, yes or no, or codes of words. Where nothing is set, the record does not have the field. */
export class GrowingColumn {
  readonly #type: Column['type'];
  #values: Values;
  /** Code of each word, in the order in which they came. */
  readonly #codes = new Map<string, number>();
  /** Whether any record has the field. */
  isHeld = false;

  constructor(type: Column['type']) {
    this.#type = type;
    this.#values = this.#empty(0);
  }

  /** Sets the value of a record: a number as it is, 0 or 1 for no or yes, the code of a word. */
  set(at: number, value: number): void {
    if (at >= this.#values.length) this.#grow(at + 1);
    this.#values[at] = value;
    this.isHeld = true;
  }

  /** Sets the value of a record by itself. */
  put(at: number, value: unknown): void {
    this.set(at, this.#type === 'words' ? this.codeOf(value as string) : Number(value));
  }

  codeOf(word: string): number {
    return codeOf(this.#codes, word);
  }

  /** The values of so many records, of a column of numbers. */
  numbers(count: number): Float64Array {
    if (count > this.#values.length) this.#grow(count);
    return (this.#values as Float64Array).slice(0, count);
  }

  /** The column of so many records. */
  column(count: number): Column {
    if (count > this.#values.length) this.#grow(count);
    const values = this.#values.slice(0, count);
    if (values instanceof Float64Array) return { type: 'number', values };
    if (values instanceof Int8Array) return { type: 'yes_no', values };
    return { type: 'words', codes: values, words: [...this.#codes.keys()] };
  }

  #empty(length: number): Values {
    if (this.#type === 'number') return new Float64Array(length).fill(Number.NaN);
    return (this.#type === 'yes_no' ? new Int8Array(length) : new Int32Array(length)).fill(-1);
  }

  #grow(least: number): void {
    const values = this.#empty(Math.max(least, FIRST_LENGTH, this.#values.length * 2));
    values.set(this.#values);
    this.#values = values;
  }
}
