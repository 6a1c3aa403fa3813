import type { Day } from '../site/day.ts';
import type { TimeMark } from '../site/records.ts';
import type { WallClock } from '../site/wall-clock.ts';

/** When something may have happened: between two instants, ms, both included. They are one where its time is known. */
export interface PossibleTime {
  earliest: number;
  latest: number;
}

/** The possible time of a record's instant: a date, whose instant is that at which its operating day opens, may be any time of that day. */
export function possibleTime(at: number, mark: TimeMark, clock: WallClock): PossibleTime {
  if (mark !== 'day') return { earliest: at, latest: at };
  return { earliest: at, latest: clock.opensAt(clock.operatingDay(at) + 1) - 1 };
}

/** A record with its operating day. */
interface Dated {
  day: Day;
  time: number;
  time_mark: TimeMark;
}

/**
 * Whether a record is known to have been over when a day's first cycle started, that is, whether its latest possible time is not after it. A record with a
 * date only counts from the next day on.
 */
export const isOver = (record: Dated, day: Day, firstCycle: number): boolean =>
  record.day < day || (record.day === day && record.time_mark !== 'day' && record.time <= firstCycle);

/** Order in which records are known to be over: on one day a date comes after the times. */
export const byOver = (a: Dated, b: Dated): number =>
  a.day - b.day || Number(a.time_mark === 'day') - Number(b.time_mark === 'day') || a.time - b.time;
