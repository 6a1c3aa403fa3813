import { mkdirSync, writeFileSync } from 'node:fs';
import { renderChart } from '../../../pipeline/report/charts/render-chart.ts';
import { htmlDocument } from '../../../pipeline/report/html/document.ts';
import { type Html, html } from '../../../pipeline/report/html/html.ts';
import { liveTemplate } from '../../../pipeline/report/script/live-template.ts';
import { pageScript } from '../../../pipeline/report/script/page-script.ts';
import { liveStyle } from '../../../pipeline/report/style/live.ts';
import { screenStyle } from '../../../pipeline/report/style/screen.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { chartExamples } from './examples.ts';

/** Fleets in the gallery: the usual one of the tests, then the ends. */
const FLEETS = [
  { units: 3, name: 'Three units' },
  { units: 1, name: 'One unit' },
  { units: 30, name: 'Thirty units, as many as one picture holds' },
];

/** Every chart with its example rows on one page, in the look and with the script of the report. */
export async function gallery(): Promise<string> {
  const sections: Html[] = [];
  for (const { units, name } of FLEETS) {
    const figures: Html[] = [];
    for (const example of chartExamples(units)) {
      const id = `${example.name}-${units}`;
      const { svg, width, height } = await renderChart(example.spec, {
        id,
        title: example.name,
        description: `${example.rows.length} rows`,
      });
      figures.push(html`<figure id="figure-${id}">
<figcaption><span class="number">${example.name}</span><span class="title">${example.rows.length} rows, ${width} x ${height} px</span></figcaption>
<div class="chart" tabindex="0" role="group" aria-label="${id}">${svg}</div>
<div class="figure-foot"></div>
</figure>
`);
    }
    sections.push(html`<section><h2>${name}</h2>
${figures}</section>
`);
  }
  const style = screenStyle + liveStyle;
  return htmlDocument({
    lang: 'en',
    title: 'Charts',
    style,
    script: pageScript,
    body: html`<main class="sheet" id="content" tabindex="-1"><h1>Charts</h1>
${sections}</main>
${liveTemplate(en)}`,
  });
}

if (process.argv[1] === new URL(import.meta.url).pathname) {
  mkdirSync('reports', { recursive: true });
  writeFileSync('reports/gallery.html', await gallery());
  console.log('reports/gallery.html');
}
