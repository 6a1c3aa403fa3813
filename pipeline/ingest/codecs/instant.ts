import type { TimeMark } from '../../site/records.ts';
import type { WallClock } from '../../site/wall-clock.ts';
import { type Cell, Fault, WallDate } from '../cell.ts';
import { datePattern, exampleOf } from './date-pattern.ts';
import { serialReader } from './serial-date.ts';
import type { WrittenTime } from './written-time.ts';

/** An instant as read from a cell. `later` is the second reading of a wall time that occurs twice. */
export interface ReadInstant {
  at: number;
  mark: TimeMark;
  later: number | undefined;
  /** The wall time as if it were UTC, ms; undefined where the text gives the instant itself. */
  wallMs: number | undefined;
}

/** Reads a cell, or the stretch of a text that is given, as an instant. */
export type InstantCodec = (cell: Cell, from?: number, to?: number) => ReadInstant | Fault;

/** First and last year that a clock which was set may show; years outside are those of a clock that lost its time. */
const YEARS = [2000, 2099] as const;
const FROM = Date.UTC(YEARS[0], 0, 1);
const UNTIL = Date.UTC(YEARS[1] + 1, 0, 1);
const MS_PER_DAY = 86_400_000;

/**
 * Codec of instants: text by the date pattern, or a date cell of a workbook, read on the site's clock. A date alone is the instant at which that operating
 * day opens.
 *
 * A number is read as its digits: 20260914083000 by yyyyMMddHHmmss. Days as a spreadsheet counts them ("serial 1900", "serial 1904") may be numbers or texts; whole ones are dates alone.
 *
 * @param aheadMinutes how far the clock that wrote the times runs ahead of the site's; taken off times of day, not off dates alone
 * @throws UserError `date_pattern` where the pattern can't give a date
 */
export function instantCodec(pattern: string, clock: WallClock, aheadMinutes = 0): InstantCodec {
  const serial = serialReader(pattern);
  const read = serial ?? datePattern(pattern);
  const bad = new Fault(
    'bad_time',
    serial
      ? `a number of days as a spreadsheet counts them (${pattern})`
      : `a time of the calendar like ${exampleOf(pattern)} (${pattern})`,
  );
  const reset = new Fault('clock_reset', `a time from ${YEARS[0]} to ${YEARS[1]}`);
  const locate = (wallMs: number, dayOnly: boolean): ReadInstant => {
    if (dayOnly)
      return { at: clock.opensAt(Math.floor(wallMs / MS_PER_DAY)), mark: 'day', later: undefined, wallMs };
    const reading = clock.instantOf(wallMs);
    return { at: reading.at, mark: reading.mark, later: reading.later, wallMs };
  };
  return (cell, from, to) => {
    let written: WrittenTime | undefined;
    if (typeof cell === 'string') written = read(cell, from, to);
    else if (typeof cell === 'number') written = read(String(cell));
    else if (cell instanceof WallDate)
      written = { wallMs: cell.wallMs, dayOnly: cell.dayOnly, offsetMinutes: undefined };
    if (written === undefined) return bad;
    if (written.wallMs < FROM || written.wallMs >= UNTIL) return reset;
    if (written.offsetMinutes === undefined) {
      const ahead = written.dayOnly ? 0 : aheadMinutes * 60_000;
      return locate(written.wallMs - ahead, written.dayOnly);
    }
    const at = written.wallMs - (written.offsetMinutes + aheadMinutes) * 60_000;
    return { at, mark: 'time', later: undefined, wallMs: undefined };
  };
}
