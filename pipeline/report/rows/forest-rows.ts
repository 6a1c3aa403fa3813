import type { Comparison } from '../../findings/review-schema.ts';
import { toldText } from '../charts/told.ts';
import type { Words } from '../words/words.ts';

/** Ends of the ratio axis; bounds beyond them are drawn as arrows at the edge. */
export const FOREST_DOMAIN = [0.1, 30] as const;

/** One comparison as drawn. Drawn bounds are cut to the axis; the table holds them as they are. */
export interface ForestRow {
  id: string;
  unit: string;
  label: string;
  exposure: string;
  outcome: string;
  exposed_events: number;
  exposed_trials: number;
  unexposed_events: number;
  unexposed_trials: number;
  ratio: number | null;
  low: number | null;
  high: number | null;
  p: number | null;
  adjusted_p: number | null;
  verdict: string;
  verdict_word: string;
  ratio_text: string;
  exposed_text: string;
  unexposed_text: string;
  ratio_drawn: number | null;
  low_drawn: number | null;
  high_drawn: number | null;
  arrow_low: number | null;
  arrow_high: number | null;
  weight: 'strong' | 'middle' | 'faint';
  /** What the mark says of itself, with its unit. */
  told: string;
}

export const FOREST_COLUMNS = [
  'id',
  'unit',
  'exposure',
  'outcome',
  'exposed_events',
  'exposed_trials',
  'unexposed_events',
  'unexposed_trials',
  'ratio',
  'low',
  'high',
  'p',
  'adjusted_p',
  'verdict',
] as const;

const WEIGHT = {
  shown: 'strong',
  suggested: 'middle',
  not_shown: 'middle',
  cannot_tell: 'faint',
  not_comparable: 'faint',
} as const;

export function forestRows(comparisons: readonly Comparison[], words: Words): ForestRow[] {
  return comparisons.map((comparison) => forestRow(comparison, words));
}

function forestRow(comparison: Comparison, words: Words): ForestRow {
  const { exposed, unexposed, ratio, low, high } = comparison;
  const [first, last] = FOREST_DOMAIN;
  const exposedText = words.charts.of(exposed.events, exposed.trials);
  const unexposedText = words.charts.of(unexposed.events, unexposed.trials);
  const ratioText = words.comparisons.ratioCell(comparison);
  const bounded = low !== null || high !== null;
  const lowDrawn = bounded ? Math.min(Math.max(low ?? first, first), last) : null;
  const highDrawn = bounded ? Math.max(Math.min(high ?? last, last), first) : null;
  return {
    id: comparison.id,
    unit: comparison.unit ?? '',
    label: comparison.unit ?? words.terms.fleet,
    exposure: comparison.exposure,
    outcome: comparison.outcome,
    exposed_events: exposed.events,
    exposed_trials: exposed.trials,
    unexposed_events: unexposed.events,
    unexposed_trials: unexposed.trials,
    ratio,
    low,
    high,
    p: comparison.p,
    adjusted_p: comparison.adjusted_p,
    verdict: comparison.verdict,
    verdict_word: words.terms.verdict[comparison.verdict],
    ratio_text: ratioText,
    exposed_text: exposedText,
    unexposed_text: unexposedText,
    ratio_drawn: ratio === null || ratio < first || ratio > last ? null : ratio,
    low_drawn: lowDrawn,
    high_drawn: highDrawn,
    arrow_low: bounded && (low === null || low < first) ? first : null,
    arrow_high: bounded && (high === null || high > last) ? last : null,
    weight: WEIGHT[comparison.verdict],
    told: toldText({
      unit: comparison.unit ?? '',
      tip: words.tips.of(
        comparison.unit ?? words.terms.fleet,
        words.tips.comparison(exposedText, unexposedText, ratioText, words.terms.verdict[comparison.verdict]),
      ),
    }),
  };
}
