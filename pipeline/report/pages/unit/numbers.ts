import { type Html, type HtmlValue, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';
import { rateCell } from '../../parts/rates.ts';
import { monthlyFigure, seriesKinds } from '../../parts/series-figures.ts';
import { monthlyRows } from '../../rows/monthly-rows.ts';
import type { Unit } from './unit.ts';

interface CountLine {
  what: string;
  month: HtmlValue;
  record: HtmlValue;
}

type Tests = Unit['tests'][number];
type Cycles = Unit['cycles'][number];

/** Air-removal tests of a unit: series, counts of month and record, leak test. */
export async function testsSection(context: ReportContext, numbers: Numbering, unit: Unit): Promise<Section> {
  const { words } = context;
  const { rows } = words.unit;
  const of = (span: Tests['span']) => unit.tests.find((tests) => tests.span === span)!;
  const line = (what: string, value: (tests: Tests) => HtmlValue): CountLine => ({
    what,
    month: value(of('month')),
    record: value(of('record')),
  });
  const count = (
    field:
      | 'episodes'
      | 'retests'
      | 'after_repair'
      | 'qualification'
      | 'invalid'
      | 'production_days'
      | 'missing'
      | 'late'
      | 'time_unknown',
  ) => line(rows[field], (tests) => words.format.integer(tests[field]));
  return {
    id: 'tests',
    heading: words.unit.testsHeading,
    body: html`${await series(context, numbers, unit, 'failed_days')}
${countTable(context, numbers, [
  line(rows.failed_days, (tests) => rateCell(context, tests.failed_days)),
  count('episodes'),
  count('retests'),
  count('after_repair'),
  count('qualification'),
  count('invalid'),
  count('production_days'),
  count('missing'),
  count('late'),
  count('time_unknown'),
])}
${leak(context, unit)}`,
  };
}

/** Cycles of a unit: series of aborts, counts of month and record, kinds and classes. */
export async function cyclesSection(
  context: ReportContext,
  numbers: Numbering,
  unit: Unit,
): Promise<Section> {
  const { words } = context;
  const { rows } = words.unit;
  const { terms, format } = words;
  const of = (span: Cycles['span']) => unit.cycles.find((cycles) => cycles.span === span)!;
  const line = (what: string, value: (cycles: Cycles) => HtmlValue): CountLine => ({
    what,
    month: value(of('month')),
    record: value(of('record')),
  });
  const count = (field: 'test_and_warm_up_aborts' | 'purges' | 'early_stops' | 'open') =>
    line(rows[field], (cycles) => format.integer(cycles[field]));
  const kinds = Object.entries(terms.cycleKind)
    .filter(([kind]) => (of('record').by_kind[kind as keyof Cycles['by_kind']] ?? 0) > 0)
    .map(([kind, name]) =>
      line(name, (cycles) => format.integer(cycles.by_kind[kind as keyof Cycles['by_kind']] ?? 0)),
    );
  const classes = Object.entries(terms.abortClass)
    .filter(([name]) => (of('record').aborts_by_class[name as keyof Cycles['aborts_by_class']] ?? 0) > 0)
    .map(([name, text]) =>
      line(text, (cycles) =>
        format.integer(cycles.aborts_by_class[name as keyof Cycles['aborts_by_class']] ?? 0),
      ),
    );
  return {
    id: 'cycles',
    heading: words.unit.cyclesHeading,
    body: html`${await series(context, numbers, unit, 'aborts')}
${countTable(context, numbers, [
  line(rows.aborts, (cycles) => rateCell(context, cycles.aborts)),
  count('test_and_warm_up_aborts'),
  count('purges'),
  count('early_stops'),
  count('open'),
])}
${classes.length > 0 && countTable(context, numbers, classes, words.unit.classCaption)}
${kinds.length > 0 && countTable(context, numbers, kinds, words.unit.kindCaption)}`,
  };
}

/** Spans with one baseline. */
export function erasSection(context: ReportContext, numbers: Numbering, unit: Unit): Section {
  const { words } = context;
  const { eraHeads: heads } = words.unit;
  return {
    id: 'eras',
    heading: words.unit.erasHeading,
    body:
      unit.eras.length === 0
        ? html`<p class="empty">${words.pages.nothingToShow}</p>`
        : dataTable(context, numbers, {
            caption: words.unit.erasCaption,
            rows: unit.eras,
            columns: [
              { head: heads.from, kind: 'head', cell: (era) => words.format.date(era.from) },
              { head: heads.to, cell: (era) => words.format.date(era.to) },
              {
                head: heads.opened,
                cell: (era) =>
                  era.opened_by === null
                    ? words.unit.eraFirst
                    : (words.terms.era[era.opened_by] ?? era.opened_by),
              },
            ],
          }),
  };
}

function countTable(
  context: ReportContext,
  numbers: Numbering,
  rows: readonly CountLine[],
  caption = context.words.unit.numbersCaption,
): Html {
  const { numbersHeads } = context.words.unit;
  return dataTable(context, numbers, {
    caption,
    rows,
    columns: [
      { head: numbersHeads.what, kind: 'head', cell: (row) => row.what },
      { head: context.month, kind: 'number', cell: (row) => row.month },
      { head: context.span, kind: 'number', cell: (row) => row.record },
    ],
  });
}

async function series(
  context: ReportContext,
  numbers: Numbering,
  { unit }: Unit,
  chart: 'failed_days' | 'aborts',
): Promise<Html> {
  const { review, words, span } = context;
  const kind = seriesKinds(context)[chart];
  const rows = monthlyRows(
    review.charts[chart].filter((point) => point.scope === unit),
    review,
    words,
  );
  if (rows.length === 0) return html`<p class="empty">${words.series.noPoints}</p>`;
  if (rows.every((row) => row.events === 0))
    return html`<p class="empty">${words.series.noEvents(kind.outcome, span)}</p>`;
  return monthlyFigure(context, numbers, kind, rows, words.series.unit(unit));
}

function leak({ words, measures }: ReportContext, { leak: of }: Unit): Html {
  const { format } = words;
  const text =
    of.last === null || of.last_at === null
      ? words.unit.noLeak
      : words.unit.leak(
          format.figures(of.last),
          format.time(of.last_at),
          format.figures(of.limit),
          measures.leakRate,
          of.tests_in_month,
          of.over_limit_in_month,
        );
  return html`<h3>${words.unit.leakHeading}</h3>
<p>${text}</p>`;
}
