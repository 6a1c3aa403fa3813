import { format } from './format.ts';

const { count } = format;

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
  value: (value: string, measure: string): string => `${value} ${measure}`.trim(),
};
export type TipWords = typeof tips;
