import { type Cell, Fault } from './cell.ts';
import type { ReadInstant } from './codecs/instant.ts';
import type { FieldReader } from './read-fields.ts';

/** What a cell that isn't blank says of a field; undefined where it says that there is no value. */
export function readCell(
  field: FieldReader,
  cell: Cell,
): string | number | boolean | ReadInstant | Fault | undefined {
  const value = field.instant ? field.instant(cell) : field.value(cell);
  return value instanceof Fault && typeof cell === 'string' && saysNoValue(cell) ? undefined : value;
}

/** Cells of dashes alone say that there is no value, save where dashes are text or mapped words. */
const NO_VALUE = /^[-\u2013\u2014]+$/;

export const saysNoValue = (text: string): boolean => NO_VALUE.test(text);
