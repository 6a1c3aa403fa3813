import type { Review } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../data-table.ts';

/** Cycles that a page shows of one list, and lists of one page; tables/without-pass-cycles.csv has all. */
const MOST_CYCLES = 200;
const MOST_LISTS = 30;

/** Cycles with no passing test before them, a folded list for each failure and each day; those after a failure are open. */
export function withoutPassLists(
  context: ReportContext,
  numbers: Numbering,
  lists: Review['cycles_without_pass'],
): Html {
  const { withoutPass, lookBack, where } = context.words.records;
  const { format, terms } = context.words;
  const timeOrDate = (wall: string, byDate: boolean) =>
    byDate ? format.date(wall.slice(0, 'yyyy-MM-dd'.length)) : format.time(wall);
  return html`${lists.slice(0, MOST_LISTS).map((list) => {
    const failed =
      list.failed === null ? format.date(list.date) : timeOrDate(list.failed, list.failed_by_date);
    const ended = list.ended === null ? null : timeOrDate(list.ended, list.ended_by_date);
    const shown = list.cycles.slice(0, MOST_CYCLES);
    const unsure = list.cycles.filter((cycle) => !cycle.certain).length;
    return html`<details${list.why === 'after_failure' && html` open`}>
<summary>${withoutPass.summary[list.why](list.unit, failed, list.cycles.length)}</summary>
<p>${withoutPass.until[list.why](ended)}${unsure > 0 && ` ${withoutPass.unsure(unsure)}`}</p>
${dataTable(context, numbers, {
  caption: withoutPass.caption[list.why](list.unit, failed),
  rows: shown,
  columns: [
    {
      head: lookBack.heads.number,
      kind: 'head',
      cell: (cycle) => (cycle.cycle_number === null ? lookBack.noNumber : String(cycle.cycle_number)),
    },
    {
      head: lookBack.heads.start,
      cell: (cycle) =>
        html`${format.time(cycle.started)}${!cycle.certain && html` <span class="sub">${withoutPass.perhaps}</span>`}`,
    },
    {
      head: lookBack.heads.kind,
      cell: (cycle) => terms.cycleKind[cycle.kind as keyof typeof terms.cycleKind] ?? cycle.kind,
    },
    { head: lookBack.heads.standing, cell: (cycle) => terms.standing[cycle.standing] ?? cycle.standing },
    { head: lookBack.heads.where, kind: 'long', cell: (cycle) => where(cycle.file, null, cycle.row) },
  ],
})}
${list.cycles.length > shown.length && html`<p>${lookBack.more(list.cycles.length - shown.length)}</p>`}
</details>`;
  })}${lists.length > MOST_LISTS && html`<p class="note">${withoutPass.moreLists(lists.length - MOST_LISTS)}</p>`}`;
}
