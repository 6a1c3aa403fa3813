import type { ChartPoint, Review } from '../../../findings/review-schema.ts';
import { byClockChart } from '../../charts/by-clock.ts';
import { scaleFromZero } from '../../charts/layer.ts';
import { monthlyByUnitChart, monthlyChart } from '../../charts/monthly.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../../parts/data-table.ts';
import { figure } from '../../parts/figure.ts';
import type { Section } from '../../parts/page.ts';
import { rateCell } from '../../parts/rates.ts';
import { unitLink } from '../../parts/unit-link.ts';
import { clockRows } from '../../rows/clock-rows.ts';
import { type MonthlyRow, monthlyRows } from '../../rows/monthly-rows.ts';

/** What differs between the two monthly series. */
export interface SeriesKind {
  chart: 'failed_days' | 'aborts';
  id: string;
  valueTitle: string;
  noun: string;
  outcome: string;
  title: (scope: string) => string;
  csv: string;
}

export function seriesKinds({
  words,
}: Pick<ReportContext, 'words'>): Record<'failed_days' | 'aborts', SeriesKind> {
  const { charts, series, terms } = words;
  return {
    failed_days: {
      chart: 'failed_days',
      id: 'failed',
      valueTitle: charts.failedPer100,
      noun: terms.trials.failed_test,
      outcome: terms.outcomes.failed_test,
      title: series.failedTitle,
      csv: 'tables/failed-days-by-month.csv',
    },
    aborts: {
      chart: 'aborts',
      id: 'aborts',
      valueTitle: charts.abortsPer100,
      noun: terms.trials.cleanliness_abort,
      outcome: terms.outcomes.cleanliness_abort,
      title: series.abortsTitle,
      csv: 'tables/aborts-by-month.csv',
    },
  };
}

/** Small pictures in one figure: what fits a printed page. */
const UNITS_IN_FIGURE = 15;
const COLUMNS = 3;

export async function testsSection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { words, month, span, review, level } = context;
  const { series } = words;
  const counts = (field: 'retests' | 'after_repair' | 'qualification' | 'invalid') =>
    recordSum(review, (unit) => unit.tests.find((of) => of.span === 'record')?.[field] ?? 0);
  const notAtRisk = context.panel.filter((row) => row.test_result !== null && row.at_risk === 0).length;
  return {
    id: 'failures',
    heading: series.testsHeading,
    body: html`<p>${series.testsIntro}</p>
${await seriesFigures(context, numbers, seriesKinds(context).failed_days)}
${dataTable(context, numbers, {
  caption: series.testsCaption(month, span),
  rows: review.units,
  columns: [
    { head: series.heads.unit, kind: 'head', cell: (unit) => unitLink(context, unit.unit) },
    {
      head: `${series.heads.failedMonth} (${series.heads.interval(level)})`,
      kind: 'number',
      cell: (unit) => rateCell(context, tests(unit, 'month').failed_days),
    },
    {
      head: `${series.heads.failedRecord} (${series.heads.interval(level)})`,
      kind: 'number',
      cell: (unit) => rateCell(context, tests(unit, 'record').failed_days),
    },
    { head: series.heads.episodes, kind: 'number', cell: (unit) => String(tests(unit, 'month').episodes) },
    { head: series.heads.retests, kind: 'number', cell: (unit) => String(tests(unit, 'month').retests) },
    {
      head: series.heads.missing,
      kind: 'number',
      cell: (unit) => words.pages.outOf(tests(unit, 'month').missing, tests(unit, 'month').production_days),
    },
    {
      head: series.heads.late,
      kind: 'number',
      cell: (unit) => words.pages.outOf(tests(unit, 'month').late, tests(unit, 'month').production_days),
    },
  ],
})}
<p class="left-out">${series.testsLeftOut({
      retests: counts('retests'),
      afterRepair: counts('after_repair'),
      qualification: counts('qualification'),
      invalid: counts('invalid'),
      notAtRisk,
      span,
    })}</p>`,
  };
}

export async function abortsSection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { words, month, span, review, level } = context;
  const { series, terms, format } = words;
  const counts = (field: 'purges' | 'early_stops' | 'open' | 'test_and_warm_up_aborts') =>
    recordSum(review, (unit) => unit.cycles.find((of) => of.span === 'record')?.[field] ?? 0);
  const panelSum = (field: 'unrelated_aborts' | 'unclassified_aborts') =>
    context.panel.reduce((sum, row) => sum + row[field], 0);
  const classes = (unit: Unit) => {
    const parts = Object.entries(cycles(unit, 'month').aborts_by_class).map(
      ([name, count]) =>
        `${format.integer(count)} ${terms.abortClass[name as keyof typeof terms.abortClass]}`,
    );
    return parts.length === 0 ? words.pages.none : parts.join('; ');
  };
  return {
    id: 'aborts',
    heading: series.abortsHeading,
    body: html`<p>${series.abortsIntro}</p>
${await seriesFigures(context, numbers, seriesKinds(context).aborts)}
${dataTable(context, numbers, {
  caption: series.cyclesCaption(month, span),
  rows: review.units,
  columns: [
    { head: series.heads.unit, kind: 'head', cell: (unit) => unitLink(context, unit.unit) },
    {
      head: `${series.heads.abortsMonth} (${series.heads.interval(level)})`,
      kind: 'number',
      cell: (unit) => rateCell(context, cycles(unit, 'month').aborts),
    },
    {
      head: `${series.heads.abortsRecord} (${series.heads.interval(level)})`,
      kind: 'number',
      cell: (unit) => rateCell(context, cycles(unit, 'record').aborts),
    },
    { head: series.heads.classes, cell: classes },
    { head: series.heads.purges, kind: 'number', cell: (unit) => String(cycles(unit, 'month').purges) },
    {
      head: series.heads.earlyStops,
      kind: 'number',
      cell: (unit) => String(cycles(unit, 'month').early_stops),
    },
  ],
})}
<p class="left-out">${series.abortsLeftOut({
      purges: counts('purges'),
      earlyStops: counts('early_stops'),
      open: counts('open'),
      testAborts: counts('test_and_warm_up_aborts'),
      unrelated: panelSum('unrelated_aborts'),
      unclassified: panelSum('unclassified_aborts'),
      span,
    })}</p>`,
  };
}

/** Failures and aborts of all units by days since cleaning. */
export async function clockSection(context: ReportContext, numbers: Numbering): Promise<Section> {
  const { words, span } = context;
  const { series } = words;
  const inStretch = context.panel.filter((row) => row.test_result !== null);
  return {
    id: 'clock',
    heading: series.clockHeading,
    body: html`<p>${series.clockIntro}</p>
${await clockFigure(context, numbers, 'fleet', 'failed_days')}
${await clockFigure(context, numbers, 'fleet', 'aborts')}
<p class="left-out">${series.clockLeftOut({
      before: inStretch.filter((row) => row.at_risk === 1 && row.chamber_clock_days === null).length,
      notAtRisk: inStretch.filter((row) => row.at_risk === 0).length,
      span,
    })}</p>`,
  };
}

/** One picture of rates by days since cleaning, of all units or of one. */
export async function clockFigure(
  context: ReportContext,
  numbers: Numbering,
  scope: string,
  outcome: 'failed_days' | 'aborts',
): Promise<Html> {
  const { words, review, span } = context;
  const { series, charts, terms } = words;
  const failed = outcome === 'failed_days';
  const what = failed ? terms.outcomes.failed_test : terms.outcomes.cleanliness_abort;
  const rows = clockRows(review, scope, outcome, words);
  const scopeText = scope === 'fleet' ? series.allUnits : series.unit(scope);
  if (rows.every((row) => row.events === 0)) return html`<p class="empty">${series.noEvents(what, span)}</p>`;
  const title = failed ? series.clockFailedTitle(scopeText) : series.clockAbortsTitle(scopeText);
  return figure(context, numbers, {
    id: failed ? 'figure-clock-failed' : 'figure-clock-aborts',
    title,
    description: `${charts.daysSinceCleaning}: ${rows.map((row) => `${row.class_label}, ${row.label}`).join('; ')}.`,
    spec: byClockChart(rows, {
      valueTitle: failed ? charts.failedPer100 : charts.abortsPer100,
      clockTitle: charts.daysSinceCleaning,
      scale: scaleFromZero(rows, (row) => [row.high_drawn, row.per_100]),
    }),
    csv: failed ? 'tables/failed-days-by-clock.csv' : 'tables/aborts-by-clock.csv',
  });
}

async function seriesFigures(context: ReportContext, numbers: Numbering, kind: SeriesKind): Promise<Html> {
  const { review, words, span } = context;
  const { series } = words;
  const all = monthlyRows(review.charts[kind.chart], review, words);
  if (all.length === 0) return html`<p class="empty">${series.noPoints}</p>`;
  if (all.every((row) => row.events === 0))
    return html`<p class="empty">${series.noEvents(kind.outcome, span)}</p>`;
  const fleet = all.filter((row) => row.scope === 'fleet');
  const units = all.filter((row) => row.scope !== 'fleet');
  const ids = [...new Set(units.map((row) => row.scope))];
  const figures = [await monthlyFigure(context, numbers, kind, fleet, series.allUnits)];
  const scale = scaleFromZero(units, (row) => [row.per_100, row.upper]);
  for (let from = 0; ids.length > 1 && from < ids.length; from += UNITS_IN_FIGURE) {
    const part = new Set(ids.slice(from, from + UNITS_IN_FIGURE));
    const rows = units.filter((row) => part.has(row.scope));
    const bare = [...part].filter((id) => rows.every((row) => row.scope !== id || row.upper === null));
    figures.push(
      await figure(context, numbers, {
        id: `figure-${kind.id}-units${from === 0 ? '' : `-${from}`}`,
        title: kind.title(series.byUnit),
        description: [...part]
          .map((id) =>
            describe(
              context,
              kind,
              rows.filter((row) => row.scope === id),
            ),
          )
          .join(' '),
        spec: monthlyByUnitChart(rows, {
          valueTitle: kind.valueTitle,
          scale,
          labelledMonths: months(rows).filter((_, index) => index % 6 === 0),
          columns: COLUMNS,
        }),
        reading: `${signalsText(context, kind, rows)}${bare.length > 0 ? ` ${series.noLimitsUnits(bare)}` : ''}`,
        csv: kind.csv,
      }),
    );
  }
  return html`${figures}`;
}

/** One monthly series with its limits. */
export async function monthlyFigure(
  context: ReportContext,
  numbers: Numbering,
  kind: SeriesKind,
  rows: readonly MonthlyRow[],
  scopeText: string,
): Promise<Html> {
  const { words } = context;
  const { charts, series } = words;
  const limits = limitsText(context, rows);
  return figure(context, numbers, {
    id: `figure-${kind.id}`,
    title: kind.title(scopeText),
    description: describe(context, kind, rows),
    spec: monthlyChart(rows, {
      valueTitle: kind.valueTitle,
      scale: scaleFromZero(rows, (row) => [row.per_100, row.upper]),
      labelledMonths: months(rows),
      words: { centre: charts.centre, upper: charts.upper, lower: charts.lower },
    }),
    reading: `${signalsText(context, kind, rows)} ${limits} ${series.reading}`,
    csv: kind.csv,
  });
}

function limitsText({ words }: ReportContext, rows: readonly MonthlyRow[]): string {
  const baseline = rows.filter((row) => row.baseline === 1);
  const first = baseline[0];
  if (first === undefined || rows.every((row) => row.upper === null)) return words.series.noLimits;
  return words.series.limits(words.format.month(first.month), words.format.month(baseline.at(-1)!.month));
}

function signalsText(
  { words, review }: ReportContext,
  kind: SeriesKind,
  rows: readonly MonthlyRow[],
): string {
  const { series, format, terms } = words;
  const shown = new Set(rows.map((row) => `${row.scope} ${row.month}`));
  const points = review.charts[kind.chart].filter(
    (point) => point.signals.length > 0 && shown.has(`${point.scope} ${point.month}`),
  );
  if (points.length === 0) return rows.some((row) => row.upper !== null) ? series.noSignals : '';
  const text = (point: ChartPoint) =>
    point.signals.map((signal) => {
      const [rule, side] = signal.split(' ') as [string, string?];
      return series.signal(
        point.scope === 'fleet' ? terms.fleet : point.scope,
        format.month(point.month),
        terms.rule[rule] ?? rule,
        terms.side[side ?? ''] ?? '',
      );
    });
  return series.signals(points.flatMap(text));
}

function describe(context: ReportContext, kind: SeriesKind, rows: readonly MonthlyRow[]): string {
  const { series, format } = context.words;
  const points = rows
    .filter((row) => row.of > 0)
    .map((row) => series.point(format.month(row.month), row.events, row.of, kind.noun));
  return series.describe(rows[0]?.scope_label ?? '', kind.outcome, points, limitsText(context, rows));
}

export function months(rows: readonly MonthlyRow[]): string[] {
  return [...new Set(rows.map((row) => row.month))];
}

type Unit = Review['units'][number];
type Span = 'month' | 'record';
const tests = (unit: Unit, span: Span) => unit.tests.find((of) => of.span === span)!;
const cycles = (unit: Unit, span: Span) => unit.cycles.find((of) => of.span === span)!;
const recordSum = (review: Review, value: (unit: Unit) => number): number =>
  review.units.reduce((sum, unit) => sum + value(unit), 0);
