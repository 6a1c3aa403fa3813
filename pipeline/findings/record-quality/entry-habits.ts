import { median } from 'simple-statistics';
import { groupBy } from '../../group-by.ts';
import { type PackedRows, packRows, unpackRows } from '../../packed-rows.ts';
import type { Origin, TimeMark } from '../../site/records.ts';
import { binomialTail } from '../../statistics/distributions/beta.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { EntryHabits } from './record-quality-schema.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const LATE_HOURS = 12;
/** So many records of one minute are a batch. */
const BATCH = 5;

const KINDS = ['air_removal_tests', 'leak_tests', 'cleanings'] as const;

/** When a record says that something was, and when it was typed. */
interface Entered {
  time: number;
  time_mark: TimeMark;
  entered_at?: number | undefined;
}

/** Times of the records of one source. */
export interface TimesOfSource {
  source: string;
  kind: EntryHabits['kind'];
  times: PackedRows<Entered>;
}

/** The times of the records of a unit that people write, by kind and source. */
export function timesOfSources({
  tests: air_removal_tests,
  leak_tests,
  cleanings,
}: Pick<UnitHistory, 'tests' | 'leak_tests' | 'cleanings'>): TimesOfSource[] {
  const records: Record<(typeof KINDS)[number], readonly (Entered & { origin: Origin })[]> = {
    air_removal_tests,
    leak_tests,
    cleanings,
  };
  return KINDS.flatMap((kind) =>
    [...groupBy(records[kind], ({ origin }) => origin.source)].map(([source, list]) => ({
      source,
      kind,
      times: packRows<Entered>(list, ['time', 'time_mark', 'entered_at']),
    })),
  );
}

/**
 * How records that people write were entered, for each source: minutes on fives (digit preference: a clock gives 1 in 5), typing long after the event, many records
 * of one minute. Instants serve for minutes of the wall clock: all zones have lain whole quarters of an hour from UTC since 2000 (from memory).
 *
 * @param times of one source in one or more parts
 */
export function entryHabits(times: readonly TimesOfSource[]): EntryHabits[] {
  const sources = groupBy(times, ({ kind, source }) => `${kind}\u0000${source}`);
  return [...sources.values()]
    .map((parts) => ({
      source: parts[0]!.source,
      kind: parts[0]!.kind,
      ...habitsOf(parts.flatMap((part) => unpackRows(part.times))),
    }))
    .sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind));
}

function habitsOf(list: readonly Entered[]): Omit<EntryHabits, 'source' | 'kind'> {
  const timed = list.filter(({ time_mark }) => time_mark !== 'day');
  const fives = timed.filter(({ time }) => Math.floor(time / MINUTE) % 5 === 0).length;
  const entered = timed.filter(({ entered_at }) => entered_at !== undefined);
  const delays = entered.map(({ time, entered_at }) => (entered_at! - time) / HOUR);
  const stamps = list.flatMap(({ entered_at, time, time_mark }) =>
    entered_at !== undefined ? [entered_at] : time_mark === 'day' ? [] : [time],
  );
  const sizes = [...groupBy(stamps, (stamp) => Math.floor(stamp / MINUTE)).values()].map(
    (group) => group.length,
  );
  return {
    records: list.length,
    timed: timed.length,
    on_five_minutes: fives,
    on_five_share: timed.length === 0 ? null : fourth(fives / timed.length),
    on_five_p: timed.length === 0 ? null : chance(fives, timed.length),
    with_entry_time: list.filter(({ entered_at }) => entered_at !== undefined).length,
    entry_median_hours: delays.length === 0 ? null : fourth(median(delays)),
    entered_late: delays.filter((hours) => hours > LATE_HOURS).length,
    entered_before: delays.filter((hours) => hours < -1 / 60).length,
    in_batches: sizes.filter((size) => size >= BATCH).reduce((sum, size) => sum + size, 0),
    largest_batch: Math.max(0, ...sizes),
  };
}

/** Chance of so many or more on fives, where 1 in 5 is. */
const chance = (count: number, of: number): number =>
  count === 0 ? 1 : Number(Math.min(1, binomialTail(count, of, 0.2, 'upper')).toPrecision(3));

const fourth = (value: number): number => Number(value.toPrecision(4));
