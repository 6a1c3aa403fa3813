import type { Review } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { type Column, dataTable } from '../data-table.ts';
import { folded } from '../folded.ts';

type Clock = Review['record_quality']['cleaning_clocks'][number];

/** Cleaning logs whose clock is off, or was for a part of the record. */
export const clocksOff = (review: Review): Clock[] =>
  review.record_quality.cleaning_clocks.filter(
    ({ verdict }) =>
      verdict === 'cleaning_clock_ahead' || verdict === 'cleaning_clock_behind' || verdict === 'changes',
  );

/** Clocks of cleaning logs against the clock of the cycle log; the months of those whose clock is off. */
export function cleaningClocksTable(context: ReportContext, numbers: Numbering): Html | false {
  const { words, review, siteName } = context;
  const { quality, format } = words;
  const { cleaningHeads: heads, cleaningMonthHeads: monthHeads } = quality;
  const rows = review.record_quality.cleaning_clocks;
  if (rows.length === 0) return false;
  const offset: Column<Clock> = {
    head: heads.offset,
    kind: 'number',
    cell: ({ suggested_offset_minutes: middle, low_minutes: low, high_minutes: high }) =>
      low !== null &&
      high !== null &&
      html`${middle !== null && html`<span class="figures">${quality.offset(middle)}</span> `}<span class="sub">${quality.offsets(low, high)}</span>`,
  };
  return html`${dataTable(context, numbers, {
    caption: quality.cleaningCaption,
    rows,
    columns: [
      { head: heads.source, kind: 'head', cell: (row) => row.source },
      { head: heads.site, cell: (row) => siteName(row.site) },
      { head: heads.records, kind: 'number', cell: (row) => format.integer(row.records) },
      { head: heads.leftOut, kind: 'number', cell: (row) => format.integer(row.left_out) },
      { head: heads.fit, kind: 'number', cell: (row) => format.integer(row.fit) },
      {
        head: heads.fitWith,
        kind: 'number',
        cell: (row) => row.fit_with_offset !== null && format.integer(row.fit_with_offset),
      },
      { head: heads.verdict, cell: (row) => quality.cleaningClock[row.verdict] },
      offset,
    ],
  })}
<p class="left-out">${quality.cleaningNote}</p>
${clocksOff(review).map(
  (row) =>
    row.months.length > 0 &&
    folded(
      true,
      quality.cleaningMonthsSummary(row.source, siteName(row.site)),
      dataTable(context, numbers, {
        caption: quality.cleaningMonthsCaption(row.source, siteName(row.site)),
        rows: row.months,
        columns: [
          { head: monthHeads.month, kind: 'head', cell: (of) => format.month(of.month) },
          { head: monthHeads.records, kind: 'number', cell: (of) => format.integer(of.records) },
          { head: monthHeads.fit, kind: 'number', cell: (of) => format.integer(of.fit) },
          {
            head: monthHeads.offset,
            kind: 'number',
            cell: (of) => of.offset_minutes !== null && quality.offset(of.offset_minutes),
          },
        ],
      }),
    ),
)}`;
}
