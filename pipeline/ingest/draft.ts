import type { Origin, TimeMark } from '../site/records.ts';
import type { FileTally } from './file-tally.ts';

/** The fields of a record of whatever kind, as they are read from one row. */
export interface RowFields {
  unit?: string;
  time_mark: TimeMark;
  [field: string]: unknown;
}

/** A record of whatever kind, as the steps after reading handle it. */
export interface AnyRecord extends RowFields {
  origin: Origin;
}

/** The readings of the start and end of a cycle of which one is a wall time that occurs twice: earlier before later, ms. */
export interface TimeChoices {
  starts: readonly number[];
  ends: readonly number[];
}

/** A row that became a record, until it is known whether another row says the same. */
export interface Draft {
  record: AnyRecord;
  tally: FileTally;
  /** Place in the order of source, file and row. */
  sequence: number;
  choices: TimeChoices | undefined;
}
