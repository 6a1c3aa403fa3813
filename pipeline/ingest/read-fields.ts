import type { Site } from '../site/site.ts';
import type { Source } from '../site/site-schema.ts';
import { foldName } from '../site/unit-names.ts';
import type { WallClock } from '../site/wall-clock.ts';
import { nameUnpacked } from './archives.ts';
import { type Cell, cellText, Fault, type RawRow } from './cell.ts';
import { type InstantCodec, instantCodec } from './codecs/instant.ts';
import { type ValueCodec, valueCodec } from './codecs/value-codec.ts';
import { partOfName } from './file-pattern.ts';
import type { FileTally } from './file-tally.ts';
import { type FieldSource, fieldSources, foldHeader, positionsOf } from './source-columns.ts';
import { wideColumns } from './wide-table.ts';

/** A field of the record as it is read from the rows of one file. */
export type FieldReader = {
  name: string;
  required: boolean;
  /** Unit of measure of the value that the record holds. */
  measure: string | undefined;
  /** Positions of the columns that are joined; empty where `constant` holds for each row. */
  positions: readonly number[];
  constant: string | undefined;
  /** Headers, for messages. */
  column: string | null;
} & ({ instant: InstantCodec; value: undefined } | { instant: undefined; value: ValueCodec });

/** A source made ready: its fields with their codecs, before a file's header is known. */
export interface SourceReader {
  source: Source & { name: string };
  clock: WallClock;
  fields: readonly (FieldSource & { codec: Pick<FieldReader, 'instant' | 'value'> })[];
}

/**
 * Makes a source ready for reading: each codec is built once.
 *
 * @param personKey key of the hash of names
 * @throws UserError where the site file asks for something that can't be read so (date pattern, measure, mapped words)
 */
export function sourceReader(
  site: Site,
  declared: Source & { name: string },
  personKey?: Uint8Array,
): SourceReader {
  const source = declared.wide ? { ...declared, columns: wideColumns(declared) } : declared;
  const place = source.site === undefined ? site.sites.values().next().value : site.sites.get(source.site);
  if (!place) throw new Error(`source ${source.name}: no site "${source.site}"`);
  const fields = fieldSources(source).map((from) => ({
    ...from,
    codec: codecOf(from, source, place.clock, place.barometric_pressure_kpa, personKey),
  }));
  return { source, clock: place.clock, fields };
}

function codecOf(
  { field, mapping }: FieldSource,
  source: Source & { name: string },
  clock: WallClock,
  barometricKpa: number,
  personKey: Uint8Array | undefined,
): Pick<FieldReader, 'instant' | 'value'> {
  const own = typeof mapping === 'object' && 'column' in mapping ? mapping : undefined;
  if (field.meta.holds === 'instant')
    return {
      instant: instantCodec(own?.dates ?? source.dates, clock, source.clock_offset_minutes),
      value: undefined,
    };
  const value = valueCodec(field, {
    measure: own?.measure,
    decimalMark: source.decimal_mark,
    mapping: source.values[field.name] ?? {},
    barometricKpa,
    personKey,
    place: `source ${source.name}, field ${field.name}`,
  });
  return { instant: undefined, value };
}

/**
 * Ties the fields of a source to the columns of a file. Undefined, with the reason in the tally, where a required field can't be tied: then the file is
 * lost to the source. An optional field that can't be tied is left out, with a problem where the site file names its column.
 */
export function tieFields(reader: SourceReader, header: RawRow, tally: FileTally): FieldReader[] | undefined {
  const positions = positionsOf(header.cells);
  const tied: FieldReader[] = [];
  for (const from of reader.fields) {
    const field = tieField(from, positions, header.row, tally);
    if (field === 'lost') return undefined;
    if (field) tied.push(field);
  }
  return tied;
}

function tieField(
  from: SourceReader['fields'][number],
  positions: ReadonlyMap<string, readonly number[]>,
  row: number,
  tally: FileTally,
): FieldReader | 'lost' | undefined {
  const { field, headers, mapping } = from;
  const base = {
    name: field.name,
    required: field.required,
    measure: field.meta.measure,
    ...from.codec,
  } as FieldReader;
  const costs = field.required ? 'file' : 'cell';
  const without = field.required ? 'lost' : undefined;
  if (headers.length === 0) {
    const constant = constantOf(mapping, tally.read.file, tally.read.sheet);
    if (constant !== undefined) return { ...base, positions: [], constant, column: null };
    const { file_name: pattern, sheet_name } = mapping as { file_name?: string; sheet_name?: string };
    const what = pattern === undefined ? 'a name of the sheet' : 'a file name';
    const fault = new Fault(
      'missing_value',
      `${what} like ${pattern ?? sheet_name}, whose * is the ${field.name}`,
    );
    const value = pattern === undefined ? (tally.read.sheet ?? '') : tally.read.file;
    tally.fileProblem(costs, fault, { column: field.name, value });
    return without;
  }
  const at: number[] = [];
  for (const header of headers) {
    const found = positions.get(foldHeader(header)) ?? [];
    if (found.length > 1) {
      const fault = new Fault(
        'repeated_header',
        `one column "${header}"; of several, name the one that is meant by its number, as "${header} (2)"`,
      );
      tally.fileProblem(costs, fault, { row, column: header });
      return without;
    }
    if (found.length === 0) {
      if (from.named)
        tally.fileProblem(costs, new Fault('column_not_found', `a column "${header}" for ${field.name}`), {
          row,
          column: header,
        });
      return without;
    }
    at.push(found[0]!);
  }
  return { ...base, positions: at, constant: undefined, column: headers.join(' + ') };
}

function constantOf(mapping: FieldSource['mapping'], file: string, sheet: string | null): string | undefined {
  if (typeof mapping !== 'object' || Array.isArray(mapping)) return undefined;
  if ('always' in mapping) return mapping.always;
  if ('sheet_name' in mapping) return sheet === null ? undefined : partOfName(mapping.sheet_name)(sheet);
  if ('file_name' in mapping)
    return partOfName(mapping.file_name)(nameUnpacked(file.slice(file.lastIndexOf('/') + 1)));
  return undefined;
}

/** Whether the cell at a place says that its row is to be skipped. */
export interface SkipTest {
  at: number;
  skips: (cell: Cell | undefined) => boolean;
}

/** Tests of a row's cells, by any of which the source says to skip the row. */
export function skipTests(source: Source, header: RawRow, tally: FileTally): SkipTest[] {
  const positions = positionsOf(header.cells);
  const tests: SkipTest[] = [];
  for (const [column, values] of Object.entries(source.skip)) {
    const found = positions.get(foldHeader(column)) ?? [];
    if (found.length === 0)
      tally.fileProblem(
        'cell',
        new Fault('column_not_found', `a column "${column}" that marks rows to skip`),
        {
          row: header.row,
          column,
        },
      );
    const folded = new Set(values.map((value) => foldName(value.normalize('NFC'))));
    for (const at of found)
      tests.push({ at, skips: (cell) => folded.has(foldName(cellText(cell).normalize('NFC'))) });
  }
  return tests;
}
