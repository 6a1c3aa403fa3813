import type { TopLevelSpec } from 'vega-lite';
import { renderChart } from '../charts/render-chart.ts';
import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';

export interface FigureParts {
  /** Unique in the page. */
  id: string;
  title: string;
  /** What the picture shows, for those who can't see it. */
  description: string;
  spec: TopLevelSpec;
  /** What to see in it. */
  reading?: Html | string;
  /** Key of the marks, above the picture. */
  key?: Html;
  /** Where its numbers are. */
  csv?: string;
  note?: string;
}

/** A numbered figure: title and what to see above, picture, then the way to its numbers. */
export async function figure(
  { words, runtimes }: Pick<ReportContext, 'words' | 'runtimes'>,
  numbers: Numbering,
  parts: FigureParts,
): Promise<Html> {
  const name = words.pages.figure(numbers.figure());
  const { svg } = await renderChart(parts.spec, parts, runtimes, words.format.chart);
  return html`<figure id="${parts.id}">
<figcaption><span class="number">${name}</span><span class="title">${parts.title}</span>
${parts.reading && html`<p>${parts.reading}</p>`}</figcaption>
${parts.key}
<div class="chart" tabindex="0" role="group" aria-label="${words.pages.scrolls(name)}">${svg}</div>
<div class="figure-foot">${
    (parts.csv || parts.note) &&
    html`<p>${parts.note}${parts.note && parts.csv && ' '}${parts.csv && html`<a class="screen" href="${parts.csv}">${words.pages.csv}</a>`}</p>`
  }</div>
</figure>`;
}
