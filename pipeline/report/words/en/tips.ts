import { format } from './format.ts';

const { count, integer } = format;

/** Rate per 100, with its interval where there is one. */
interface Per100 {
  per_100: number | null;
  low?: number | null;
  high?: number | null;
}

const per100 = (value: number): string => format.fixed(value, value < 9.95 ? 1 : 0);
const rate = ({ per_100, low, high }: Per100): string =>
  per_100 === null
    ? ''
    : `; ${per100(per_100)} per 100${typeof low !== 'number' || typeof high !== 'number' ? '' : ` (interval ${per100(low)} to ${per100(high)})`}`;
const of = (events: number, all: number): string => `${format.integer(events)} of ${format.integer(all)}`;
const clockTime = (hour: number): string => `${String(hour).padStart(2, '0')}:00`;

/** What a mark of a picture says of itself when it is pointed at or read. */
export const tips = {
  of: (name: string, text: string): string => `${name}, ${text}`,
  month: (
    month: string,
    point: {
      events: number;
      of: number;
      lower: number | null;
      upper: number | null;
      signal: string;
    } & Per100,
  ): string =>
    point.of === 0
      ? `${format.month(month)}: nothing to count`
      : `${format.month(month)}: ${of(point.events, point.of)}${rate(point)}${
          point.lower === null || point.upper === null
            ? ''
            : `; limits ${per100(point.lower)} to ${per100(point.upper)}`
        }${point.signal === '' ? '' : `; signal: ${point.signal}`}`,
  day: (date: string, what: string): string => `${format.date(date)}: ${what}`,
  spell: (from: string, to: string, what: string): string => `${format.span(from, to)}: ${what}`,
  state: (task: string, state: string): string => `${format.sentence(task)}: ${state}`,
  due: (task: string, n: number, state: string, due: number): string =>
    `${format.sentence(task)}: ${of(n, due)} ${state}`,
  clockClass: (label: string, events: number, all: number, value: Per100): string =>
    `${label} days: ${of(events, all)}${rate(value)}`,
  side: (label: string, events: number, all: number, value: Per100): string =>
    `${label}: ${of(events, all)}${rate(value)}`,
  comparison: (exposed: string, unexposed: string, ratio: string, verdict: string): string =>
    `${exposed} with it, ${unexposed} without; ratio ${ratio}; ${verdict}`,
  histogram: (label: string, days: number, result: string): string =>
    `${label} days: ${count(days, 'test day', 'test days')} ${result}`,
  ranking: (counts: string, value: number | null, shrunken: number, low: number, high: number): string =>
    `${counts}${value === null ? '' : `, ${per100(value)} per 100 as counted`}; ${per100(shrunken)} (${per100(low)} to ${per100(high)}) when drawn toward the fleet`,
  contradicted: 'chamber cleaning on record that the cycle log contradicts',
  times: (name: string, n: number): string => `${name}, ${format.integer(n)} times`,
  intervalClass: (
    clock: string,
    label: string,
    events: number,
    all: number,
    value: Per100,
    fitted: number | null,
  ): string =>
    `${format.sentence(clock)} ${label}: ${of(events, all)}${rate(value)}${fitted === null ? '' : `; the fit expects ${format.twoFigures(fitted)}`}`,
  /** A year at an interval, by what is made small. */
  year: {
    hours: (interval: string, hours: number, low: number, high: number): string =>
      `${interval}: ${integer(hours)} hours out of use a year (interval ${integer(low)} to ${integer(high)})`,
    cost: (interval: string, cost: number, low: number, high: number): string =>
      `${interval}: a year costs ${integer(cost)} (interval ${integer(low)} to ${integer(high)})`,
  },
  appearance: (label: string, inspections: number, score: number): string =>
    `Days ${label}: ${count(inspections, 'inspection', 'inspections')} with appearance ${score}`,
  /** An hour of the week, Monday 1, and the share of the weeks in which it was used. */
  hour: (weekday: number, hour: number, share: number): string =>
    `${format.weekday(weekday)} ${clockTime(hour)} to ${clockTime(hour + 1)}: a cycle ran in ${format.percent(share)} of weeks`,
  value: (value: string, measure: string): string => `${value} ${measure}`.trim(),
};
export type TipWords = typeof tips;
