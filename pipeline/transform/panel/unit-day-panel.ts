import type { ColumnTable } from 'arquero';
import { groupBy } from '../../group-by.ts';
import { type Day, formatDay } from '../../site/day.ts';
import { CLEANLINESS_CLASSES, UNRELATED_CLASSES } from '../../site/vocabulary.ts';
import { isInsideEpisode } from '../air-removal-tests/failure-episodes.ts';
import { testTiming } from '../air-removal-tests/test-timing.ts';
import { isProduction } from '../cycles/class-cycles.ts';
import type { JoinCount } from '../join-count.ts';
import { joinTables, tableOf } from '../join-tables.ts';
import { eraOf } from '../service/eras.ts';
import type { UnitHistory } from '../unit-history.ts';
import { stratumOf } from './strata.ts';
import type { UnitDay } from './unit-day.ts';

/** Unit and day as one number, by which tables are joined: place of the unit among the histories, and day. */
const KEY = 'unit_day';

/** More days than any record can have: the clock of a record shows a year before 2100. */
const MOST_DAYS = 100_000;

/**
 * The unit-day panel of a fleet: one row for each day of use, joined from cycles, day results and exposures. Rows come by unit (in the order
 * of the histories) and day.
 */
export function unitDayPanel(
  histories: readonly UnitHistory[],
  until: Day,
  stratumDays: number,
): { rows: UnitDay[]; joins: JoinCount[] } {
  const rowsOf = <Row extends object>(of: (history: UnitHistory, keyOf: KeyOf) => Row[]): Row[] =>
    histories.flatMap((history, place) => of(history, (day) => place * MOST_DAYS + day));
  const days = tableOf(
    rowsOf((history, keyOf) => daysOf(history, keyOf, until, stratumDays)),
    DAY_COLUMNS,
  );
  const counts = tableOf(rowsOf(cycleCountsOf), [KEY, ...COUNTED]);
  const results = tableOf(rowsOf(dayResultsOf), [KEY, 'test_result']);
  const exposures = tableOf(rowsOf(exposuresOf), EXPOSURE_COLUMNS);
  const by = {
    key: KEY,
    describe: (key: number) =>
      `unit ${histories[Math.floor(key / MOST_DAYS)]!.unit}, day ${formatDay(key % MOST_DAYS)}`,
    relationship: 'one-to-one' as const,
  };

  const withCounts = joinTables(days, counts, {
    name: 'days of use with cycle counts',
    ...by,
    unmatchedLeft: 'error',
    unmatchedRight: 'drop',
  });
  const withResults = joinTables(withCounts.table, results, {
    name: 'days of use with day results',
    ...by,
    unmatchedLeft: 'keep',
    unmatchedRight: 'drop',
  });
  const withExposures = joinTables(withResults.table, exposures, {
    name: 'days of use with exposures',
    ...by,
    unmatchedLeft: 'error',
    unmatchedRight: 'error',
  });
  // A left join puts rows without a match last: the order is made again.
  const rows = rowsOfTable(withExposures.table.orderby(KEY));
  return { rows, joins: [withCounts.count, withResults.count, withExposures.count] };
}

type KeyOf = (day: Day) => number;

const DAY_COLUMNS = [
  KEY,
  'unit',
  'site',
  'day',
  'date',
  'era',
  'stratum',
  'test_timing',
  'inside_episode',
  'out_of_service',
];
const EXPOSURE_COLUMNS = [
  KEY,
  'chamber_overdue',
  'chamber_overdue_all_records',
  'chamber_days_past_due',
  'chamber_clock_days',
  'strainers_missed',
  'flushes_missed_in_a_row',
];

function daysOf(history: UnitHistory, keyOf: KeyOf, until: Day, stratumDays: number): object[] {
  const cycles = groupBy(history.cycles, (cycle) => cycle.day);
  const tests = groupBy(history.tests, (test) => test.day);
  const first = history.use_days[0]?.day ?? 0;
  return history.use_days.map(({ day }) => {
    const era = eraOf(history.eras, day);
    return {
      [KEY]: keyOf(day),
      unit: history.unit,
      site: history.site,
      day,
      date: formatDay(day),
      era: era.index,
      stratum: stratumOf(era, day, first, until, stratumDays),
      test_timing: testTiming(cycles.get(day) ?? [], tests.get(day) ?? []),
      inside_episode: isInsideEpisode(history.episodes, day) ? 1 : 0,
      out_of_service: history.out_of_service.has(day) ? 1 : 0,
    };
  });
}

const COUNTED = [
  'production_cycles',
  'cleanliness_aborts',
  'unrelated_aborts',
  'unclassified_aborts',
  'purges',
  'early_stops',
] as const;

type CycleCounts = Record<typeof KEY | (typeof COUNTED)[number], number>;

/** Counts of a unit's cycles by operating day. */
function cycleCountsOf({ cycles }: UnitHistory, keyOf: KeyOf): CycleCounts[] {
  const days = new Map<Day, CycleCounts>();
  for (const cycle of cycles) {
    const { day, standing, abort_class } = cycle;
    let counts = days.get(day);
    if (!counts) {
      counts = {
        [KEY]: keyOf(day),
        production_cycles: 0,
        cleanliness_aborts: 0,
        unrelated_aborts: 0,
        unclassified_aborts: 0,
        purges: 0,
        early_stops: 0,
      };
      days.set(day, counts);
    }
    if (standing === 'purge') counts.purges++;
    else if (standing === 'early_stop') counts.early_stops++;
    else if (isProduction(cycle)) {
      counts.production_cycles++;
      if (standing !== 'abort') continue;
      if (CLEANLINESS_CLASSES.includes(abort_class!)) counts.cleanliness_aborts++;
      if (UNRELATED_CLASSES.includes(abort_class!)) counts.unrelated_aborts++;
      if (abort_class === 'unclassified') counts.unclassified_aborts++;
    }
  }
  return [...days.values()];
}

const dayResultsOf = ({ tests }: UnitHistory, keyOf: KeyOf): object[] =>
  tests
    .filter((test) => test.role === 'day_result')
    .map((test) => ({ [KEY]: keyOf(test.day), test_result: test.result }));

function exposuresOf(history: UnitHistory, keyOf: KeyOf): object[] {
  const { chamber, chamberAllRecords, strainersMissed, flushesMissedInARow } = history.cleaning;
  return history.use_days.map(({ day }) => ({
    [KEY]: keyOf(day),
    chamber_overdue: chamber?.get(day)?.overdue ?? null,
    chamber_overdue_all_records: chamberAllRecords?.get(day)?.overdue ?? null,
    chamber_days_past_due: chamber?.get(day)?.days_past_due ?? null,
    chamber_clock_days: chamber?.get(day)?.clock_days ?? null,
    strainers_missed: strainersMissed.get(day) ?? null,
    flushes_missed_in_a_row: flushesMissedInARow.get(day) ?? null,
  }));
}

/** Field by field, since rows put together by spread take several times the memory, and there may be millions. */
function rowsOfTable(table: ColumnTable): UnitDay[] {
  const columns = Object.fromEntries(table.columnNames().map((name) => [name, table.array(name)]));
  return Array.from({ length: table.numRows() }, (_, at): UnitDay => {
    const value = (name: keyof UnitDay) => columns[name]![at];
    const test_result: UnitDay['test_result'] = value('test_result') ?? null;
    const at_risk = test_result !== null && value('inside_episode') === 0 && value('out_of_service') === 0;
    return {
      unit: value('unit'),
      site: value('site'),
      day: value('day'),
      date: value('date'),
      era: value('era'),
      stratum: value('stratum'),
      test_timing: value('test_timing'),
      inside_episode: value('inside_episode'),
      out_of_service: value('out_of_service'),
      production_cycles: value('production_cycles'),
      cleanliness_aborts: value('cleanliness_aborts'),
      unrelated_aborts: value('unrelated_aborts'),
      unclassified_aborts: value('unclassified_aborts'),
      purges: value('purges'),
      early_stops: value('early_stops'),
      test_result,
      chamber_overdue: value('chamber_overdue'),
      chamber_overdue_all_records: value('chamber_overdue_all_records'),
      chamber_days_past_due: value('chamber_days_past_due'),
      chamber_clock_days: value('chamber_clock_days'),
      strainers_missed: value('strainers_missed'),
      flushes_missed_in_a_row: value('flushes_missed_in_a_row'),
      at_risk: at_risk ? 1 : 0,
      failed: test_result === null ? null : test_result === 'fail' ? 1 : 0,
    };
  });
}
