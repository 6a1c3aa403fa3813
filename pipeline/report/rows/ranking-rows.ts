import type { Review } from '../../findings/review-schema.ts';
import { toldText } from '../charts/told.ts';
import type { Words } from '../words/words.ts';

/** A unit in the ranking, rates per 100 test days. */
export interface RankingRow {
  unit: string;
  failed: number;
  days: number;
  per_100: number | null;
  shrunken: number;
  shrunken_low: number;
  shrunken_high: number;
  inner_low: number | null;
  inner_high: number | null;
  outer_low: number | null;
  outer_high: number | null;
  label: string;
  /** What the mark says of itself, with its unit. */
  told: string;
}

export const RANKING_COLUMNS = [
  'unit',
  'failed',
  'days',
  'per_100',
  'shrunken',
  'shrunken_low',
  'shrunken_high',
  'inner_low',
  'inner_high',
  'outer_low',
  'outer_high',
] as const;

/** Units by failed day results over the record, the highest shrunken rate first. */
export function rankingRows(review: Review, words: Words): RankingRow[] {
  const times100 = (value: number | null) => (value === null ? null : value * 100);
  return review.ranking.map((row) => ({
    unit: row.unit,
    failed: row.failed,
    days: row.days,
    per_100: times100(row.rate),
    shrunken: row.shrunken * 100,
    shrunken_low: row.shrunken_low * 100,
    shrunken_high: row.shrunken_high * 100,
    inner_low: times100(row.inner_low),
    inner_high: times100(row.inner_high),
    outer_low: times100(row.outer_low),
    outer_high: times100(row.outer_high),
    label: words.charts.of(row.failed, row.days),
    told: toldText({
      unit: row.unit,
      tip: words.tips.of(
        row.unit,
        words.tips.ranking(
          words.charts.of(row.failed, row.days),
          times100(row.rate),
          row.shrunken * 100,
          row.shrunken_low * 100,
          row.shrunken_high * 100,
        ),
      ),
    }),
  }));
}
