import type { ChartPoint, Review } from '../../findings/review-schema.ts';
import { toldText } from '../charts/told.ts';
import type { Words } from '../words/words.ts';
import { monthsFromTo } from './months.ts';

/** A month of one series, per 100 of its denominator. */
export interface MonthlyRow {
  scope: string;
  scope_label: string;
  month: string;
  month_label: string;
  events: number;
  of: number;
  per_100: number | null;
  low: number | null;
  high: number | null;
  centre: number | null;
  lower: number | null;
  upper: number | null;
  baseline: number;
  signal: string;
  /** Word of the signal, or the count of the month under review; else empty. */
  label: string;
  point: 'signal' | 'review_month' | 'month';
  /** What the mark says of itself, with its unit. */
  told: string;
}

export const MONTHLY_COLUMNS = [
  'scope',
  'month',
  'events',
  'of',
  'per_100',
  'low',
  'high',
  'centre',
  'lower',
  'upper',
  'baseline',
  'signal',
] as const;

const times100 = (value: number | null): number | null => (value === null ? null : value * 100);

/** Points of the monthly charts; months between a series' first and last that have no point stand as empty months. */
export function monthlyRows(points: readonly ChartPoint[], review: Review, words: Words): MonthlyRow[] {
  const months = monthsBetween(points);
  const byScope = new Map<string, Map<string, ChartPoint>>();
  for (const point of points) {
    const ofScope = byScope.get(point.scope) ?? new Map<string, ChartPoint>();
    byScope.set(point.scope, ofScope.set(point.month, point));
  }
  return [...byScope].flatMap(([scope, ofScope]) =>
    months.map((month) => {
      const point = ofScope.get(month);
      const isReview = month === review.period.month;
      const events = point?.events ?? 0;
      const of = point?.of ?? 0;
      const signal = point?.signals[0] ?? '';
      const count = words.charts.of(events, of);
      const per_100 = times100(point?.value ?? null);
      const low = times100(point?.low ?? null);
      const high = times100(point?.high ?? null);
      const lower = times100(point?.lower ?? null);
      const upper = times100(point?.upper ?? null);
      const name = scope === 'fleet' ? words.terms.fleet : scope;
      const rule = words.terms.rule[signal.split(' ')[0] ?? ''] ?? signal;
      return {
        scope,
        scope_label: name,
        month,
        month_label: `${words.format.monthShort(month)}|${month.slice(0, 4)}`,
        events,
        of,
        per_100,
        low,
        high,
        centre: times100(point?.centre ?? null),
        lower,
        upper,
        baseline: point?.baseline ? 1 : 0,
        signal,
        label: of > 0 && (isReview || signal !== '') ? count : '',
        point: signal !== '' ? 'signal' : isReview ? 'review_month' : 'month',
        told: toldText({
          unit: scope === 'fleet' ? '' : scope,
          tip: words.tips.of(
            name,
            words.tips.month(month, { events, of, per_100, low, high, lower, upper, signal: rule }),
          ),
        }),
      };
    }),
  );
}

function monthsBetween(points: readonly ChartPoint[]): string[] {
  const months = points.map((point) => point.month).toSorted();
  return months.length === 0 ? [] : monthsFromTo(months[0]!, months.at(-1)!);
}
