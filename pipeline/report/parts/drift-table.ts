import type { ProbeDrift } from '../../findings/drift/drift-schema.ts';
import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';
import { type Column, dataTable } from './data-table.ts';
import { unitLink } from './unit-link.ts';

/** Probes in a table: state, since when, level, pace and days to the limit; what else is to be said stands in lines below it. */
export function driftTable(
  context: ReportContext,
  numbers: Numbering,
  { caption, rows, withUnit }: { caption: string; rows: readonly ProbeDrift[]; withUnit: boolean },
): Html {
  const { words } = context;
  const text = words.drift;
  const columns: Column<ProbeDrift>[] = [
    ...(withUnit
      ? [
          {
            head: text.heads.unit,
            kind: 'head' as const,
            cell: (row: ProbeDrift) => unitLink(context, row.unit),
          },
        ]
      : []),
    { head: text.heads.probe, kind: withUnit ? 'text' : 'head', cell: (row) => text.probe(row.probe) },
    {
      head: text.heads.state,
      cell: (row) =>
        html`${text.state[row.state]}${row.direction && row.state !== 'steady' && `, ${text[row.direction]}`}`,
    },
    { head: text.heads.since, cell: (row) => (row.since ? words.format.date(row.since) : '') },
    {
      head: text.heads.now,
      kind: 'number',
      cell: ({ level_now, baseline, measure }) =>
        level_now !== null &&
        html`${text.value(level_now, measure)}${baseline && html` <span class="sub">${text.usual(baseline.low, baseline.high)}</span>`}`,
    },
    {
      head: text.heads.rate,
      kind: 'number',
      cell: ({ rate_per_week: rate, measure }) =>
        rate &&
        html`${text.value(rate.value, measure)} <span class="sub">${text.span(rate.low, rate.high)}</span>`,
    },
    {
      head: text.heads.days,
      kind: 'number',
      cell: ({ days_to_limit: days, limit, state }) => {
        if (days)
          return html`${text.days(days.days)} <span class="sub">${text.daysSpan(days.low, days.high)}</span>`;
        return state === 'moving' || state === 'near_limit' ? text.daysUnknown(limit !== null) : '';
      },
    },
  ];
  const lines = [
    ...causeLines(context, rows),
    ...rows.flatMap((row) => {
      const notes = notesOf(context, row);
      return notes === '' ? [] : [text.noteOf(row.unit, words.terms.probe[row.probe], notes)];
    }),
  ];
  return html`${dataTable(context, numbers, { caption, rows, columns })}
${lines.length > 0 && html`<ul class="notes">${lines.map((line) => html`<li>${line}</li>`)}</ul>`}`;
}

/** What several probes of a unit fit together, once a unit. */
function causeLines({ words, review }: ReportContext, rows: readonly ProbeDrift[]): string[] {
  const shown = new Set(rows.map((row) => row.unit));
  return review.drift.units.flatMap(({ unit, cause }) =>
    cause && shown.has(unit)
      ? [
          words.drift.noteOf(
            unit,
            cause.probes.map((probe) => words.terms.probe[probe]).join(', '),
            words.drift.cause(cause.fits_best),
          ),
        ]
      : [],
  );
}

function notesOf({ words }: ReportContext, row: ProbeDrift): string {
  const { drift } = words;
  return [
    row.saw_tooth && drift.sawTooth(row.saw_tooth.falls_back_at, row.saw_tooth.cleanings),
    ...row.notes.map((note) => `${words.format.sentence(drift.note[note.code])}.`),
  ]
    .filter(Boolean)
    .join(' ');
}
