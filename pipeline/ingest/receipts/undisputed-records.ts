import { TIME_FIELD } from '../../site/records.ts';
import type { RecordKind } from '../../site/vocabulary.ts';
import type { FileColumns } from '../file-columns.ts';
import type { PartTally } from '../settlement.ts';
import { recordViews } from './record-view.ts';

/** Columns of a unit with what becomes of their rows. */
export interface TalliedFile {
  columns: FileColumns;
  tally: PartTally;
}

/**
 * The records of a unit where nothing is to be decided between its rows: no two are of one time, and no time occurs twice. They are views of their columns, in order of time, the same as
 * `finishRecords` gives, and are counted as records of their files.
 *
 * @param files the unit's part of files of one kind, in order of source and file
 * @returns undefined where something is to be decided; nothing is counted then
 */
export function undisputedRecords(kind: RecordKind, files: readonly TalliedFile[]): object[] | undefined {
  const records: object[] = [];
  const times: number[] = [];
  for (const { columns } of files) {
    const time = new Map(columns.columns).get(TIME_FIELD[kind]);
    if (columns.choices.length > 0 || time?.type !== 'number') return undefined;
    const make = recordViews(columns);
    for (let index = 0; index < columns.count; index++) {
      records.push(make(index));
      times.push(time.values[index]!);
    }
  }
  const order = isInOrder(times) ? undefined : places(times).sort((a, b) => times[a]! - times[b]!);
  for (let at = 1; order && at < order.length; at++)
    if (times[order[at]!] === times[order[at - 1]!]) return undefined;
  for (const { tally, columns } of files) tally.count.records += columns.count;
  return order ? order.map((at) => records[at]!) : records;
}

/** Whether each time lies after the one before, as in exports nearly always. */
function isInOrder(times: readonly number[]): boolean {
  for (let at = 1; at < times.length; at++) if (times[at]! <= times[at - 1]!) return false;
  return true;
}

const places = (list: readonly unknown[]): number[] => list.map((_, at) => at);
