import type { Review } from '../../../findings/review-schema.ts';
import { html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { dataTable } from '../../parts/data-table.ts';
import type { Section } from '../../parts/page.ts';
import { listedUnits, picturedNote } from '../../parts/pictured-units.ts';
import { countCell, rateCell } from '../../parts/rates.ts';
import { clockFigure, seriesFigures, seriesKinds } from '../../parts/series-figures.ts';
import { unitLink } from '../../parts/unit-link.ts';
import { rankingFigure } from './ranking.ts';

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
${picturedNote(context)}
${await seriesFigures(context, numbers, seriesKinds(context).failed_days)}
${await rankingFigure(context, numbers)}
${dataTable(context, numbers, {
  caption: series.testsCaption(month, span),
  rows: listedUnits(review),
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
    {
      head: series.heads.episodes,
      kind: 'number',
      cell: (unit) => countCell(words, tests(unit, 'month').episodes),
    },
    {
      head: series.heads.retests,
      kind: 'number',
      cell: (unit) => countCell(words, tests(unit, 'month').retests),
    },
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
${
  review.units.length > 0 &&
  html`<p class="left-out">${series.testsLeftOut({
    retests: counts('retests'),
    afterRepair: counts('after_repair'),
    qualification: counts('qualification'),
    invalid: counts('invalid'),
    notAtRisk,
    span,
  })}</p>`
}`,
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
${picturedNote(context)}
${await seriesFigures(context, numbers, seriesKinds(context).aborts)}
${dataTable(context, numbers, {
  caption: series.cyclesCaption(month, span),
  rows: listedUnits(review),
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
    {
      head: series.heads.purges,
      kind: 'number',
      cell: (unit) => countCell(words, cycles(unit, 'month').purges),
    },
    {
      head: series.heads.earlyStops,
      kind: 'number',
      cell: (unit) => countCell(words, cycles(unit, 'month').early_stops),
    },
  ],
})}
${
  review.units.length > 0 &&
  html`<p class="left-out">${series.abortsLeftOut({
    purges: counts('purges'),
    earlyStops: counts('early_stops'),
    open: counts('open'),
    testAborts: counts('test_and_warm_up_aborts'),
    unrelated: panelSum('unrelated_aborts'),
    unclassified: panelSum('unclassified_aborts'),
    span,
  })}</p>`
}`,
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
${
  context.panel.length > 0 &&
  html`<p class="left-out">${series.clockLeftOut({
    before: inStretch.filter((row) => row.at_risk === 1 && row.chamber_clock_days === null).length,
    notAtRisk: inStretch.filter((row) => row.at_risk === 0).length,
    span,
  })}</p>`
}`,
  };
}

type Unit = Review['units'][number];
type Span = 'month' | 'record';
const tests = (unit: Unit, span: Span) => unit.tests.find((of) => of.span === span)!;
const cycles = (unit: Unit, span: Span) => unit.cycles.find((of) => of.span === span)!;
const recordSum = (review: Review, value: (unit: Unit) => number): number =>
  review.units.reduce((sum, unit) => sum + value(unit), 0);
