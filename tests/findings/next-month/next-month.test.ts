import { describe, expect, it } from 'vitest';
import {
  missingData,
  missingOfUnit,
  missingParts,
} from '../../../pipeline/findings/next-month/missing-data.ts';
import { nextMonth, unitAhead } from '../../../pipeline/findings/next-month/next-month.ts';
import { nextMonthSchema } from '../../../pipeline/findings/next-month/next-month-schema.ts';
import { dayOfDate, formatDay, monthSpan, weekday } from '../../../pipeline/site/day.ts';
import type { Cleaning, LeakTest, Records } from '../../../pipeline/site/records.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { cleaning, leak, ordinaryDay, recordsOf, siteOf } from '../../transform/build.ts';

const FROM = dayOfDate(2025, 1, 2);
const period = { month: '2025-03', ...monthSpan('2025-03')! };

/** Use on each day but Sunday from 2 January 2025 on, to the end of March or a day before it. */
function use(until = period.until, parts: Partial<Records> = {}): Records {
  const days = Array.from({ length: until - FROM }, (_, index) => FROM + index).filter(
    (day) => weekday(day) !== 7,
  );
  const ordinary = days.map((day) => ordinaryDay(formatDay(day)));
  return recordsOf({
    cycles: ordinary.flatMap((of) => of.cycles),
    air_removal_tests: ordinary.flatMap((of) => of.tests),
    ...parts,
  });
}

function ahead(records: Records, yaml: string) {
  const site = siteOf(yaml);
  const { histories } = transform(site, records, period.until);
  const ahead = histories.map((history) => unitAhead(site, history, period));
  const { inspections, water, actions } = records;
  const units = histories.map((history) => missingOfUnit(site, history, period));
  const parts = missingParts(site, { inspections, water, actions }, units, period);
  const missing = missingData(site, parts, [], period);
  return nextMonthSchema.parse(nextMonth(ahead, [], [], missing, period));
}
const CHAMBER = 'cleaning: [{ task: chamber, every: 28, counted_in: calendar_days }]';
const tasks = (cleanings: Cleaning[], yaml = CHAMBER, task = 'chamber') =>
  ahead(use(period.until, { cleanings }), yaml)
    .tasks.filter((of) => of.task === task)
    .map(({ date, due, state, after, last_done }) => [date, due, state, after, last_done]);

describe('tasks that fall due', () => {
  it('follow from the last that counts, on days of expected use', () => {
    // 10 March and 28 days: 7 April, a Monday.
    expect(tasks([cleaning('chamber', '2025-03-10 17:00')])).toEqual([
      ['2025-04-07', '2025-04-07', 'due', 'interval', '2025-03-10'],
    ]);
    // 9 March and 28 days: 6 April, a Sunday, on which the unit is not in use.
    expect(tasks([cleaning('chamber', '2025-03-09 10:00')])).toEqual([
      ['2025-04-07', '2025-04-06', 'due', 'interval', '2025-03-09'],
    ]);
  });

  it('stand on the first day of the month where they fell due before it, and again an interval later', () => {
    expect(tasks([cleaning('chamber', '2025-02-03 17:00')])).toEqual([
      ['2025-04-01', '2025-03-03', 'outstanding', 'interval', '2025-02-03'],
      ['2025-04-29', '2025-04-29', 'due', 'interval', '2025-02-03'],
    ]);
  });

  it('count from the first day of use where none is on record', () => {
    expect(tasks([])[0]).toEqual(['2025-04-01', '2025-01-30', 'outstanding', 'interval', null]);
  });

  it('count days of use and cycles as the policy does', () => {
    const policy = (every: number, counted: string) =>
      `cleaning: [{ task: chamber, every: ${every}, counted_in: ${counted} }]`;
    // After 28 March: 29 and 31 March are the first two days of use, then 1 to 5, 7 to 11 and so on: the 12th is 11 April.
    expect(tasks([cleaning('chamber', '2025-03-28 17:00')], policy(12, 'days_of_use'))[0]).toEqual([
      '2025-04-11',
      '2025-04-11',
      'due',
      'interval',
      '2025-03-28',
    ]);
    // Four cycles a day: 48 cycles are over after 12 days of use, so that it falls due on the 13th, before its first cycle.
    expect(tasks([cleaning('chamber', '2025-03-28 17:00')], policy(48, 'cycles'))[0]![0]).toBe('2025-04-12');
  });

  it('has a drain flush after each chamber cleaning, and a strainer before each day of use', () => {
    const cleanings = [cleaning('chamber', '2025-03-10 17:00'), cleaning('drain_flush', '2025-03-10 18:00')];
    expect(tasks(cleanings, CHAMBER, 'drain_flush')).toEqual([
      ['2025-04-07', '2025-04-07', 'due', 'chamber_cleaning', '2025-03-10'],
    ]);
    const strainer = tasks(cleanings, CHAMBER, 'drain_strainer');
    // April 2025 has 30 days, four of them Sundays.
    expect(strainer).toHaveLength(26);
    expect(strainer.every(([, , state]) => state === 'each_day_of_use')).toBe(true);
  });

  it('are none where the unit is expected on no day', () => {
    const found = ahead(use(dayOfDate(2025, 1, 20)), CHAMBER);
    expect(found.tasks).toEqual([]);
    expect(found.missing).toMatchObject([{ code: 'no_use_expected', unit: 'U1', since: '2025-01-18' }]);
  });
});

describe('data that will be missing', () => {
  const missing = (records: Records, yaml = '') =>
    ahead(records, yaml).missing.map(({ code, since, count, of }) => [code, since, count, of]);
  const weekly = (until: string): LeakTest[] =>
    ['2025-01-06', '2025-01-13', '2025-01-20', '2025-01-27', '2025-02-03', '2025-02-10', '2025-03-03']
      .filter((date) => date <= until)
      .map((date) => leak(`${date} 06:30`, 0.05));
  const timed = (records: Records): Records => ({
    ...records,
    cycles: records.cycles.map((cycle) => ({ ...cycle, evacuation_s: 300 })),
    cleanings: [cleaning('drain_strainer', '2025-03-31 05:50')],
  });

  it('is none where all is written down', () => {
    expect(missing(timed(use(period.until, { leak_tests: weekly('2025-12-31') })))).toEqual([]);
  });

  it('names units without leak tests and durations, and a silent cleaning log', () => {
    expect(missing(use(period.until, { leak_tests: weekly('2025-02-10') }))).toEqual([
      ['cleaning_log_silent', null, null, null],
      ['no_leak_tests', '2025-02-10', null, null],
      // 26 days of use in March 2025, each with a warm-up and a test.
      ['no_durations', null, 52, 52],
    ]);
  });

  it('names tests and cycles whose time is not written down', () => {
    const records = timed(use(period.until, { leak_tests: weekly('2025-12-31') }));
    const found = missing({
      ...records,
      cycles: records.cycles.map(({ end: _, ...cycle }) => cycle),
      air_removal_tests: records.air_removal_tests.map((test) => ({ ...test, time_mark: 'day' as const })),
    });
    expect(found.map(([code]) => code)).toContain('cycles_without_end');
  });

  it('names sources that fell silent for longer than ever, and those without a record', () => {
    const yaml = `sources:
  - { name: test, kind: cycles, files: a.csv }
  - { name: never, kind: water, files: b.csv }`;
    const quiet = use(dayOfDate(2025, 3, 22));
    const found = ahead(quiet, yaml).missing.filter((of) => of.source !== null);
    expect(found.map((of) => [of.code, of.source, of.since])).toEqual([
      ['source_stopped', 'test', '2025-03-21'],
      ['source_without_records', 'never', null],
    ]);
    // A week of silence is never remarked on: the last day with a record is 24 March.
    const still = ahead(use(dayOfDate(2025, 3, 25)), yaml).missing;
    expect(still.some((of) => of.code === 'source_stopped')).toBe(false);
  });
});
