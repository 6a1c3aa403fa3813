import { marked } from 'marked';
import type { ChartRuntimes } from '../../pipeline/report/charts/chart-runtimes.ts';
import { renderChart } from '../../pipeline/report/charts/render-chart.ts';
import { cssString } from '../../pipeline/report/html/content-policy.ts';
import { htmlDocument } from '../../pipeline/report/html/document.ts';
import { type Html, html, trusted } from '../../pipeline/report/html/html.ts';
import { printStyle } from '../../pipeline/report/style/print.ts';
import { screenStyle } from '../../pipeline/report/style/screen.ts';
import { codeText } from './code-text.ts';
import type { RunNotebook } from './run-notebook.ts';
import { numberText, type Shown } from './show.ts';
import { notebookStyle } from './style.ts';

const FOOTER =
  'Invented demo data. Describes records; releases, rejects or recalls no load. Local policy and those it authorises decide.';

interface Section {
  id: string;
  heading: string;
  body: Html[];
}

/** A notebook as one page that loads nothing. */
export async function notebookPage(notebook: RunNotebook, all: readonly RunNotebook[]): Promise<string> {
  const under: Html[] = [];
  const opening: Html[] = [];
  const sections: Section[] = [];
  const put = (body: Html) => (sections.at(-1)?.body ?? opening).push(body);
  const runtimes: ChartRuntimes = new Map();
  let figures = 0;
  let tables = 0;
  for (const part of notebook.parts) {
    if (part.kind === 'prose') {
      const [before, ...rest] = part.markdown.replace(/^# .+\n/, '').split(/^## /m);
      (sections.length > 0 ? sections.at(-1)!.body : under).push(markdown(before!));
      for (const text of rest) {
        const [heading, ...lines] = text.split('\n');
        sections.push({ id: `part-${sections.length + 1}`, heading: heading!, body: [] });
        put(markdown(lines.join('\n')));
      }
      continue;
    }
    const code = html`<pre tabindex="0"><code>${codeText(part.code)}</code></pre>
`;
    // What only draws is long and says little.
    const draws = /^show\(\s*chart\(/.test(part.code);
    put(draws ? html`<details><summary>Code of the figure</summary>${code}</details>` : code);
    for (const shown of part.shown) {
      if (shown.kind === 'chart') put(await figure(shown, ++figures, runtimes));
      else if (shown.kind === 'table') put(tableOf(shown, ++tables));
      else if (shown.kind === 'same')
        put(html`<div class="same"><p>The same, made here and by the library:</p><ul>${shown.values.map(({ what, value }) => html`<li>${what} <b>${value}</b></li>`)}</ul></div>
`);
      else
        put(html`<div class="told">${markdown(shown.markdown)}</div>
`);
    }
  }
  const links = all.map(({ name, title }) =>
    name === notebook.name
      ? html`<li><a href="${name}.html" aria-current="page">${title}</a></li>`
      : html`<li><a href="${name}.html">${title}</a></li>`,
  );
  return documentOf(
    notebook.title,
    html`${under}`,
    html`<nav class="pages" aria-label="Notebooks"><ul><li><a href="index.html">All notebooks</a></li>${links}</ul></nav>`,
    html`<div class="columns">
<nav class="contents" aria-labelledby="contents-heading">
<h2 id="contents-heading">On this page</h2>
<ol>${sections.map(({ id, heading }) => html`<li><a href="#${id}">${heading}</a></li>`)}</ol>
</nav>
<main id="content" tabindex="-1">
${opening}${sections.map(
  ({ id, heading, body }, index) => html`<section id="${id}" aria-labelledby="${id}-heading">
<h2 id="${id}-heading"><span class="number">${index + 1}</span> ${heading}</h2>
${body}</section>
`,
)}</main>
</div>`,
  );
}

/** The page that leads to all notebooks. */
export function notebooksIndex(all: readonly RunNotebook[]): string {
  return documentOf(
    'Notebooks',
    html`<p>For the analyst beside the quality manager. Each runs on the demo data and calls what the report calls.</p>`,
    html``,
    html`<main id="content" tabindex="-1">
<ol class="notebooks">${all.map(({ name, title, lede }) => html`<li><a href="${name}.html">${title}</a>${markdown(lede)}</li>`)}</ol>
</main>`,
  );
}

function documentOf(title: string, under: Html, navigation: Html, body: Html): string {
  const style =
    screenStyle + printStyle(cssString(title), cssString('Notebook on demo data')) + notebookStyle;
  return htmlDocument({
    lang: 'en',
    title,
    style,
    body: html`<a class="skip" href="#content">To the content</a>
<div class="sheet">
<header class="masthead">
<p class="kicker">Notebook</p>
<h1>${title}</h1>
${under}
</header>
${navigation}
${body}
<footer class="colophon"><p>${FOOTER}</p></footer>
</div>`,
  });
}

/** Prose of our own files, which may hold any markup; the numbers in it come from the notebook. */
const markdown = (text: string): Html => trusted(marked.parse(text, { async: false }));

async function figure(
  { title, description, spec }: Shown & { kind: 'chart' },
  number: number,
  runtimes: ChartRuntimes,
): Promise<Html> {
  const { svg } = await renderChart(spec, { id: `figure-${number}`, title, description }, runtimes);
  return html`<figure>
<figcaption><span class="number">Figure ${number}</span><span class="title">${title}</span><p>${description}</p></figcaption>
<div class="chart" tabindex="0" role="group" aria-label="Figure ${number}, scrolls sideways">${svg}</div>
</figure>
`;
}

function tableOf({ caption, heads, rows, numeric }: Shown & { kind: 'table' }, number: number): Html {
  const className = (at: number) => numeric[at] && html` class="number"`;
  return html`<div class="table" tabindex="0" role="group" aria-label="Table ${number}, scrolls sideways">
<table>
<caption><span class="number">Table ${number}</span><span class="title">${caption}</span></caption>
<thead><tr>${heads.map((head, at) => html`<th scope="col"${className(at)}>${head}</th>`)}</tr></thead>
<tbody>
${rows.map(
  (row) => html`<tr>${row.map((cell, at) =>
    at === 0
      ? html`<th scope="row"${className(at)}>${numberText(cell)}</th>`
      : html`<td${className(at)}>${numberText(cell)}</td>`,
  )}</tr>
`,
)}</tbody>
</table>
</div>
`;
}
