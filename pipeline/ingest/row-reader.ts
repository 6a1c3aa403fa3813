import type { z } from 'zod';
import type { Day } from '../site/day.ts';
import { recordFields, TIME_FIELD } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import type { NamedUnit } from '../site/unit-names.ts';
import { type Cell, cellText, Fault, isBlankRow, type RawRow, WallDate } from './cell.ts';
import type { ReadInstant } from './codecs/instant.ts';
import { timeOfDay } from './codecs/value-codec.ts';
import type { RowFields, TimeChoices } from './draft.ts';
import { fieldCheck } from './field-check.ts';
import type { FileTally } from './file-tally.ts';
import type { HeaderSearch } from './find-header.ts';
import { orderTimes } from './order-times.ts';
import { type FieldReader, type SourceReader, skipTest, tieFields } from './read-fields.ts';
import { WIDE_DAY, WIDE_MARK } from './wide-table.ts';

const FAULTS = {
  encoding: new Fault(
    'encoding',
    'text in the encoding of the file; set encoding where the file has another',
  ),
  missing: new Fault('missing_value', 'a value'),
  unknownName: new Fault('unknown_unit', 'the id or an alias of a unit'),
  nameNotValid: new Fault('unknown_unit', 'a name that means a unit on that day'),
  beforeService: new Fault('clock_reset', 'a time on or after the first day of service of the unit'),
  short: new Fault('short_row', 'a row as long as the header'),
  cut: new Fault('short_row', 'a last row that is not cut short'),
  long: new Fault('long_row', 'no more cells than the header has'),
} as const;

type Issue = z.core.$ZodIssue;

/** Names of units that are remembered at once. */
const MOST_NAMES = 10_000;

/** Takes a row that became a record, with its number and, where a wall time occurs twice, its readings. The record is the taker's until the next row. */
export type TakeRecord = (record: RowFields, row: number, choices: TimeChoices | undefined) => void;

/** Reads the rows of one file as one source. */
export interface RowReader {
  read(row: RawRow): void;
}

/** Problems of cells wait here until it is known that the row becomes a record. */
interface LostCell {
  fault: Fault;
  column: string | null;
  value: Cell | null;
}

/**
 * Reader of the rows below a header; undefined (with the reason in the tally) where the header doesn't do. Each row that isn't blank is counted once:
 * as skipped, as rejected with one problem, or as a record that is handed on. A bad optional cell costs that cell, a bad required cell the row.
 */
export function rowReader(
  site: Site,
  reader: SourceReader,
  search: HeaderSearch & { header: RawRow },
  isSuspect: (text: string) => boolean,
  tally: FileTally,
  emit: TakeRecord,
): RowReader | undefined {
  const { header, headerRows } = search;
  const tied = tieFields(reader, header, tally);
  if (!tied) return undefined;
  const fields = tied;
  const { source, clock } = reader;
  const checked = recordFields(source.kind).flatMap(({ name, schema }) => {
    const field = fields.find((candidate) => candidate.name === name);
    return field ? [{ field, check: fieldCheck(schema) }] : [];
  });
  const timeField = TIME_FIELD[source.kind];
  const isSkipped = skipTest(source, header, tally);
  const hasSkip = Object.keys(source.skip).length > 0;
  const width = header.cells.length;
  const places = fields.filter(({ required }) => required).flatMap(({ positions }) => positions);
  const headerCells = (headerRows.length > 0 ? headerRows : [header]).map((line) =>
    places.map((at) => ({ at, text: cellText(line.cells[at]) })),
  );
  const unitField = fields.find(({ name }) => name === 'unit');
  const ownTimeField = fields.find(({ name }) => name === timeField)!;
  let lost: LostCell[] = [];
  const instants = new Map<string, ReadInstant>();
  /** What each name meant on the day for which it was asked last. */
  const lastNames = new Map<string, { day: Day; named: NamedUnit }>();

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

  /** Fills `instants`, too. Undefined where the row was rejected. */
  const readRecord = (row: RawRow): RowFields | undefined => {
    instants.clear();
    const record: RowFields = { time_mark: 'time' };
    for (const field of fields) {
      const cell = cellOf(field, row);
      const value = readCell(field, cell, row, isSuspect);
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
  const nameUnit = (record: RowFields, at: number): Fault | undefined => {
    const day = clock.operatingDay(at);
    const name = record.unit!;
    let known = lastNames.get(name);
    if (known?.day !== day) {
      known = { day, named: site.readUnit(name, day, source.site) };
      if (lastNames.size >= MOST_NAMES) lastNames.clear();
      lastNames.set(name, known);
    }
    const { named } = known;
    if (named.known) {
      record.unit = named.unit;
      return undefined;
    }
    if (named.reason === 'before_service') return FAULTS.beforeService;
    return named.reason === 'unknown_name' ? FAULTS.unknownName : FAULTS.nameNotValid;
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
    const fault = unitField && record.unit !== undefined ? nameUnit(record, own.at) : undefined;
    if (fault && !unitField!.required) {
      delete record.unit;
      lost.push({ fault, column: unitField!.column, value: cellOf(unitField!, row) ?? null });
    } else if (fault) {
      const field = fault === FAULTS.beforeService ? ownTimeField : unitField!;
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
    emit(record, row.row, order.choices);
  };

  return {
    read(row) {
      if (row.fault === undefined && isBlankRow(row.cells)) return;
      tally.read.rows++;
      if (lost.length > 0) lost = [];
      if (isComment(row.cells)) tally.read.skipped++;
      else if (row.fault !== undefined)
        tally.reject(row.row, row.fault, placeOf(row, null), row.cells[0] ?? null);
      else if ((hasSkip && isSkipped(row.cells)) || repeatsHeader(row.cells)) tally.read.skipped++;
      else {
        const fault = shapeFault(row, width, fields);
        if (fault?.costs === 'row') tally.reject(row.row, fault.fault, placeOf(row, fault.column), null);
        else {
          if (fault) lost.push({ fault: fault.fault, column: fault.column, value: null });
          becomes(row);
        }
      }
    },
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

/** Cells of dashes alone say that there is no value, save where dashes are text or mapped words. */
const NO_VALUE = /^[-\u2013\u2014]+$/;

function readCell(
  field: FieldReader,
  cell: Cell | undefined,
  row: RawRow,
  isSuspect: (text: string) => boolean,
): string | number | boolean | ReadInstant | Fault | undefined {
  if (cell === undefined) return undefined;
  if (row.suspect && typeof cell === 'string' && isSuspect(cell)) return FAULTS.encoding;
  const value = field.instant ? field.instant(cell) : field.value(cell);
  if (value instanceof Fault && typeof cell === 'string' && NO_VALUE.test(cell)) return undefined;
  return value;
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
