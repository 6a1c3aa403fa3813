import type { Review } from '../../findings/review-schema.ts';
import { toldText } from '../charts/told.ts';
import type { Words } from '../words/words.ts';

/** A part of a bar: test days of a unit in one class of days since cleaning, passed or failed. */
export interface HistogramRow {
  unit: string;
  class_label: string;
  result: 'passed' | 'failed';
  test_days: number;
  from_count: number;
  to_count: number;
  label: string;
  /** What the mark says of itself, with its unit. */
  told: string;
}

/** Bars of test days at risk by days since the last counted chamber cleaning. */
export function histogramRows(review: Review, unit: string, words: Words): HistogramRow[] {
  return review.by_clock
    .filter((row) => row.scope === unit)
    .flatMap(({ from_day, to_day, failed_days: { events, of } }) => {
      const shared = { unit, class_label: words.charts.clockClass(from_day, to_day) };
      const label = of === 0 ? words.charts.noDays : words.charts.of(events, of);
      const told = (days: number, result: string) =>
        toldText({ unit, tip: words.tips.histogram(shared.class_label, days, result) });
      return [
        {
          ...shared,
          result: 'failed' as const,
          test_days: events,
          from_count: 0,
          to_count: events,
          label: '',
          told: told(events, words.charts.failed),
        },
        {
          ...shared,
          result: 'passed' as const,
          test_days: of - events,
          from_count: events,
          to_count: of,
          label,
          told: told(of - events, words.charts.passed),
        },
      ];
    });
}
