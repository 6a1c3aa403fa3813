import { TIME_FIELD } from '../../site/records.ts';
import { Fault } from '../cell.ts';
import type { ColumnWriter } from '../column-writer.ts';
import { type FieldCheck, noCheck } from '../field-check.ts';
import type { FileTally } from '../file-tally.ts';
import { stretchOf } from '../order-times.ts';
import type { FieldReader, SkipTest, SourceReader } from '../read-fields.ts';
import type { NameUnit } from '../unit-namer.ts';
import { CutRow } from './cut-row.ts';
import { InstantField } from './instant-field.ts';
import { openField } from './open-field.ts';
import type { PlainField } from './plain-field.ts';
import type { PlainRows, PlainText } from './plain-text.ts';
import { skipsOf } from './skips.ts';
import { WordField } from './word-field.ts';

/** What the reader of rows knows of a file, and its plain rows are read by. */
export interface RowSettings {
  source: SourceReader['source'];
  /** Cells of a row. */
  width: number;
  fields: readonly FieldReader[];
  /** What the record's schema says against the value of a field. */
  checkOf: (name: string) => FieldCheck;
  /** Texts of the header's lines, cell by cell. */
  headerLines: readonly (readonly string[])[];
  skips: readonly SkipTest[];
  nameUnit: NameUnit;
  tally: FileTally;
  writer: ColumnWriter;
}

/**
 * The usual rows of delimited text, read where they stand: no cell is made into a text of its own that is not kept, and values go straight into their columns. A row that this reader
 * takes gives the record that the reader of rows would have made of it; whatever is not plain it leaves to that reader, before anything is counted.
 *
 * Undefined where the records of a file have no time in a cell, or a line of the header could be read as a record.
 */
export function plainRows(settings: RowSettings, text: PlainText): PlainRows | undefined {
  const { source, width, fields, checkOf, headerLines, nameUnit, tally, writer } = settings;
  const read = fields.map((field): [string, PlainField] => [
    field.name,
    openField(field, field.name === 'unit' ? noCheck : checkOf(field.name), writer.column(field.name), text),
  ]);
  const byName = new Map(read);
  const all = read.map(([, field]) => field);
  const values = read.flatMap(([name, field]) => (name === 'unit' ? [] : [field]));
  const instantOf = (name: string | undefined): InstantField | undefined => {
    const field = name === undefined ? undefined : byName.get(name);
    return field instanceof InstantField ? field : undefined;
  };
  const timeReader = fields.find(({ name }) => name === TIME_FIELD[source.kind]);
  const time = instantOf(timeReader?.name);
  if (!time || !timeReader?.instant || timeReader.positions.length === 0) return undefined;
  if (headerLines.some((line) => mayBeRecord(line, timeReader))) return undefined;
  const unit = byName.get('unit');
  if (unit !== undefined && !(unit instanceof WordField)) return undefined;
  const checkUnit = checkOf('unit');
  const unitColumn = unit && writer.column('unit');
  const marks = writer.column('time_mark');
  const stretch = stretchOf(source.kind);
  const [first, last] = [instantOf(stretch?.first), instantOf(stretch?.last)];
  const isInOrder = (): boolean => {
    if (!first?.value || !last?.value) return true;
    const length = last.value.at - first.value.at;
    return length >= 0 && length <= stretch!.longest;
  };
  const skips = skipsOf(settings.skips, text);
  const row = new CutRow(width, text.delimiter);
  const { comment } = source;

  return {
    take(characters, from, to, isAscii, number) {
      if (!row.cut(characters, from, to, isAscii)) return false;
      if (comment !== undefined && (row.hasBytes(0) || characters.startsWith(comment, row.starts[0])))
        return false;
      const isSkipped = skips(row);
      if (isSkipped === undefined) return false;
      if (isSkipped) {
        tally.read.rows++;
        tally.read.skipped++;
        return true;
      }
      for (const field of all) if (!field.read(row)) return false;
      if (!isInOrder()) return false;
      const { at, mark } = time.value!;
      let id: string | undefined;
      if (unit?.value !== undefined) {
        const named = nameUnit(unit.value as string, at);
        if (named instanceof Fault || checkUnit(named) !== undefined) return false;
        id = named;
      }
      tally.read.rows++;
      const place = writer.begin(number);
      for (const field of values) field.put(place);
      if (id !== undefined) unitColumn!.set(place, unitColumn!.codeOf(id));
      marks.set(place, marks.codeOf(mark));
      return true;
    },
  };
}

/** Whether a line of the header would be read as the row of a record: only then could a row that repeats it be taken for one. */
function mayBeRecord(
  line: readonly string[],
  { instant, positions }: Extract<FieldReader, { value: undefined }>,
): boolean {
  const texts = positions.map((at) => line[at] ?? '').filter((text) => text !== '');
  return !(instant(texts.join(' ')) instanceof Fault);
}
