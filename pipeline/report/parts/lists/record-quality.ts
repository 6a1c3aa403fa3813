import type { Review } from '../../../findings/review-schema.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { type Column, dataTable } from '../data-table.ts';
import { folded } from '../folded.ts';
import { unitLink } from '../unit-link.ts';

type Quality = Review['record_quality'];
type Difference = Quality['clock_differences'][number];

/** Clocks of tests against the clock of the cycle log; the months where the difference changes. */
export function clocksTable(
  context: ReportContext,
  numbers: Numbering,
  rows: readonly Difference[],
): Html | false {
  const { quality, format } = context.words;
  const { clockHeads: heads } = quality;
  if (rows.length === 0) return false;
  const median: Column<Difference> = {
    head: heads.median,
    cell: (row) =>
      row.median_minutes !== null &&
      html`<span class="figures">${quality.minutes(row.median_minutes)}</span>${
        row.low_minutes !== null &&
        row.high_minutes !== null &&
        html` <span class="sub">${quality.interval(row.low_minutes, row.high_minutes)}</span>`
      }`,
  };
  return html`${dataTable(context, numbers, {
    caption: quality.clocksCaption,
    rows,
    columns: [
      { head: heads.unit, kind: 'head', cell: (row) => unitLink(context, row.unit) },
      { head: heads.source, cell: (row) => row.source },
      { head: heads.matched, kind: 'number', cell: (row) => format.integer(row.matched) },
      { head: heads.unmatched, kind: 'number', cell: (row) => format.integer(row.unmatched) },
      median,
      { head: heads.before, kind: 'number', cell: (row) => format.integer(row.before_end) },
      { head: heads.verdict, cell: (row) => quality.clock[row.verdict] },
      {
        head: heads.offset,
        kind: 'number',
        cell: (row) => row.suggested_offset_minutes !== null && quality.offset(row.suggested_offset_minutes),
      },
    ],
  })}
<p class="left-out">${quality.clocksNote}</p>
${rows
  .filter((row) => row.verdict === 'changes')
  .map((row) =>
    folded(
      true,
      quality.monthsSummary(row.source, row.unit),
      dataTable(context, numbers, {
        caption: quality.monthsCaption(row.unit),
        rows: row.months,
        columns: [
          { head: quality.monthHeads.month, kind: 'head', cell: (of) => format.month(of.month) },
          { head: quality.monthHeads.matched, kind: 'number', cell: (of) => format.integer(of.matched) },
          { head: quality.monthHeads.median, cell: (of) => quality.minutes(of.median_minutes) },
        ],
      }),
    ),
  )}`;
}

/** Habits of entering, by source. */
export function entryTable(context: ReportContext, numbers: Numbering, rows: Quality['entry']): Html | false {
  const { quality, format } = context.words;
  const { entryHeads: heads } = quality;
  type Row = (typeof rows)[number];
  if (rows.length === 0) return false;
  const number = (
    head: string,
    field:
      | 'records'
      | 'timed'
      | 'with_entry_time'
      | 'entered_late'
      | 'entered_before'
      | 'in_batches'
      | 'largest_batch',
  ): Column<Row> => ({ head, kind: 'number', cell: (row) => format.integer(row[field]) });
  return html`${dataTable(context, numbers, {
    caption: quality.entryCaption,
    rows,
    columns: [
      { head: heads.source, kind: 'head', cell: (row) => row.source },
      number(heads.records, 'records'),
      number(heads.timed, 'timed'),
      {
        head: heads.fives,
        kind: 'number',
        cell: (row) =>
          row.on_five_share !== null &&
          html`<span class="figures">${quality.fives(row.on_five_minutes, row.timed)}</span> <span class="sub">${format.percent(row.on_five_share)}</span>`,
      },
      number(heads.typed, 'with_entry_time'),
      {
        head: heads.median,
        kind: 'number',
        cell: (row) => row.entry_median_hours !== null && quality.hours(row.entry_median_hours),
      },
      number(heads.late, 'entered_late'),
      number(heads.before, 'entered_before'),
      number(heads.batches, 'in_batches'),
      number(heads.largest, 'largest_batch'),
    ],
  })}
<p class="left-out">${quality.entryNote}</p>`;
}

/** Cycle counters, and where they jumped. */
export function countersTable(
  context: ReportContext,
  numbers: Numbering,
  rows: Quality['counters'],
): Html | false {
  const { quality, format } = context.words;
  const { counterHeads: heads, eventHeads } = quality;
  type Row = (typeof rows)[number];
  const events = rows.flatMap((row) => row.events.map((event) => ({ ...event, unit: row.unit })));
  if (rows.length === 0) return false;
  const number = (
    head: string,
    field: 'numbered' | 'unnumbered' | 'missing_numbers' | 'repeated_numbers',
  ): Column<Row> => ({ head, kind: 'number', cell: (row) => format.integer(row[field]) });
  return html`${dataTable(context, numbers, {
    caption: quality.countersCaption,
    rows,
    columns: [
      { head: heads.unit, kind: 'head', cell: (row) => unitLink(context, row.unit) },
      number(heads.numbered, 'numbered'),
      number(heads.unnumbered, 'unnumbered'),
      number(heads.missing, 'missing_numbers'),
      number(heads.repeated, 'repeated_numbers'),
      { head: heads.events, kind: 'number', cell: (row) => format.integer(row.events.length) },
    ],
  })}
${dataTable(context, numbers, {
  caption: quality.eventsCaption,
  rows: events,
  columns: [
    { head: eventHeads.unit, kind: 'head', cell: (row) => unitLink(context, row.unit) },
    { head: eventHeads.time, cell: (row) => format.time(row.time) },
    { head: eventHeads.from, kind: 'number', cell: (row) => String(row.from) },
    { head: eventHeads.to, kind: 'number', cell: (row) => String(row.to) },
    { head: eventHeads.what, cell: (row) => quality.counter[row.what] },
    {
      head: eventHeads.near,
      cell: (row) => (row.near_controller_replacement ? quality.near : quality.notNear),
    },
  ],
})}
<p class="left-out">${quality.countersNote}</p>`;
}

/** Events of a unit over the whole record, folded. */
export function eventsTable(
  context: ReportContext,
  numbers: Numbering,
  { unit, events }: Pick<Review['units'][number], 'unit' | 'events'>,
): Html | false {
  const { quality, format, records } = context.words;
  const { unitEventHeads: heads } = quality;
  if (events.length === 0) return false;
  return folded(
    true,
    quality.unitEvents(events.length),
    dataTable(context, numbers, {
      caption: quality.unitEventsCaption(unit),
      rows: events.toReversed(),
      columns: [
        {
          head: heads.day,
          kind: 'head',
          cell: (row) => (row.to === null ? format.date(row.date) : format.span(row.date, row.to)),
        },
        { head: heads.what, cell: (row) => quality.event[row.what] },
        { head: heads.detail, cell: (row) => row.detail !== null && quality.eventDetail[row.detail] },
        { head: heads.where, kind: 'long', cell: (row) => records.where(row.file, row.sheet, row.row) },
      ],
    }),
  );
}
