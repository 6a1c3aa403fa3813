import { htmlDocument } from '../report/html/document.ts';
import { html } from '../report/html/html.ts';
import type { RecordSheet } from './record-sheets.ts';

/** Lines on one side of paper, across, on A4 and Letter alike. */
const LINES = 13;

const STYLE = `
@page { size: landscape; margin: 12mm; }
* { box-sizing: border-box; }
body { margin: 1.2rem auto; padding: 0 1rem; max-width: 66rem; color: #17262e; background: #fff; font: 10pt/1.35 system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, "Liberation Sans", sans-serif; }
h1 { font: 600 18pt/1.2 "Iowan Old Style", Charter, "Palatino Linotype", Palatino, Georgia, serif; margin: 0; }
header { display: flex; justify-content: space-between; align-items: end; gap: 6mm; border-bottom: 2px solid #17262e; padding-bottom: 2mm; flex-wrap: wrap; }
header p { margin: 0; white-space: nowrap; }
.blank { display: inline-block; width: 34mm; border-bottom: 1px solid #52626b; margin-left: 1.5mm; }
.use { margin: 2mm 0; }
.scroll { overflow-x: auto; padding-right: 1px; }
table { border-collapse: collapse; width: 100%; min-width: 44rem; table-layout: fixed; }
th, td { border: 1px solid #8b989f; text-align: left; vertical-align: top; padding: 1mm 1.5mm; overflow-wrap: break-word; }
th { font-weight: 650; background: #f3f6f7; }
th span { display: block; font-weight: 400; font-size: 7.5pt; line-height: 1.25; color: #3d4c54; }
td { height: 9mm; }
.cautions { margin: 2.5mm 0 0; padding-left: 5mm; font-size: 8.5pt; }
.foot { margin: 1.5mm 0 0; font-size: 8pt; color: #52626b; }
@media print { body { margin: 0; padding: 0; max-width: none; font-size: 9pt; } table { min-width: 0; } .scroll { overflow: visible; padding-right: 0.4mm; } tr { break-inside: avoid; } * { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }
`;

/**
 * A blank record sheet for printing: one page across, on A4 and on Letter, complete by itself. Initials stay on paper: the files that are
 * read have no column for them.
 */
export function sheetPage({ kind, title, use, columns, cautions, file }: RecordSheet): string {
  // Actions name a role.
  const onPaper =
    kind === 'actions' ? [] : [{ head: 'Initials', hint: 'by local policy; stays on paper', width: 2.5 }];
  const heads = [
    ...columns.map(({ head, says, words, width, required }) => ({
      head: required ? `${head} *` : head,
      hint: words.length > 0 ? words.join(' / ') : says,
      width,
    })),
    ...onPaper,
  ];
  const total = heads.reduce((sum, { width }) => sum + width, 0);
  const widths = heads
    .map(({ width }, at) => `th:nth-child(${at + 1}) { width: ${((100 * width) / total).toFixed(2)}%; }\n`)
    .join('');
  const style = STYLE + widths;
  return htmlDocument({
    lang: 'en',
    title,
    style,
    body: html`<main>
<header>
<h1>${title}</h1>
<p>Site<span class="blank"></span></p>
<p>Month<span class="blank"></span></p>
<p>Sheet<span class="blank"></span></p>
</header>
<p class="use">${use} Columns with * are needed.</p>
<div class="scroll" tabindex="0" role="group" aria-label="Table, scrolls sideways">
<table>
<thead><tr>${heads.map(({ head, hint }) => html`<th scope="col">${head}<span>${hint}</span></th>`)}</tr></thead>
<tbody>
${Array.from(
  { length: LINES },
  () => html`<tr>${heads.map(() => html`<td></td>`)}</tr>
`,
)}</tbody>
</table>
</div>
<ul class="cautions">${cautions.map((caution) => html`<li>${caution}</li>`)}</ul>
<p class="foot">To be typed into ${file}.xlsx or ${file}.csv, whose columns are the same.</p>
</main>`,
  });
}
