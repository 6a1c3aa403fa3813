import type { Origin, TimeMark } from '../site/records.ts';
import type { FileTally } from './file-tally.ts';

/** A record of whatever kind, as the steps after reading handle it. */
export interface AnyRecord {
  unit?: string;
  time_mark: TimeMark;
  origin: Origin;
  [field: string]: unknown;
}

/** Second readings of the times that occur twice, ms. */
export interface LaterReadings {
  start: number | undefined;
  end: number | undefined;
}

/** A row that became a record, until it is known whether another row says the same. */
export interface Draft {
  record: AnyRecord;
  tally: FileTally;
  /** Place in the order of source, file and row. */
  sequence: number;
  /** Only where the start or end of a cycle is a wall time that occurs twice. */
  later: LaterReadings | undefined;
}
