import type { ChartPoint } from '../../findings/review-schema.ts';
import { byClockChart } from '../charts/by-clock.ts';
import { type SharedScale, scaleFromZero } from '../charts/layer.ts';
import { monthlyByUnitChart, monthlyChart } from '../charts/monthly.ts';
import { countBounds, monthlyCountsByUnitChart, monthlyCountsChart } from '../charts/monthly-counts.ts';
import { type Html, html } from '../html/html.ts';
import type { Numbering, ReportContext } from '../page-context.ts';
import { clockRows } from '../rows/clock-rows.ts';
import { type MonthlyRow, monthlyRows } from '../rows/monthly-rows.ts';
import { figure } from './figure.ts';
import { picturedUnits } from './pictured-units.ts';

/** What differs between the two monthly series. */
export interface SeriesKind {
  chart: 'failed_days' | 'aborts';
  id: string;
  valueTitle: string;
  countTitle: string;
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
      countTitle: charts.failedDays,
      noun: terms.trials.failed_test,
      outcome: terms.outcomes.failed_test,
      title: series.failedTitle,
      csv: 'tables/failed-days-by-month.csv',
    },
    aborts: {
      chart: 'aborts',
      id: 'aborts',
      valueTitle: charts.abortsPer100,
      countTitle: charts.aborts,
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
/** Months that a small picture shows, at most; the page of the unit shows all. */
const MOST_MONTHS = 36;
/** Top of the scale of counts, at least. */
const LEAST_COUNT = 3;
/** Intervals that reach further than so many times the values and limits are cut. */
const CUT_AT = 1.6;

/** A series over all units with its limits, and the same for each unit, small. */
export async function seriesFigures(
  context: ReportContext,
  numbers: Numbering,
  kind: SeriesKind,
): Promise<Html> {
  const { review, words, span } = context;
  const { series } = words;
  const all = monthlyRows(review.charts[kind.chart], review, words);
  if (all.length === 0) return html`<p class="empty">${series.noPoints}</p>`;
  if (all.every((row) => row.events === 0))
    return html`<p class="empty">${series.noEvents(kind.outcome, span)}</p>`;
  const fleet = all.filter((row) => row.scope === 'fleet');
  const pictured = picturedUnits(review);
  const units = all.filter((row) => pictured.has(row.scope));
  return html`${await monthlyFigure(context, numbers, kind, fleet, series.allUnits)}${await unitFigures(context, numbers, kind, units)}`;
}

/** The series of each unit, small: rates where one of them has limits, else counts. */
async function unitFigures(
  context: ReportContext,
  numbers: Numbering,
  kind: SeriesKind,
  all: readonly MonthlyRow[],
): Promise<Html[]> {
  const { series } = context.words;
  const shown = new Set(months(all).sort().slice(-MOST_MONTHS));
  const units = all.filter((row) => shown.has(row.month));
  const newest = units.length < all.length ? series.newestMonths(MOST_MONTHS) : '';
  const ids = [...new Set(units.map((row) => row.scope))];
  if (ids.length < 2) return [];
  const rates = units.some((row) => row.upper !== null);
  const options = {
    valueTitle: kind.valueTitle,
    scale: rates ? rateScale(units) : countScale(units),
    labelledMonths: months(units).filter((_, index) => index % 6 === 0),
    columns: COLUMNS,
  };
  const figures: Html[] = [];
  for (let from = 0; from < ids.length; from += UNITS_IN_FIGURE) {
    const part = ids.slice(from, from + UNITS_IN_FIGURE);
    const rows = units.filter((row) => part.includes(row.scope));
    const bare = part.filter((id) => rows.every((row) => row.scope !== id || row.upper === null));
    const reading = rates
      ? `${signalsText(context, kind, rows)}${bare.length > 0 ? ` ${series.noLimitsUnits(bare)}` : ''}`
      : series.countReading(context.level);
    figures.push(
      await figure(context, numbers, {
        id: `figure-${kind.id}-units${from === 0 ? '' : `-${from}`}`,
        title: rates ? kind.title(series.byUnit) : series.countTitle(kind.outcome, series.byUnit),
        description: part
          .map((id) =>
            describe(
              context,
              kind,
              rows.filter((row) => row.scope === id),
            ),
          )
          .join(' '),
        spec: rates ? monthlyByUnitChart(rows, options) : monthlyCountsByUnitChart(rows, options),
        reading: [reading, episodesText(context, kind, rows), newest].filter(Boolean).join(' '),
        csv: kind.csv,
      }),
    );
  }
  return figures;
}

/** One monthly series: rates with their limits, or counts where there are none. */
export async function monthlyFigure(
  context: ReportContext,
  numbers: Numbering,
  kind: SeriesKind,
  rows: readonly MonthlyRow[],
  scopeText: string,
): Promise<Html> {
  const { charts, series } = context.words;
  const rates = rows.some((row) => row.upper !== null);
  const options = {
    valueTitle: rates ? kind.valueTitle : kind.countTitle,
    scale: rates ? rateScale(rows) : countScale(rows),
    labelledMonths: labelledMonths(rows),
  };
  const signal = rows.some((row) => row.point === 'signal') ? ` ${series.readingSignal}` : '';
  return figure(context, numbers, {
    id: `figure-${kind.id}`,
    title: rates ? kind.title(scopeText) : series.countTitle(kind.outcome, scopeText),
    description: describe(context, kind, rows),
    spec: rates
      ? monthlyChart(rows, {
          ...options,
          words: { centre: charts.centre, upper: charts.upper, lower: charts.lower },
        })
      : monthlyCountsChart(rows, options),
    reading: [
      rates
        ? `${signalsText(context, kind, rows)} ${limitsText(context, rows)} ${series.readingMonth} ${series.readingInterval(context.level)}${signal}`
        : `${series.countReading(context.level)} ${series.countNumbers}`,
      episodesText(context, kind, rows),
    ]
      .filter(Boolean)
      .join(' '),
    csv: kind.csv,
  });
}

/** Scale of rates: values, limits, and of the intervals what is not much higher. */
function rateScale(rows: readonly MonthlyRow[]): SharedScale {
  const { max } = scaleFromZero(rows, (row) => [row.per_100, row.upper]);
  const highest = scaleFromZero(rows, (row) => [row.high]).max;
  return { max: Math.max(max, Math.min(highest, max * CUT_AT)) };
}

/** Scale of counts: bars and their intervals, whole. */
const countScale = (rows: readonly MonthlyRow[]): SharedScale =>
  scaleFromZero(rows, (row) => [row.events, countBounds(row).high_count, LEAST_COUNT]);

/** Every month where there is room for its name, else every second or third. */
function labelledMonths(rows: readonly MonthlyRow[]): string[] {
  const all = months(rows);
  const step = Math.ceil(all.length / 20);
  return all.filter((_, index) => index % step === 0);
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

/** How many of the month's failed days are drawn: of each episode the first, while tables count all. */
function episodesText(
  { words, review }: ReportContext,
  kind: SeriesKind,
  rows: readonly MonthlyRow[],
): string {
  if (kind.chart !== 'failed_days') return '';
  const { month } = review.period;
  const scopes = new Set(rows.map((row) => row.scope));
  const failed = review.units
    .filter(({ unit }) => scopes.has('fleet') || scopes.has(unit))
    .flatMap(({ tests }) => tests.filter(({ span }) => span === 'month'))
    .reduce((sum, { failures }) => sum + failures, 0);
  const counted = rows.filter((row) => row.month === month).reduce((sum, { events }) => sum + events, 0);
  return failed === 0 ? '' : words.series.firstOfEpisode(words.format.month(month), counted, failed);
}

function describe(context: ReportContext, kind: SeriesKind, rows: readonly MonthlyRow[]): string {
  const { series, format } = context.words;
  const points = rows
    .filter((row) => row.of > 0)
    .map((row) => series.point(format.month(row.month), row.events, row.of, kind.noun));
  return series.describe(rows[0]?.scope_label ?? '', kind.outcome, points, limitsText(context, rows));
}

function months(rows: readonly MonthlyRow[]): string[] {
  return [...new Set(rows.map((row) => row.month))];
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
  if (rows.length === 0) return html`<p class="empty">${series.noClock}</p>`;
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
