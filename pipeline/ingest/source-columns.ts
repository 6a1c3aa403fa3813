import { recordFields } from '../site/records.ts';
import type { ColumnMapping, Source } from '../site/site-schema.ts';
import { foldName } from '../site/unit-names.ts';
import type { Cell } from './cell.ts';
import { cellText } from './cell.ts';
import type { RecordField } from './codecs/value-codec.ts';

/** Where a field of the record comes from, as the source declares it. */
export interface FieldSource {
  field: RecordField;
  /** Headers of the columns that are joined; empty where the value isn't in a column. */
  headers: readonly string[];
  /** Whether the site file names the column; else it is looked for under the field's own name. */
  named: boolean;
  mapping: ColumnMapping;
}

/** The fields of a source, required ones first. */
export function fieldSources(source: Source): FieldSource[] {
  // Names of people are read only where the site file says so.
  const known = recordFields(source.kind).filter(
    ({ name, meta }) => meta.holds !== 'person' || name in source.columns,
  );
  const fields = known.map((field): FieldSource => {
    const mapping = source.columns[field.name] ?? field.name;
    return { field, headers: headersOf(mapping), named: field.name in source.columns, mapping };
  });
  return [...fields.filter(({ field }) => field.required), ...fields.filter(({ field }) => !field.required)];
}

function headersOf(mapping: ColumnMapping): readonly string[] {
  if (typeof mapping === 'string') return [mapping];
  if (Array.isArray(mapping)) return mapping;
  if ('column' in mapping) return typeof mapping.column === 'string' ? [mapping.column] : mapping.column;
  return [];
}

/** Headers without which no row of the source can become a record. */
export function requiredHeaders(source: Source): string[] {
  return fieldSources(source)
    .filter(({ field }) => field.required)
    .flatMap(({ headers }) => headers);
}

/** Headers are compared without regard to letter case, runs of blanks and the composed or decomposed form of letters; an underscore is a blank. */
export const foldHeader = (cell: Cell): string =>
  foldName(cellText(cell).normalize('NFC').replaceAll('_', ' '));

/** Which of the headers a row doesn't hold. */
export function missingHeaders(cells: readonly Cell[], headers: readonly string[]): string[] {
  const held = positionsOf(cells);
  return headers.filter((header) => !held.has(foldHeader(header)));
}

/**
 * Positions of the columns by folded header. Of headers that stand more than once, each is also known by its number, as "Date (2)", unless a column is called so.
 */
export function positionsOf(cells: readonly Cell[]): Map<string, number[]> {
  const positions = new Map<string, number[]>();
  for (const [index, cell] of cells.entries()) {
    const name = foldHeader(cell);
    positions.set(name, [...(positions.get(name) ?? []), index]);
  }
  const repeated = [...positions].filter(([name, list]) => name !== '' && list.length > 1);
  for (const [name, list] of repeated)
    for (const [at, index] of list.entries()) {
      const numbered = `${name} (${at + 1})`;
      if (!positions.has(numbered)) positions.set(numbered, [index]);
    }
  return positions;
}
