import { scaleFromZero } from '../../charts/layer.ts';
import { rankingChart } from '../../charts/ranking.ts';
import { textWidth } from '../../charts/text-width.ts';
import { FONT_SIZE } from '../../charts/theme.ts';
import type { Html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { figure } from '../../parts/figure.ts';
import { rankingRows } from '../../rows/ranking-rows.ts';

/** Units in one picture: what fits a printed page. */
const UNITS_IN_FIGURE = 32;
/** Units in all of them, the highest rates first. */
const MOST_UNITS = 64;

/** Units by their failed day results, highest first; nothing where there is one unit or none failed. */
export async function rankingFigure(context: ReportContext, numbers: Numbering): Promise<Html[]> {
  const { review, words, span } = context;
  const { ranking } = words.series;
  const all = rankingRows(review, words).slice(0, MOST_UNITS);
  if (all.length < 2 || all.every((row) => row.failed === 0)) return [];
  const scale = scaleFromZero(all, (row) => [row.per_100, row.shrunken_high, row.inner_high]);
  const widest = Math.max(...all.map((row) => textWidth(row.unit, FONT_SIZE, true)));
  const figures: Html[] = [];
  for (let from = 0; from < all.length; from += UNITS_IN_FIGURE) {
    const rows = all.slice(from, from + UNITS_IN_FIGURE);
    figures.push(
      await figure(context, numbers, {
        id: `figure-ranking${from === 0 ? '' : `-${from}`}`,
        title: ranking.title(span),
        description: rows.map((row) => ranking.describe(row.unit, row.label, row.shrunken)).join(' '),
        spec: rankingChart(rows, {
          valueTitle: words.charts.failedPer100,
          scale,
          labelWidth: Math.min(150, Math.max(40, Math.ceil(widest) + 12)),
        }),
        ...(from === 0 && { reading: ranking.reading }),
        csv: 'tables/ranking.csv',
      }),
    );
  }
  return figures;
}
