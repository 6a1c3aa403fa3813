import type { Comparison } from '../../findings/review-schema.ts';
import { type ForestOptions, forestChart } from '../charts/forest.ts';
import { textWidth } from '../charts/text-width.ts';
import { FONT_SIZE } from '../charts/theme.ts';
import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';
import { forestRows } from '../rows/forest-rows.ts';
import { type Column, dataTable } from './data-table.ts';
import { figure } from './figure.ts';
import { unitLink } from './unit-link.ts';

/** Rows in one picture: what fits a printed page. */
const ROWS_IN_FIGURE = 32;

/** Ratios of comparisons as a picture. `label` names the row: the unit, or the question. */
export async function comparisonFigures(
  context: ReportContext,
  numbers: Numbering,
  parts: {
    id: string;
    title: string;
    ratioTitle: string;
    comparisons: readonly Comparison[];
    label?: (comparison: Comparison) => string;
    reading?: Html | string;
  },
): Promise<Html[]> {
  const { words, level } = context;
  const figures: Html[] = [];
  for (let from = 0; from < parts.comparisons.length; from += ROWS_IN_FIGURE) {
    const shown = parts.comparisons.slice(from, from + ROWS_IN_FIGURE);
    const rows = forestRows(shown, words).map((row, index) => ({
      ...row,
      label: parts.label ? parts.label(shown[index]!) : row.label,
    }));
    const lines = rows.flatMap((row) => row.label.split('|'));
    const widest = Math.max(...lines.map((line) => textWidth(line, FONT_SIZE, true)));
    const options: ForestOptions = {
      ratioTitle: parts.ratioTitle,
      fewer: words.charts.fewer,
      more: words.charts.more,
      heads: {
        exposed: words.comparisons.heads.exposedShort,
        unexposed: words.comparisons.heads.unexposedShort,
        ratio: words.comparisons.heads.ratioShort,
        verdict: words.comparisons.heads.verdictShort,
      },
      lines: lines.length > rows.length ? 2 : 1,
      labelWidth: Math.min(190, Math.max(60, Math.ceil(widest) + 12)),
    };
    figures.push(
      await figure(context, numbers, {
        id: `${parts.id}${from === 0 ? '' : `-${from}`}`,
        title: parts.title,
        description: shown
          .map(
            (comparison, index) =>
              `${rows[index]!.label.replace('|', ': ')}: ${words.terms.verdict[comparison.verdict]}; ${words.comparisons.evidence(comparison, level)}.`,
          )
          .join(' '),
        spec: forestChart(rows, options),
        ...(parts.reading && from === 0 ? { reading: parts.reading } : {}),
        csv: 'tables/comparisons.csv',
      }),
    );
  }
  return figures;
}

/** All that a verdict stands on: counts, ratio, interval, p, adjusted p, power, control outcome, days left out, verdict and why. */
export function comparisonTable(
  context: ReportContext,
  numbers: Numbering,
  comparisons: readonly Comparison[],
  caption: string,
  first: 'unit' | 'question' | 'unit_and_question',
): Html {
  const { words, level } = context;
  const { heads } = words.comparisons;
  const unit: Column<Comparison> = {
    head: heads.scope,
    kind: 'head',
    cell: (c) => (c.unit === null ? words.terms.fleet : unitLink(context, c.unit)),
  };
  const question: Column<Comparison> = {
    head: heads.question,
    cell: (c) => words.comparisons.questionShort(c).replace('|', ': '),
  };
  const columns: Column<Comparison>[] = [
    ...(first === 'question' ? [] : [unit]),
    ...(first === 'unit' ? [] : [{ ...question, kind: first === 'question' ? 'head' : 'text' } as const]),
    {
      head: heads.counts,
      cell: (c) =>
        html`<span class="figures">${words.comparisons.side(c.exposed, c.outcome)}</span> <span class="sub">${words.comparisons.against(c.unexposed, c.outcome)}</span>`,
    },
    {
      head: heads.ratio(level),
      cell: (c) => html`<span class="figures">${words.comparisons.ratioCell(c)}</span>`,
    },
    {
      head: heads.p,
      cell: (c) =>
        html`<span class="figures">${words.comparisons.p(c.p)}</span> <span class="sub">${words.comparisons.adjusted(c.adjusted_p)}</span>`,
    },
    {
      head: heads.detectable,
      kind: 'number',
      cell: (c) => words.comparisons.detectable(c.smallest_detectable_ratio),
    },
    {
      head: heads.verdict,
      kind: 'long',
      cell: (c) =>
        html`${verdictCell(context, c)} <span class="sub wraps">${heads.control}: ${words.comparisons.control(c)}. ${heads.leftOut}: ${words.comparisons.leftOut(c)}.</span>`,
    },
  ];
  return dataTable(context, numbers, { caption, rows: comparisons, columns });
}

/** What a verdict rests on, in words. */
export function whyOf({ words, settings }: ReportContext, comparison: Comparison): string[] {
  const weaker = comparison.because.includes('adjusted_p') ? 'unadjusted_p' : '';
  return comparison.because
    .filter((code) => code !== weaker)
    .map((code) => words.comparisons.because(code, comparison, settings));
}

/** The verdict in a word, why, and the other reading where it differs. */
export function verdictCell(context: ReportContext, comparison: Comparison): Html {
  const { words } = context;
  const why = whyOf(context, comparison);
  const other = comparison.verdict_all_records;
  return html`<span class="verdict ${comparison.verdict}">${words.terms.verdict[comparison.verdict]}</span>${why.length > 0 && `: ${why.join('; ')}.`}${
    other !== null && other !== comparison.verdict && ` ${words.comparisons.otherReading(other)}`
  }`;
}

/** What each verdict means, where verdicts stand. */
export function verdictWords({ words, settings, level }: ReportContext): Html {
  const means = words.comparisons.verdictMeans(settings, level);
  return html`<dl class="words">
${Object.entries(means).map(
  ([
    verdict,
    text,
  ]) => html`<div><dt>${words.terms.verdict[verdict as Comparison['verdict']]}</dt><dd>${text}</dd></div>
`,
)}</dl>`;
}
