import { dayOfDate, formatDay, parseDay } from '../../site/day.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { toldText } from '../charts/told.ts';
import type { ReportContext } from '../page-context.ts';

export const LANES = [
  'overdue',
  'cleaning',
  'failure',
  'missing',
  'abort',
  'strainer',
  'early_stop',
] as const;
export type Lane = (typeof LANES)[number];

/** A mark of the history strip: a spell from a day to a day, or an event on one. */
export interface HistoryRow {
  unit: string;
  lane: Lane | 'service';
  lane_label: string;
  from: string;
  to: string;
  mark: 'spell' | 'event';
  /** What happened: counted or contradicted cleaning, number of aborts, kind of service. */
  detail: string;
  /** The same in words, where it is drawn. */
  detail_label: string;
  count: number;
  /** What the mark says of itself, with its unit. */
  told: string;
}

export const HISTORY_COLUMNS = ['unit', 'lane', 'from', 'to', 'mark', 'detail', 'count'] as const;

/** Spells and events of one unit over the whole record. Lanes without a mark have no row. */
export function historyRows(context: ReportContext, unit: string): HistoryRow[] {
  const { review, words } = context;
  const days = context.daysOf(unit);
  const row = (
    lane: HistoryRow['lane'],
    from: string,
    to: string,
    mark: HistoryRow['mark'],
    detail = '',
    count = 1,
  ): HistoryRow => ({
    unit,
    lane,
    lane_label: words.charts.lane[lane] ?? lane,
    from,
    to,
    mark,
    detail,
    detail_label: lane === 'service' ? (words.terms.era[detail] ?? detail) : '',
    count,
    told: toldText({ unit, tip: tipOf(words, lane, from, to, mark, detail, count) }),
  });
  const event = (lane: Lane, when: (day: UnitDay) => number): HistoryRow[] =>
    days.filter((day) => when(day) > 0).map((day) => row(lane, day.date, day.date, 'event', '', when(day)));
  const contradicted = review.contradicted_records
    .filter((record) => record.unit === unit)
    .map((record) => {
      const date = record.time.slice(0, 10);
      return row('cleaning', date, date, 'event', 'contradicted');
    });
  const eras = review.units.find((of) => of.unit === unit)?.eras ?? [];
  return [
    ...spells(days).map(([from, to]) => row('overdue', from, dayAfter(to), 'spell')),
    ...cleaningDays(days).map((day) => row('cleaning', day, day, 'event', 'counted')),
    ...contradicted,
    ...event('failure', (day) => day.failed ?? 0),
    ...event('missing', (day) => (day.test_timing === 'missing' ? 1 : 0)),
    ...event('abort', (day) => day.cleanliness_aborts),
    ...context
      .dueOf(unit)
      .filter((task) => task.task === 'drain_strainer' && task.state === 'missed')
      .map((task) => row('strainer', formatDay(task.due), formatDay(task.due), 'event')),
    ...event('early_stop', (day) => day.early_stops),
    ...eras
      .filter((era) => era.opened_by !== null)
      .map((era) => row('service', era.from, era.from, 'event', era.opened_by!)),
  ];
}

function tipOf(
  words: ReportContext['words'],
  lane: HistoryRow['lane'],
  from: string,
  to: string,
  mark: HistoryRow['mark'],
  detail: string,
  count: number,
): string {
  const name = words.charts.lane[lane] ?? lane;
  if (mark === 'spell') return words.tips.spell(from, dayBefore(to), name);
  if (lane === 'service') return words.tips.day(from, words.terms.era[detail] ?? detail);
  if (detail === 'contradicted') return words.tips.day(from, words.tips.contradicted);
  return words.tips.day(from, count > 1 ? words.tips.times(name, count) : name);
}

/** Runs of days of use on which the chamber was overdue, first and last day of each. */
function spells(days: readonly UnitDay[]): [string, string][] {
  const list: [string, string][] = [];
  let open = false;
  for (const day of days) {
    if (day.chamber_overdue !== 1) open = false;
    else if (open) list.at(-1)![1] = day.date;
    else {
      list.push([day.date, day.date]);
      open = true;
    }
  }
  return list;
}

/** Days of the chamber cleanings that count, read off the clock: the day less the days since. */
function cleaningDays(days: readonly UnitDay[]): string[] {
  const found = new Set(
    days.filter((day) => day.chamber_clock_days !== null).map((day) => day.day - day.chamber_clock_days!),
  );
  return [...found].sort((a, b) => a - b).map(formatDay);
}

const dayBefore = (date: string): string => formatDay(parseDay(date)! - 1);

function dayAfter(date: string): string {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  return formatDay(dayOfDate(year, month, day) + 1);
}
