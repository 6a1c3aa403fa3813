import { dayOfDate, formatDay } from '../site/day.ts';
import type { Source } from '../site/site-schema.ts';
import { CLEANING_STATES } from '../site/vocabulary.ts';
import { type Cell, cellText, Fault, isBlankRow, type RawRow, WallDate } from './cell.ts';
import { datePattern } from './codecs/date-pattern.ts';
import { monthOfName } from './codecs/month-names.ts';
import { closedWords } from './codecs/words.ts';
import { partOfName } from './file-pattern.ts';
import type { TablePart } from './table.ts';

/** Names of the two columns that a wide sheet gets in place of its day columns. */
export const WIDE_DAY = '(day)';
export const WIDE_MARK = '(mark)';
export const DAY_OF_MONTH = 'day of month';

/** Fewer columns of days than this are no wide sheet. */
const LEAST_DAYS = 2;

/** Columns of a wide source: the time and the state come from the day columns, where the site says nothing else. */
export function wideColumns(source: Source): Source['columns'] {
  return {
    time: { column: WIDE_DAY, dates: 'yyyy-MM-dd' },
    ...(source.kind === 'cleanings' ? { state: WIDE_MARK } : {}),
    ...source.columns,
  };
}

/**
 * Turns a sheet with a column a day into one with a row a mark: the columns that are no days stay, then come the day and the mark. A blank cell gives no
 * row, so the rows that are counted are marks. Marks that are neither words of the record nor mapped are faulty rows; initials become what the site says
 * that they mean, and are gone.
 *
 * @param names where the month may stand: file and sheet
 */
export async function* narrowTable(
  parts: AsyncIterable<TablePart>,
  source: Source & { name: string },
  names: { file: string; sheet: string | null },
): AsyncGenerator<TablePart> {
  const read = markReader(source);
  let days: readonly DayColumn[] = [];
  let fixed: number[] = [];
  for await (const part of parts) {
    if (part.type === 'header' && part.search.header) {
      const { header } = part.search;
      const month = monthOf(source, { ...names, sheet: part.sheet ?? names.sheet }, part.search.above);
      days = dayColumns(header, source.wide!.days, month);
      if (days.length < LEAST_DAYS) {
        yield { type: 'fault', code: 'header_not_found', expected: expectedDays(source, month) };
        return;
      }
      fixed = header.cells.map((_, at) => at).filter((at) => !days.some((day) => day.at === at));
      const cells = [...fixed.map((at) => header.cells[at]!), WIDE_DAY, WIDE_MARK];
      const { plain: _, ...rest } = part;
      yield { ...rest, search: { ...part.search, header: { ...header, cells }, headerRows: [] } };
    } else if (part.type === 'rows')
      yield { type: 'rows', rows: part.rows.flatMap((row) => narrowRow(row, fixed, days, read)) };
    else yield part;
  }
}

function expectedDays(source: Source, month: string | undefined): string {
  const { days } = source.wide!;
  if (days === DAY_OF_MONTH && month === undefined)
    return 'the month of the sheet where wide.month says that it stands, such as 2025-03 or March 2025';
  return `a header with columns of days (${days})`;
}

function narrowRow(
  row: RawRow,
  fixed: readonly number[],
  days: readonly DayColumn[],
  read: (cell: Cell) => Mark | Fault,
): RawRow[] {
  if (row.fault !== undefined) return [row];
  const kept = fixed.map((at) => row.cells[at] ?? '');
  const rows: RawRow[] = [];
  for (const { at, day, header } of days) {
    const cell = row.cells[at] ?? '';
    if (isBlankRow([cell])) continue;
    const mark = read(cell);
    rows.push({
      ...row,
      unterminated: false,
      column: header,
      ...(mark instanceof Fault ? {} : { mark: mark.shown }),
      cells: mark instanceof Fault ? [cellText(cell), ...kept, day] : [...kept, day, mark.word],
      fault: mark instanceof Fault ? mark : undefined,
    });
  }
  return rows;
}

/** "AB", "a.b.", "AB/CD"; but one letter on each side of a stroke is "N/D" or "n/a". */
const INITIALS = /^(?!\p{L}\/\p{L}$)\p{L}{1,3}(?:[./ -]{0,2}\p{L}{1,3})?\.?$/u;

/** A mark as the record has it and as it stands. */
interface Mark {
  word: string;
  shown: string;
}

function markReader(source: Source & { name: string }): (cell: Cell) => Mark | Fault {
  const place = `source ${source.name}, field state`;
  const known = closedWords(CLEANING_STATES, source.values.state ?? {}, place);
  const fault = new Fault(
    'unknown_word',
    `one of ${CLEANING_STATES.join(', ')}, a mark mapped onto one, or initials where wide says what they mean`,
  );
  return (cell) => {
    const text = cellText(cell);
    const word = known(text);
    if (source.kind !== 'cleanings') return { word: text, shown: text };
    if (word !== undefined) return { word, shown: text };
    return source.wide?.initials_mean !== undefined && INITIALS.test(text)
      ? { word: source.wide.initials_mean, shown: '(initials)' }
      : fault;
  };
}

/** A column of a day: its position, the day as "2025-03-01", and its header as it stands. */
interface DayColumn {
  at: number;
  day: string;
  header: string;
}

function dayColumns(header: RawRow, days: string, month: string | undefined): DayColumn[] {
  const columns: DayColumn[] = [];
  const read = days === DAY_OF_MONTH ? undefined : datePattern(days);
  for (const [at, cell] of header.cells.entries()) {
    const day = read ? readDay(cell, read) : month === undefined ? undefined : dayInMonth(cell, month);
    if (day !== undefined) columns.push({ at, day, header: cellText(cell) });
  }
  return columns;
}

function readDay(cell: Cell, read: ReturnType<typeof datePattern>): string | undefined {
  if (cell instanceof WallDate) return formatDay(Math.floor(cell.wallMs / 86_400_000));
  const written = read(cellText(cell));
  return written && formatDay(Math.floor(written.wallMs / 86_400_000));
}

/** "3", "03.", "Mo 3", "3/Mon": one number, at most two digits, that is a day of the month. */
const DAY_NUMBER = /^(?:\p{L}{1,3}\.?[\s/,-]{1,2})?(\d{1,2})\.?(?:[\s/,-]{1,2}\p{L}{1,4}\.?)?$/u;

export function dayNumber(cell: Cell): number | undefined {
  const match = DAY_NUMBER.exec(cellText(cell));
  const number = match ? Number(match[1]) : 0;
  return number >= 1 && number <= 31 ? number : undefined;
}

function dayInMonth(cell: Cell, month: string): string | undefined {
  const number = dayNumber(cell);
  if (number === undefined) return undefined;
  const day = formatDay(dayOfDate(Number(month.slice(0, 4)), Number(month.slice(5)), number));
  return day.startsWith(month) ? day : undefined;
}

function monthOf(
  source: Source,
  names: { file: string; sheet: string | null },
  above: readonly string[],
): string | undefined {
  const { month } = source.wide!;
  if (!month) return undefined;
  if ('always' in month) return readMonth(month.always);
  if ('title' in month) return above.map(readMonth).find((found) => found !== undefined);
  if ('file_name' in month) {
    const part = partOfName(month.file_name)(names.file.slice(names.file.lastIndexOf('/') + 1));
    return part === undefined ? undefined : readMonth(part);
  }
  const part = names.sheet === null ? undefined : partOfName(month.sheet_name)(names.sheet);
  return part === undefined ? undefined : readMonth(part);
}

/** The month that a text holds, as "2025-03": 2025-03, 03.2025, March 2025; undefined where it holds none. */
export function readMonth(text: string): string | undefined {
  const numbers =
    /(?<!\d)(20\d\d)[-_. /]?(0[1-9]|1[0-2])(?!\d)/.exec(text) ??
    /(?<!\d)(?<month>0?[1-9]|1[0-2])[-_. /](?<year>20\d\d)(?!\d)/.exec(text);
  if (numbers) {
    const year = numbers.groups?.year ?? numbers[1]!;
    return `${year}-${(numbers.groups?.month ?? numbers[2]!).padStart(2, '0')}`;
  }
  const year = /(?<!\d)20\d\d(?!\d)/.exec(text)?.[0];
  const month = (text.match(/\p{L}+/gu) ?? []).map(monthOfName).find((found) => found !== undefined);
  return year === undefined || month === undefined ? undefined : `${year}-${String(month).padStart(2, '0')}`;
}
