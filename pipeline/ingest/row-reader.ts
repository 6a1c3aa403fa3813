import type { z } from 'zod';
import { recordFields, TIME_FIELD } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import { type Cell, cellText, Fault, isBlankRow, type RawRow, WallDate } from './cell.ts';
import type { ReadInstant } from './codecs/instant.ts';
import { timeOfDay } from './codecs/value-codec.ts';
import type { ColumnWriter } from './column-writer.ts';
import type { RowFields } from './draft.ts';
import { fieldCheck, noCheck } from './field-check.ts';
import type { FileTally } from './file-tally.ts';
import type { HeaderSearch } from './find-header.ts';
import { orderTimes } from './order-times.ts';
import { plainRows } from './plain-rows/plain-rows.ts';
import type { PlainRows, PlainText } from './plain-rows/plain-text.ts';
import { readCell } from './read-cell.ts';
import { type FieldReader, type SourceReader, skipTests, tieFields } from './read-fields.ts';
import { isBeforeService, unitNamer } from './unit-namer.ts';
import { WIDE_DAY, WIDE_MARK } from './wide-table.ts';

const FAULTS = {
  encoding: new Fault(
    'encoding',
    'text in the encoding of the file; set encoding where the file has another',
  ),
  missing: new Fault('missing_value', 'a value'),
  short: new Fault('short_row', 'a row as long as the header'),
  cut: new Fault('short_row', 'a last row that is not cut short'),
  long: new Fault('long_row', 'no more cells than the header has'),
} as const;

type Issue = z.core.$ZodIssue;

/** Reads the rows of one file as one source. */
export interface RowReader {
  read(row: RawRow): void;
  /** The reader of those rows that are plain, where a file may have any. */
  plainRows(text: PlainText): PlainRows | undefined;
}

/** Problems of cells wait here until it is known that the row becomes a record. */
interface LostCell {
  fault: Fault;
  column: string | null;
  value: Cell | null;
}

/**
 * Reader of the rows below a header; undefined (with the reason in the tally) where the header doesn't do. Each row that isn't blank is counted once:
 * as skipped, as rejected with one problem, or as a record that is written. A bad optional cell costs that cell, a bad required cell the row.
 */
export function rowReader(
  site: Site,
  reader: SourceReader,
  search: HeaderSearch & { header: RawRow },
  isSuspect: (text: string) => boolean,
  tally: FileTally,
  writer: ColumnWriter,
): RowReader | undefined {
  const { header, headerRows } = search;
  const tied = tieFields(reader, header, tally);
  if (!tied) return undefined;
  const fields = tied;
  const { source } = reader;
  const checked = recordFields(source.kind).flatMap(({ name, schema }) => {
    const field = fields.find((candidate) => candidate.name === name);
    return field ? [{ field, check: fieldCheck(schema) }] : [];
  });
  const checks = new Map(checked.map(({ field, check }) => [field.name, check]));
  const timeField = TIME_FIELD[source.kind];
  const skips = skipTests(source, header, tally);
  const isSkipped = (cells: readonly Cell[]): boolean => {
    for (const { at, skips: isSkip } of skips) if (isSkip(cells[at])) return true;
    return false;
  };
  const width = header.cells.length;
  const places = fields.filter(({ required }) => required).flatMap(({ positions }) => positions);
  const headerLines = (headerRows.length > 0 ? headerRows : [header]).map(({ cells }) => cells.map(cellText));
  const headerCells = headerLines.map((line) => places.map((at) => ({ at, text: line[at] ?? '' })));
  const unitField = fields.find(({ name }) => name === 'unit');
  const ownTimeField = fields.find(({ name }) => name === timeField)!;
  let lost: LostCell[] = [];
  const instants = new Map<string, ReadInstant>();
  const nameUnit = unitNamer(site, reader);

  const repeatsLine = (cells: readonly Cell[], line: (typeof headerCells)[number]): boolean => {
    for (const { at, text } of line) if (cellText(cells[at]) !== text) return false;
    return line.some(({ text }) => text !== '');
  };
  const repeatsHeader = (cells: readonly Cell[]): boolean => {
    for (const line of headerCells) if (repeatsLine(cells, line)) return true;
    return false;
  };
  const isComment = (cells: readonly Cell[]): boolean =>
    source.comment !== undefined &&
    typeof cells[0] === 'string' &&
    cells[0].trimStart().startsWith(source.comment);

  const isUnreadable = (row: RawRow, cell: Cell | undefined): boolean =>
    row.suspect && typeof cell === 'string' && isSuspect(cell);

  /** Fills `instants`, too. Undefined where the row was rejected. */
  const readRecord = (row: RawRow): RowFields | undefined => {
    instants.clear();
    const record: RowFields = { time_mark: 'time' };
    for (const field of fields) {
      const cell = cellOf(field, row);
      const value = isUnreadable(row, cell)
        ? FAULTS.encoding
        : cell === undefined
          ? undefined
          : readCell(field, cell);
      if (value === undefined && !field.required) continue;
      if (value === undefined || value instanceof Fault) {
        const fault = value ?? FAULTS.missing;
        if (field.required) {
          tally.reject(row.row, fault, placeOf(row, field.column), cell ?? null);
          return undefined;
        }
        lost.push({ fault, column: field.column, value: cell ?? null });
      } else if (typeof value === 'object') {
        instants.set(field.name, value);
        record[field.name] = value.at;
      } else record[field.name] = value;
    }
    return record;
  };

  /** Puts the unit's id for the name that stands in the export; answers what is wrong with it. */
  const putUnit = (record: RowFields, at: number): Fault | undefined => {
    const named = nameUnit(record.unit!, at);
    if (named instanceof Fault) return named;
    record.unit = named;
    return undefined;
  };

  /** Takes out optional values that don't hold; false where the row was rejected. */
  const holds = (record: RowFields, row: RawRow): boolean => {
    for (const { field, check } of checked) {
      const value = record[field.name];
      const issue = value === undefined ? undefined : check(value);
      if (!issue) continue;
      const fault = faultOf(issue, field);
      const cell = cellOf(field, row) ?? null;
      if (field.required) {
        tally.reject(row.row, fault, placeOf(row, field.column), cell);
        return false;
      }
      delete record[field.name];
      lost.push({ fault, column: field.column, value: cell });
    }
    return true;
  };

  const becomes = (row: RawRow): void => {
    const record = readRecord(row);
    if (!record) return;
    const own = instants.get(timeField)!;
    record.time_mark = own.mark;
    const fault = unitField && record.unit !== undefined ? putUnit(record, own.at) : undefined;
    if (fault && !unitField!.required) {
      delete record.unit;
      lost.push({ fault, column: unitField!.column, value: cellOf(unitField!, row) ?? null });
    } else if (fault) {
      const field = isBeforeService(fault) ? ownTimeField : unitField!;
      tally.reject(row.row, fault, placeOf(row, field.column), cellOf(field, row) ?? null);
      return;
    }
    if (!holds(record, row)) return;
    const order = orderTimes(source.kind, record, instants);
    if (order.lost) {
      const { field, fault } = order.lost;
      delete record[field];
      const tiedField = fields.find(({ name }) => name === field)!;
      lost.push({ fault, column: tiedField.column, value: cellOf(tiedField, row) ?? null });
    }
    for (const cell of lost) tally.loseCell(row.row, cell.fault, placeOf(row, cell.column), cell.value);
    writer.add(record, row.row, order.choices);
  };

  return {
    read(row) {
      if (row.fault === undefined && isBlankRow(row.cells)) return;
      tally.read.rows++;
      if (lost.length > 0) lost = [];
      if (isComment(row.cells)) tally.read.skipped++;
      else if (row.fault !== undefined)
        tally.reject(row.row, row.fault, placeOf(row, null), row.cells[0] ?? null);
      else if (isSkipped(row.cells) || repeatsHeader(row.cells)) tally.read.skipped++;
      else {
        const fault = shapeFault(row, width, fields);
        if (fault?.costs === 'row') tally.reject(row.row, fault.fault, placeOf(row, fault.column), null);
        else {
          if (fault) lost.push({ fault: fault.fault, column: fault.column, value: null });
          becomes(row);
        }
      }
    },
    plainRows: (text) =>
      plainRows(
        {
          source,
          width,
          fields,
          checkOf: (name) => checks.get(name) ?? noCheck,
          headerLines,
          skips,
          nameUnit,
          tally,
          writer,
        },
        text,
      ),
  };
}

/** The column as it stands in the file: that of the day, where the row is one mark of a sheet with a column a day. */
const placeOf = (row: RawRow, column: string | null): string | null =>
  row.column !== undefined && (column === null || column === WIDE_DAY || column === WIDE_MARK)
    ? row.column
    : column;

/** What is wrong with the number of cells of a row. */
function shapeFault(
  row: RawRow,
  width: number,
  fields: readonly FieldReader[],
): { costs: 'row' | 'cell'; fault: Fault; column: string | null } | undefined {
  const { cells } = row;
  if (cells.length === width) return undefined;
  if (cells.length > width)
    return isBlankRow(cells.slice(width)) ? undefined : { costs: 'row', fault: FAULTS.long, column: null };
  const missing = fields.find(({ positions }) => positions.some((at) => at >= cells.length));
  if (missing?.required) return { costs: 'row', fault: FAULTS.short, column: missing.column };
  if (row.unterminated) return { costs: 'row', fault: FAULTS.cut, column: null };
  return missing && { costs: 'cell', fault: FAULTS.short, column: missing.column };
}

/** The cell of a field; several columns are joined with a blank, the time of a workbook's date cell is added to its date. Undefined: blank. */
function cellOf(field: FieldReader, row: RawRow): Cell | undefined {
  if (field.constant !== undefined) return notBlank(field.constant);
  const { positions } = field;
  if (positions.length === 1) {
    const cell = row.cells[positions[0]!];
    return typeof cell === 'string' ? notBlank(cell) : cell;
  }
  const cells = positions.map((at) => notBlank(row.cells[at])).filter((cell) => cell !== undefined);
  if (cells.length < 2) return cells[0];
  if (cells.every((cell) => cell instanceof WallDate))
    return new WallDate(
      cells.slice(1).reduce((sum, cell) => sum + timeOfDay(cell), cells[0]!.wallMs),
      false,
    );
  // A date cell with its time of day as text beside it: the cell's own time, midnight, says nothing.
  return cells.map((cell) => (isDate(cell) ? cellText(cell).slice(0, 10) : cellText(cell))).join(' ');
}

const DAY_MS = 86_400_000;
const isDate = (cell: Cell): cell is WallDate => cell instanceof WallDate && cell.wallMs % DAY_MS === 0;

function notBlank(cell: Cell | undefined): Cell | undefined {
  if (typeof cell !== 'string') return cell;
  const text = cell.trim();
  return text === '' ? undefined : text;
}

/** What the schema says against a value: it is too long, or outside what is possible. */
function faultOf(issue: Issue, { measure }: FieldReader): Fault {
  const unit = measure === undefined ? '' : ` ${measure}`;
  if (issue.code === 'too_big' && issue.origin === 'string')
    return new Fault('too_long', `at most ${issue.maximum} characters`);
  if (issue.code === 'too_big')
    return new Fault('out_of_range', `a value of at most ${issue.maximum}${unit}`);
  if (issue.code === 'too_small')
    return new Fault(
      'out_of_range',
      `a value ${issue.inclusive ? 'of at least' : 'above'} ${issue.minimum}${unit}`,
    );
  if (issue.code === 'invalid_type' && issue.expected === 'int')
    return new Fault('out_of_range', 'a whole number');
  return new Fault('out_of_range', `a value that the record can hold${unit === '' ? '' : `, in${unit}`}`);
}
