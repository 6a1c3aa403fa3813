import { TIME_FIELD } from '../../site/records.ts';
import type { RecordKind } from '../../site/vocabulary.ts';
import type { FileColumns } from '../file-columns.ts';
import type { ReadOnce } from '../history/read-once.ts';
import { KNOWN_AT_END } from '../lone/lone-at-ends.ts';
import type { ReadJob } from '../read-jobs.ts';

/** Kinds whose records are each of a unit, and of which there may be millions. The records of the other kinds are few. */
export const KINDS_OF_UNITS: ReadonlySet<RecordKind> = new Set<RecordKind>([
  'cycles',
  'air_removal_tests',
  'leak_tests',
  'cleanings',
  'service',
]);

/** The records of one unit in one file: how many, and the instants between which they lie, ms. */
export interface UnitSpan {
  unit: string;
  count: number;
  first: number;
  last: number;
}

/** What is held of a file that was read while its records stand in the history: enough to know whose they are. */
export interface Receipt extends Pick<FileColumns, 'kind' | 'read' | 'problems' | 'count'> {
  job: ReadJob;
  units: UnitSpan[];
  /** Of cycles and air-removal tests: the five earliest and five latest instants at which there are records, each once and in order, ms. What is needed to guess which records are lone. */
  ends: number[];
  /** Name of its file in the history; undefined where nothing could be kept, and the columns are held instead. */
  kept: string | undefined;
  columns: FileColumns | undefined;
}

export function receiptOf(job: ReadJob, { columns, name }: ReadOnce): Receipt {
  const { kind, read, problems, count } = columns;
  const units = KINDS_OF_UNITS.has(kind) ? spansOf(columns) : [];
  return {
    job,
    kind,
    read,
    problems,
    count,
    units,
    ends: kind === 'cycles' || kind === 'air_removal_tests' ? endsOf(columns) : [],
    kept: name,
    columns: name === undefined ? columns : undefined,
  };
}

function spansOf({ kind, count, columns }: FileColumns): UnitSpan[] {
  const of = new Map(columns);
  const unit = of.get('unit');
  const time = of.get(TIME_FIELD[kind]);
  if (unit?.type !== 'words' || time?.type !== 'number') return [];
  const spans = unit.words.map(
    (word): UnitSpan => ({
      unit: word,
      count: 0,
      first: Number.POSITIVE_INFINITY,
      last: Number.NEGATIVE_INFINITY,
    }),
  );
  for (let index = 0; index < count; index++) {
    const span = spans[unit.codes[index]!]!;
    const at = time.values[index]!;
    span.count++;
    if (at < span.first) span.first = at;
    if (at > span.last) span.last = at;
  }
  return spans;
}

function endsOf({ kind, columns }: FileColumns): number[] {
  const time = new Map(columns).get(TIME_FIELD[kind]);
  return time?.type === 'number' ? outermost(time.values) : [];
}

/** The five least and five greatest of numbers, each once and in order; all where there are no more than ten. */
export function outermost(values: Iterable<number>): number[] {
  const least: number[] = [];
  const greatest: number[] = [];
  for (const value of values) {
    take(least, value, 1);
    take(greatest, value, -1);
  }
  return [...new Set([...least, ...greatest])].sort((a, b) => a - b);
}

/** Takes a value among the outermost, which are in order; `sign` is -1 where they fall. */
function take(list: number[], value: number, sign: 1 | -1): void {
  let at = list.length;
  while (at > 0 && sign * (list[at - 1]! - value) > 0) at--;
  if (at === KNOWN_AT_END || list[at - 1] === value) return;
  list.splice(at, 0, value);
  if (list.length > KNOWN_AT_END) list.pop();
}
