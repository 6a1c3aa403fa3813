import type { FieldCheck } from '../field-check.ts';
import type { GrowingColumn } from '../growing-column.ts';
import type { FieldReader } from '../read-fields.ts';
import { InstantField } from './instant-field.ts';
import { NumberField } from './number-field.ts';
import type { PlainField } from './plain-field.ts';
import type { PlainText } from './plain-text.ts';
import { WordField } from './word-field.ts';

/**
 * The reader of a field.
 *
 * @param check what the record's schema says against a value
 */
export function openField(
  field: FieldReader,
  check: FieldCheck,
  column: GrowingColumn,
  text: PlainText,
): PlainField {
  if (field.instant) return new InstantField(field, check, column, text);
  const { stretch } = field.value;
  const cell = field.positions.length === 1 ? field.positions[0] : undefined;
  if (stretch && cell !== undefined) return new NumberField({ ...field, stretch, cell }, check, column);
  return new WordField(field, check, column, text);
}
