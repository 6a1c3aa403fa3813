import type { Review } from '../../findings/review-schema.ts';
import { toldText } from '../charts/told.ts';
import type { Words } from '../words/words.ts';

/** A class of the clock with a rate per 100 and its interval; drawn bounds are cut to the scale. */
export interface ClockRow {
  scope: string;
  from_day: number;
  to_day: number | null;
  class_label: string;
  events: number;
  of: number;
  per_100: number | null;
  low: number | null;
  high: number | null;
  high_drawn: number | null;
  arrow_high: number | null;
  label: string;
  /** What the mark says of itself, with its unit. */
  told: string;
}

export const CLOCK_COLUMNS = [
  'scope',
  'from_day',
  'to_day',
  'events',
  'of',
  'per_100',
  'low',
  'high',
] as const;

/** An interval that reaches further than so many times the highest rate is cut and ends in an arrow. */
const CUT_AT = 3;

/** Failures or aborts by days since the last counted chamber cleaning, for one scope. */
export function clockRows(
  review: Review,
  scope: string,
  outcome: 'failed_days' | 'aborts',
  words: Words,
): ClockRow[] {
  const times100 = (value: number | null) => (value === null ? null : value * 100);
  const classes = review.by_clock.filter((row) => row.scope === scope);
  const highest = Math.max(0, ...classes.map((row) => row[outcome].rate ?? 0));
  const highs = classes.map((row) => row[outcome].high ?? 0);
  const cut =
    100 * (highest > 0 ? Math.max(highest * CUT_AT, Math.min(...highs.filter((high) => high > 0))) : 1);
  return classes.map((row) => {
    const rate = row[outcome];
    const high = times100(rate.high);
    const class_label = words.charts.clockClass(row.from_day, row.to_day);
    return {
      scope,
      from_day: row.from_day,
      to_day: row.to_day,
      class_label,
      events: rate.events,
      of: rate.of,
      per_100: times100(rate.rate),
      low: times100(rate.low),
      high,
      high_drawn: high === null ? null : Math.min(high, cut),
      arrow_high: high !== null && high > cut ? cut : null,
      label: rate.of === 0 ? words.charts.noDays : words.charts.of(rate.events, rate.of),
      told: toldText({
        unit: scope === 'fleet' ? '' : scope,
        tip: words.tips.clockClass(class_label, rate.events, rate.of, {
          per_100: times100(rate.rate),
          low: times100(rate.low),
          high,
        }),
      }),
    };
  });
}
