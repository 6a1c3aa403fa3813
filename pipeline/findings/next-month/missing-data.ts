import { groupBy } from '../../group-by.ts';
import type { FileRead } from '../../ingest/reading.ts';
import { clocksOfUnits } from '../../site/clocks-of-units.ts';
import { type Day, formatDay } from '../../site/day.ts';
import { type Records, TIME_FIELD } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import { RECORD_KINDS, type RecordKind } from '../../site/vocabulary.ts';
import { LOG_GAP_DAYS } from '../../transform/cleaning/cleaning-log.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Period } from '../period.ts';
import type { MissingData } from './next-month-schema.ts';

/** Kinds of which there is a record only when something happens: silence says nothing. */
const EVENTS: readonly RecordKind[] = ['service', 'actions'];
/** Fewer days with a record give no habit from which silence could differ (our choice). */
const LEAST_DAYS = 5;
/** Silence of so many days is never remarked on (our choice). */
const QUIET_DAYS = 7;
/** Days back from which the longest usual silence of a source is taken. */
const MEMORY_DAYS = 400;
/** Share of records without a time or an end from which it is worth a word (our choice). */
const LACKING_SHARE = 0.5;

const EMPTY: Omit<MissingData, 'code'> = {
  unit: null,
  site: null,
  source: null,
  since: null,
  count: null,
  of: null,
};

/** Operating days on which a source has a record, each once. */
type SourceDays = [source: string, days: Day[]];

/** What is told of missing data from the records of some units, all of their sites. */
export interface MissingParts {
  /** A source may stand in it more than once. */
  source_days: SourceDays[];
  logs: MissingData[];
  units: MissingData[];
}

/** What is told of a unit by itself, and of the cleaning log of its site by its records. */
export interface MissingOfUnit {
  source_days: SourceDays[];
  log: { site: string; in_use: boolean; last_cleaning: Day | null };
  unit: MissingData[];
}

/** @param history up to the end of the month */
export function missingOfUnit(site: Site, history: UnitHistory, period: Period): MissingOfUnit {
  const { cycles, tests: air_removal_tests, leak_tests, cleanings, service } = history;
  return {
    source_days: sourceDays(site, { cycles, air_removal_tests, leak_tests, cleanings, service }),
    log: {
      site: history.site,
      in_use: history.use_days.some((use) => use.day >= period.from),
      last_cleaning: latest(cleanings.map((cleaning) => cleaning.day)),
    },
    unit: ofUnit(history, period),
  };
}

/** @param others records of no unit, up to the end of the month */
export function missingParts(
  site: Site,
  others: Partial<Records>,
  units: readonly MissingOfUnit[],
  period: Period,
): MissingParts {
  const days = groupBy(
    units.flatMap((unit) => unit.source_days),
    ([source]) => source,
  );
  return {
    source_days: [
      ...[...days].map(([source, of]): SourceDays => [source, [...new Set(of.flatMap(([, list]) => list))]]),
      ...sourceDays(site, others),
    ],
    logs: silentLogs(
      units.map((unit) => unit.log),
      period,
    ),
    units: units.flatMap((unit) => unit.unit),
  };
}

/**
 * Data that the next review will miss if nothing changes, told from this month's records: sources that fell silent, units without leak tests or durations, times that are
 * not written down, a cleaning log with no entry.
 *
 * @param files what was read: a source whose files gave nothing has no record to be told by
 */
export function missingData(
  site: Site,
  { source_days, logs, units }: MissingParts,
  files: readonly FileRead[],
  period: Period,
): MissingData[] {
  return [...silentSources(site, source_days, files, period), ...logs, ...units];
}

export function sourceDays(site: Site, records: Partial<Records>): SourceDays[] {
  const clockOf = clocksOfUnits(site);
  const first = site.sites.values().next().value!.clock;
  const days = new Map<string, Set<Day>>();
  for (const kind of RECORD_KINDS) {
    for (const row of records[kind] ?? []) {
      const { unit, origin } = row as { unit?: string; origin: { source: string } };
      const at = (row as unknown as Record<string, number>)[TIME_FIELD[kind]]!;
      const set = days.get(origin.source) ?? new Set<Day>();
      set.add((unit === undefined ? first : clockOf(unit)).operatingDay(at));
      days.set(origin.source, set);
    }
  }
  return [...days].map(([source, of]) => [source, [...of]]);
}

function silentSources(
  site: Site,
  sourceDays: MissingParts['source_days'],
  files: readonly FileRead[],
  { until }: Period,
): MissingData[] {
  const days = groupBy(sourceDays, ([source]) => source);
  const declared = site.declared.sources !== undefined;
  const tried = new Set(files.map((file) => file.source));
  return site.sources.flatMap(({ name, kind, site: place }): MissingData[] => {
    const of = days.get(name);
    const about = { ...EMPTY, source: name, site: place ?? null };
    if (!of) return declared || tried.has(name) ? [{ ...about, code: 'source_without_records' }] : [];
    if (EVENTS.includes(kind)) return [];
    const sorted = [...new Set(of.flatMap(([, list]) => list))]
      .sort((a, b) => a - b)
      .filter((day) => day >= until - MEMORY_DAYS);
    const last = sorted.at(-1);
    if (last === undefined || sorted.length < LEAST_DAYS) return [];
    const longest = sorted.slice(1).reduce((gap, day, index) => Math.max(gap, day - sorted[index]!), 0);
    const silent = until - 1 - last;
    return silent > Math.max(QUIET_DAYS, longest)
      ? [{ ...about, code: 'source_stopped', since: formatDay(last) }]
      : [];
  });
}

function silentLogs(units: readonly MissingOfUnit['log'][], { until }: Period): MissingData[] {
  return [...groupBy(units, ({ site }) => site)].flatMap(([site, of]): MissingData[] => {
    const last = latest(of.flatMap(({ last_cleaning }) => last_cleaning ?? []));
    if (!of.some(({ in_use }) => in_use) || (last !== null && until - 1 - last <= LOG_GAP_DAYS)) return [];
    return [{ ...EMPTY, code: 'cleaning_log_silent', site, since: last === null ? null : formatDay(last) }];
  });
}

const latest = (days: readonly Day[]): Day | null =>
  days.reduce<Day | null>((last, day) => (last === null || day > last ? day : last), null);

function ofUnit(history: UnitHistory, { from }: Period): MissingData[] {
  const { unit, site } = history;
  const about = { ...EMPTY, unit, site };
  if (!history.use_days.some((use) => use.day >= from)) return [];
  const found: MissingData[] = [];
  const lastLeak = history.leak_tests.at(-1)?.day ?? null;
  if (lastLeak === null || lastLeak < from)
    found.push({
      ...about,
      code: 'no_leak_tests',
      since: lastLeak === null ? null : formatDay(lastLeak),
    });
  const empty = history.cycles.filter(
    (cycle) => cycle.day >= from && (cycle.kind === 'air_removal_test' || cycle.kind === 'warm_up'),
  );
  if (empty.length > 0 && empty.every((of) => of.evacuation_s === undefined && of.heat_up_s === undefined)) {
    const last = history.cycles.findLast(
      (of) => of.evacuation_s !== undefined || of.heat_up_s !== undefined,
    )?.day;
    found.push({
      ...about,
      code: 'no_durations',
      since: last === undefined ? null : formatDay(last),
      count: empty.length,
      of: empty.length,
    });
  }
  const tests = history.tests.filter((test) => test.day >= from);
  lacking(found, about, 'tests_without_time', tests, (test) => test.ended_at === null);
  const cycles = history.cycles.filter((cycle) => cycle.day >= from && cycle.standing !== 'open');
  lacking(found, about, 'cycles_without_end', cycles, (cycle) => cycle.end === undefined);
  return found;
}

function lacking<Row>(
  found: MissingData[],
  about: Omit<MissingData, 'code'>,
  code: MissingData['code'],
  rows: readonly Row[],
  lacks: (row: Row) => boolean,
): void {
  const count = rows.filter(lacks).length;
  if (count > 0 && count / rows.length >= LACKING_SHARE)
    found.push({ ...about, code, count, of: rows.length });
}
