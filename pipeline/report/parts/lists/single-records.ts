import type { Review } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { type Column, dataTable } from '../data-table.ts';
import { unitLink } from '../unit-link.ts';
import { cycleTable, timeOrDate } from './cycle-table.ts';

type List<Row> = (context: ReportContext, numbers: Numbering, rows: readonly Row[], caption: string) => Html;

/** The column that names the unit, with a link to its page. */
function unitColumn<Row extends { unit: string }>(context: ReportContext, head: string): Column<Row> {
  return { head, kind: 'head', cell: (row) => unitLink(context, row.unit) };
}

/** Chamber cleaning records that the cycle log contradicts. */
export const contradictedTable: List<Review['contradicted_records'][number]> = (
  context,
  numbers,
  rows,
  caption,
) => {
  const { contradicted, where } = context.words.records;
  const { heads } = contradicted;
  return dataTable(context, numbers, {
    caption,
    rows,
    columns: [
      unitColumn(context, heads.unit),
      { head: heads.time, cell: (row) => context.words.format.time(row.time) },
      { head: heads.why, cell: (row) => (row.running ? contradicted.running : contradicted.hot) },
      {
        head: heads.idle,
        kind: 'number',
        cell: (row) => row.idle_hours !== null && contradicted.hours(row.idle_hours),
      },
      { head: heads.where, kind: 'long', cell: (row) => where(row.file, row.sheet, row.row) },
    ],
  });
};

/** Production days with a missing or late test. */
export const timingTable: List<Review['test_timing'][number]> = (context, numbers, rows, caption) => {
  const { timing } = context.words.records;
  const { date, time } = context.words.format;
  return dataTable(context, numbers, {
    caption,
    rows,
    columns: [
      unitColumn(context, timing.heads.unit),
      { head: timing.heads.day, cell: (row) => date(row.date) },
      { head: timing.heads.what, cell: (row) => timing[row.timing] },
      { head: timing.heads.ended, cell: (row) => row.test_ended !== null && time(row.test_ended) },
      { head: timing.heads.production, cell: (row) => time(row.first_production) },
    ],
  });
};

/** Chamber cleanings after which production came before a warm-up and a passing test. */
export const returnsTable: List<Review['incomplete_returns'][number]> = (context, numbers, rows, caption) => {
  const { returns, where } = context.words.records;
  return dataTable(context, numbers, {
    caption,
    rows,
    columns: [
      unitColumn(context, returns.heads.unit),
      { head: returns.heads.cleaned, cell: (row) => context.words.format.time(row.cleaned) },
      { head: returns.heads.where, kind: 'long', cell: (row) => where(row.file, row.sheet, row.row) },
    ],
  });
};

/** Returns to service after major service. */
export const requalificationTable: List<Review['requalifications'][number]> = (
  context,
  numbers,
  rows,
  caption,
) => {
  const { returns } = context.words.records;
  const { terms, format } = context.words;
  return dataTable(context, numbers, {
    caption,
    rows,
    columns: [
      unitColumn(context, returns.serviceHeads.unit),
      { head: returns.serviceHeads.service, cell: (row) => terms.era[row.service_kind] ?? row.service_kind },
      { head: returns.serviceHeads.ended, cell: (row) => format.time(row.ended) },
      {
        head: returns.serviceHeads.passes,
        kind: 'number',
        cell: (row) => returns.passes(row.passes_in_a_row, row.wanted),
      },
      { head: returns.serviceHeads.state, cell: (row) => terms.requalification[row.state] ?? row.state },
    ],
  });
};

/** Unexplained early stops. */
export const stopsTable: List<Review['early_stops'][number]> = (context, numbers, rows, caption) => {
  const { stops, where } = context.words.records;
  return dataTable(context, numbers, {
    caption,
    rows,
    columns: [
      unitColumn(context, stops.heads.unit),
      { head: stops.heads.start, cell: (row) => context.words.format.time(row.start) },
      {
        head: stops.heads.minutes,
        kind: 'number',
        cell: (row) =>
          row.minutes === null ? stops.unknownLength : context.words.format.fixed(row.minutes, 1),
      },
      { head: stops.heads.where, kind: 'long', cell: (row) => where(row.file, null, row.row) },
    ],
  });
};

/** Look-back lists of one page; a unit's own page has its own, and tables/look-back-cycles.csv has all. */
const MOST_LISTS = 30;

/** Look-back lists, each folded. */
export function lookBackLists(context: ReportContext, numbers: Numbering, lists: Review['look_backs']): Html {
  const { lookBack } = context.words.records;
  return html`${lists.slice(0, MOST_LISTS).map((list) => {
    const failed = timeOrDate(context, list.failed, list.failed_by_date);
    return html`<details>
<summary>${lookBack.summary(list.unit, failed, list.cycles.length)}</summary>
<p>${lookBack.since(list.last_pass === null ? null : timeOrDate(context, list.last_pass, list.last_pass_by_date))}${(list.failed_by_date || list.last_pass_by_date) && ` ${lookBack.wholeDay}`}</p>
${
  list.cycles.length === 0
    ? html`<p>${lookBack.empty}</p>`
    : cycleTable(context, numbers, { caption: lookBack.caption(list.unit, failed), cycles: list.cycles })
}
</details>`;
  })}${lists.length > MOST_LISTS && html`<p class="note">${lookBack.moreLists(lists.length - MOST_LISTS)}</p>`}`;
}
