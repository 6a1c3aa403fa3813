import type { Comparison } from '../../findings/review-schema.ts';
import { eventRate, proportion } from '../../findings/summaries/rate.ts';
import { toldText } from '../charts/told.ts';
import type { ReportContext } from '../page-context.ts';

/** One side of a comparison, as counted: a line of the picture. Bounds are cut to the scale. */
export interface ContrastRow {
  id: string;
  unit: string;
  /** Place from the top, a line for the name of the comparison before its two sides. */
  place: number;
  side: 'name' | 'exposed' | 'unexposed';
  label: string;
  counts: string;
  per_100: number | null;
  low: number | null;
  high_drawn: number | null;
  arrow: number | null;
  told: string;
}

/** The scale holds so many times the highest rate; intervals that reach further are cut and end in an arrow. */
const CUT_AT = 2.5;
const FULL_LEVEL = 0.95;

/** Name and two sides of each comparison, with exact intervals of the counted rates. */
export function contrastRows(
  comparisons: readonly Comparison[],
  { words, review }: Pick<ReportContext, 'words' | 'review'>,
): ContrastRow[] {
  const setting = review.settings.find((row) => row.name === 'rules.comparison.level')?.value;
  const level = Number(setting ?? FULL_LEVEL);
  const rateOf = ({ outcome }: Comparison, { events, trials }: Comparison['exposed']) =>
    (outcome === 'failed_test' ? proportion : eventRate)(events, trials, level);
  const highest = Math.max(
    ...comparisons.flatMap((of) => [rateOf(of, of.exposed).rate ?? 0, rateOf(of, of.unexposed).rate ?? 0]),
  );
  const cut = highest > 0 ? highest * CUT_AT * 100 : 100;
  return comparisons.flatMap((of, index) => {
    const unit = of.unit ?? '';
    const name = of.unit ?? words.terms.fleet;
    const side = (which: 'exposed' | 'unexposed', place: number): ContrastRow => {
      const { events, trials } = of[which];
      const { rate, low, high } = rateOf(of, of[which]);
      const label = words.format.sentence(
        (which === 'exposed' ? words.terms.exposure : words.terms.otherwise)[of.exposure],
      );
      const counts = words.charts.of(events, trials);
      const per_100 = rate === null ? null : rate * 100;
      const value = {
        per_100,
        low: low === null ? null : low * 100,
        high: high === null ? null : high * 100,
      };
      return {
        id: of.id,
        unit,
        place: index * 3 + place,
        side: which,
        label,
        counts,
        per_100,
        low: value.low === null ? null : Math.min(value.low, cut),
        high_drawn: value.high === null ? null : Math.min(value.high, cut),
        arrow: value.high !== null && value.high > cut ? cut : null,
        told: toldText({ unit, tip: words.tips.of(name, words.tips.side(label, events, trials, value)) }),
      };
    };
    const heading: ContrastRow = {
      id: of.id,
      unit,
      place: index * 3,
      side: 'name',
      label: `${name}: ${words.answers.story.ratio(words.comparisons.ratioCell(of), words.terms.verdict[of.verdict])}`,
      counts: '',
      per_100: null,
      low: null,
      high_drawn: null,
      arrow: null,
      told: '',
    };
    return [heading, side('exposed', 1), side('unexposed', 2)];
  });
}
