import type { Origin, TimeMark } from '../site/records.ts';
import type { PartTally } from './settlement.ts';

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
  tally: PartTally;
  /** Place in the order of source, file and row. */
  sequence: number;
  choices: TimeChoices | undefined;
}

/** What a draft's record is of: its unit, or its sampling point where it has no unit; empty where it has neither. */
export const unitOf = ({ record }: Draft): string =>
  record.unit ?? (record.point as string | undefined) ?? '';
