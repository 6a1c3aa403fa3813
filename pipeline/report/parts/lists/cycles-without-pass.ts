import type { Review } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { cycleTable, timeOrDate } from './cycle-table.ts';

/** Lists of one page; tables/without-pass-cycles.csv has all. */
const MOST_LISTS = 30;

/** Cycles with no passing test before them, a folded list for each failure and each day; those after a failure are open. */
export function withoutPassLists(
  context: ReportContext,
  numbers: Numbering,
  lists: Review['cycles_without_pass'],
): Html {
  const { withoutPass } = context.words.records;
  const { format } = context.words;
  return html`${lists.slice(0, MOST_LISTS).map((list) => {
    const failed =
      list.failed === null ? format.date(list.date) : timeOrDate(context, list.failed, list.failed_by_date);
    const ended = list.ended === null ? null : timeOrDate(context, list.ended, list.ended_by_date);
    const unsure = list.cycles.filter((cycle) => !cycle.certain).length;
    return html`<details${list.why === 'after_failure' && html` open`}>
<summary>${withoutPass.summary[list.why](list.unit, failed, list.cycles.length)}</summary>
<p>${withoutPass.until[list.why](ended)}${unsure > 0 && ` ${withoutPass.unsure(unsure)}`}</p>
${cycleTable(context, numbers, {
  caption: withoutPass.caption[list.why](list.unit, failed),
  cycles: list.cycles,
  mark: (cycle) => !cycle.certain && html` <span class="sub">${withoutPass.perhaps}</span>`,
})}
</details>`;
  })}${lists.length > MOST_LISTS && html`<p class="note">${withoutPass.moreLists(lists.length - MOST_LISTS)}</p>`}`;
}
