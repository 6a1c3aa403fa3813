import { html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';
import { evidenceLink } from '../../parts/reasons.ts';
import { unitLink } from '../../parts/unit-link.ts';

/** Units of the first page; all of them stand with all their reasons in the section of units that need attention. */
const MOST = 5;
/** Further reasons of a unit that its line names. */
const MOST_NAMED = 2;

/** What the meeting has to decide: a line for each unit in the order of need, with its first reason, the next step and who decides; its other reasons that are not for later in a few words. */
export function decisionsSection(context: ReportContext, numbers: Numbering): Section {
  const { review, words, level } = context;
  const { story } = words.answers;
  const units = review.attention_order
    .map((id) => review.units.find((unit) => unit.unit === id))
    .filter((unit) => unit !== undefined && unit.attention.length > 0) as typeof review.units;
  const lines = units.slice(0, MOST).map((unit) => {
    const reason = unit.attention[0]!;
    const also = unit.attention.slice(1).filter((of) => of.level !== 'look');
    return { unit, reason, also, text: words.attention.reason[reason.code](reason.numbers, level) };
  });
  const body =
    lines.length === 0
      ? html`<p class="empty">${story.none}</p>`
      : html`${dataTable(context, numbers, {
          caption: story.decisionsCaption,
          rows: lines,
          columns: [
            {
              head: story.heads.unit,
              kind: 'head',
              cell: ({ unit, reason }) =>
                html`${unitLink(context, unit.unit)} <span class="level ${reason.level}">${words.attention.level[reason.level]}</span>`,
            },
            {
              head: story.heads.found,
              cell: ({ unit, reason, also, text }) => {
                const named = also
                  .slice(0, MOST_NAMED)
                  .map((of) => words.attention.short[of.code](of.numbers));
                const others = story.others(unit.attention.length - 1 - named.length);
                return html`${text.evidence}${named.length > 0 && html` <span class="also">${story.also(named)}</span>`} <a class="screen" href="${evidenceLink(context, unit.unit, reason)}">${words.attention.evidence}<span class="hidden">, ${words.pages.unit(unit.unit)}: ${text.evidence}</span></a>${others !== '' && html` <span class="more">${others}</span>`}`;
              },
            },
            {
              head: story.heads.next,
              cell: ({ text }) => html`<b class="narrow">${story.heads.next}: </b>${text.next}`,
            },
            {
              head: story.heads.decides,
              cell: ({ text }) => html`<b class="narrow">${story.heads.decides}: </b>${text.decides}`,
            },
          ],
        })}
<p class="note">${words.attention.orderShort}</p>
<p class="screen"><a href="#attention">${units.length > MOST ? story.rest(units.length - MOST) : words.answers.more.units}</a></p>`;
  return { id: 'decisions', heading: story.decisionsHeading, body };
}
