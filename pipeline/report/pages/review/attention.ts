import { html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataAttributes, dataTable } from '../../parts/data-table.ts';
import { findData, finder } from '../../parts/finder.ts';
import type { Section } from '../../parts/page.ts';
import { rateCell } from '../../parts/rates.ts';
import { reasonList } from '../../parts/reasons.ts';
import { unitLink } from '../../parts/unit-link.ts';
import { sumDue } from '../../rows/due-rows.ts';

/** Units that stand in full; those after them are folded. */
const IN_FULL = 6;

/** Units with all their reasons; those after them stand with the number of theirs, as their pages hold them. */
const MOST_CASES = 100;

/** Units that need attention, most pressing first, with evidence, next step and who decides. */
export function attentionSection(context: ReportContext): Section {
  const { review, words, siteName } = context;
  const { attention } = words;
  const units = review.attention_order
    .map((id) => review.units.find((unit) => unit.unit === id))
    .filter((unit) => unit !== undefined);
  const cases = (list: typeof units) => html`<ol class="cases">
${list.map(
  (unit) => html`<li class="case"${dataAttributes(findData(context, unit))}>
<div><h3>${unitLink(context, unit.unit)}</h3>
<p class="where">${unit.name !== '' && html`${unit.name}, `}${siteName(unit.site)}</p></div>
<div>${reasonList(context, unit, 'linked')}</div>
</li>
`,
)}</ol>`;
  const brief = (unit: (typeof units)[number]) =>
    html`<li${dataAttributes(findData(context, unit))}>${unitLink(context, unit.unit)}, ${words.pages.reasons(unit.attention.length)}</li>
`;
  const body =
    units.length === 0
      ? html`<p class="empty">${attention.none}</p>`
      : html`${cases(units.slice(0, IN_FULL))}
${
  units.length > IN_FULL &&
  html`<details><summary>${attention.more(units.length - IN_FULL)}</summary>${cases(units.slice(IN_FULL, MOST_CASES))}${
    units.length > MOST_CASES && html`<ul class="briefly">${units.slice(MOST_CASES).map(brief)}</ul>`
  }</details>`
}`;
  return { id: 'attention', heading: words.pages.attentionHeading, body };
}

/** Every unit in one line: the way to its page. */
export function unitsSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words, month } = context;
  const { pages, attention, format } = words;
  const heads = pages.unitHeads;
  const body =
    review.units.length === 0
      ? html`<p class="empty">${pages.noRecord}</p>`
      : html`${finder(context)}${dataTable(context, numbers, {
          whole: true,
          caption: pages.unitsCaption(month),
          rows: review.units,
          rowData: (unit) => findData(context, unit),
          columns: [
            {
              head: heads.unit,
              kind: 'head',
              cell: (unit) =>
                html`${unitLink(context, unit.unit)}${unit.name !== '' && html` <span class="sub">${unit.name}</span>`}`,
            },
            { head: heads.site, cell: (unit) => unit.site },
            { head: heads.days, kind: 'number', cell: (unit) => format.integer(unit.days_of_use_in_month) },
            {
              head: heads.done,
              kind: 'number',
              cell: (unit) => {
                const due = sumDue(review.cleaning.month.filter((row) => row.unit === unit.unit));
                return due.due === 0 ? pages.none : pages.outOf(due.done + due.done_late, due.due);
              },
            },
            {
              head: heads.failed,
              kind: 'number',
              cell: (unit) => rateCell(context, unit.tests.find((of) => of.span === 'month')!.failed_days),
            },
            {
              head: heads.aborts,
              kind: 'number',
              cell: (unit) => rateCell(context, unit.cycles.find((of) => of.span === 'month')!.aborts),
            },
            {
              head: heads.clock,
              kind: 'number',
              cell: (unit) =>
                unit.chamber.clock_days === null
                  ? words.cleaning.never
                  : format.integer(unit.chamber.clock_days),
            },
            {
              head: heads.attention,
              cell: (unit) =>
                unit.attention.length === 0
                  ? pages.noAttention
                  : html`<span class="figures">${attention.level[unit.attention[0]!.level]}</span> <span class="sub">${pages.reasons(unit.attention.length)}</span>`,
            },
          ],
        })}`;
  return { id: 'units', heading: pages.unitsHeading, body };
}
