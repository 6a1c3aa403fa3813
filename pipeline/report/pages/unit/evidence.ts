import { cleaningCalendarChart } from '../../charts/cleaning-calendar.ts';
import { clockHistogramChart } from '../../charts/clock-histogram.ts';
import { type Html, html } from '../../html/html.ts';
import type { Numbering, ReportContext } from '../../page-context.ts';
import { comparisonFigures, comparisonTable, verdictWords } from '../../parts/comparison-figure.ts';
import { figure } from '../../parts/figure.ts';
import { folded } from '../../parts/folded.ts';
import { withoutPassLists } from '../../parts/lists/cycles-without-pass.ts';
import { clocksTable, countersTable, eventsTable } from '../../parts/lists/record-quality.ts';
import {
  contradictedTable,
  lookBackLists,
  requalificationTable,
  returnsTable,
  stopsTable,
  timingTable,
} from '../../parts/lists/single-records.ts';
import type { Section } from '../../parts/page.ts';
import { stateKey } from '../../parts/state-key.ts';
import { calendarRows } from '../../rows/calendar-rows.ts';
import { histogramRows } from '../../rows/histogram-rows.ts';
import { calendarOptions, chamberTable, dueTable, stateCounts } from '../review/cleaning.ts';
import type { Unit } from './unit.ts';

/** Cleaning of a unit: the month by task and day, counts, records beside the log, days since cleaning. */
export async function unitCleaningSection(
  context: ReportContext,
  numbers: Numbering,
  unit: Unit,
): Promise<Section> {
  const { review, words, month, span } = context;
  const { cleaning } = words;
  const ofUnit = <Row extends { unit: string }>(rows: readonly Row[]) =>
    rows.filter((row) => row.unit === unit.unit);
  const rows = calendarRows(ofUnit(review.cleaning.days), words).map((row) => ({
    ...row,
    unit: words.terms.task[row.task],
  }));
  const inMonth = ofUnit(review.cleaning.month);
  const inRecord = ofUnit(review.cleaning.record);
  return {
    id: 'cleaning',
    heading: words.unit.cleaningHeading,
    body: html`${
      inMonth.length === 0
        ? html`<p class="empty">${cleaning.none(month)}</p>`
        : html`${await figure(context, numbers, {
            id: 'figure-calendar',
            title: words.unit.calendarTitle(month),
            description: cleaning.calendarDescription(unit.unit, month, stateCounts(context, rows)),
            spec: cleaningCalendarChart(
              rows,
              calendarOptions(
                context,
                rows.map((row) => row.unit),
              ),
            ),
            key: stateKey(context),
            csv: 'tables/cleaning-calendar.csv',
          })}
${dueTable(context, numbers, inMonth, cleaning.tableCaption(month))}`
    }
${inRecord.length > 0 && dueTable(context, numbers, inRecord, cleaning.recordCaption(span))}
<p class="left-out">${cleaning.leftOut}</p>
${chamberTable(context, numbers, [unit])}
${await histogram(context, numbers, unit)}`,
  };
}

async function histogram(context: ReportContext, numbers: Numbering, { unit }: Unit): Promise<Html | false> {
  const { review, words } = context;
  const rows = histogramRows(review, unit, words);
  if (rows.every((row) => row.test_days === 0)) return false;
  return figure(context, numbers, {
    id: 'figure-clock',
    title: words.unit.histogramTitle,
    description: words.unit.histogramDescription(
      rows.filter((row) => row.label !== '').map((row) => `${row.class_label}: ${row.label}`),
    ),
    spec: clockHistogramChart(rows, {
      clockTitle: words.charts.daysSinceCleaning,
      daysTitle: words.charts.testDays,
    }),
    reading: words.unit.histogramReading,
    csv: 'tables/failed-days-by-clock.csv',
  });
}

/** All comparisons of a unit in one picture, with all that the verdicts stand on. */
export async function unitComparisonsSection(
  context: ReportContext,
  numbers: Numbering,
  { unit }: Unit,
): Promise<Section> {
  const { review, words, span } = context;
  const comparisons = review.comparisons.filter((of) => of.unit === unit);
  const body =
    comparisons.length === 0
      ? html`<p class="empty">${words.unit.noComparison}</p>`
      : html`<p>${words.comparisons.unitIntro(review.family_size, span)}</p>
${folded(true, words.comparisons.verdictsMean, verdictWords(context))}
${await comparisonFigures(context, numbers, {
  id: 'figure-comparisons',
  title: words.unit.comparisonsTitle,
  ratioTitle: words.charts.anyRatio,
  comparisons,
  label: words.comparisons.questionShort,
})}
${comparisonTable(context, numbers, comparisons, words.unit.comparisonsTitle, 'question')}
<p class="left-out">${words.comparisons.leftOutNote}</p>`;
  return { id: 'comparisons', heading: words.unit.comparisonsHeading, body };
}

/** Lists of single records of a unit. */
export function unitRecordsSection(context: ReportContext, numbers: Numbering, of: Unit): Section {
  const { unit } = of;
  const { review, words, month, span } = context;
  const { records } = words;
  const ofUnit = <Row extends { unit: string }>(rows: readonly Row[]) =>
    rows.filter((row) => row.unit === unit);
  const parts: (Html | false)[] = [];
  const contradicted = ofUnit(review.contradicted_records);
  const timing = ofUnit(review.test_timing);
  const lookBacks = ofUnit(review.look_backs);
  const withoutPass = ofUnit(review.cycles_without_pass);
  const returns = ofUnit(review.incomplete_returns);
  const services = ofUnit(review.requalifications);
  const stops = ofUnit(review.early_stops);
  const part = (list: readonly unknown[], heading: string, body: () => Html) => {
    if (list.length > 0)
      parts.push(html`<h3>${heading}</h3>
${body()}
`);
  };
  part(contradicted, records.contradicted.heading, () =>
    contradictedTable(context, numbers, contradicted, records.contradicted.caption(span)),
  );
  part(timing, records.timing.heading, () =>
    timingTable(context, numbers, timing, records.timing.caption(month)),
  );
  part(withoutPass, records.withoutPass.heading, () => withoutPassLists(context, numbers, withoutPass));
  part(lookBacks, records.lookBack.heading, () => lookBackLists(context, numbers, lookBacks));
  part(returns, records.returns.heading, () =>
    returnsTable(context, numbers, returns, records.returns.cleaningCaption(span)),
  );
  part(services, records.returns.serviceHeading, () =>
    requalificationTable(context, numbers, services, records.returns.serviceCaption),
  );
  part(stops, records.stops.heading, () => stopsTable(context, numbers, stops, records.stops.caption(month)));
  const clocks = ofUnit(review.record_quality.clock_differences);
  const counters = ofUnit(review.record_quality.counters);
  return {
    id: 'records',
    heading: words.unit.recordsHeading,
    body: html`${parts.length === 0 ? html`<p class="empty">${words.unit.noRecords}</p>` : parts}
${
  clocks.length + counters.length > 0 &&
  html`<h3>${words.quality.unitHeading}</h3>
${clocksTable(context, numbers, clocks)}
${countersTable(context, numbers, counters)}`
}
${eventsTable(context, numbers, of)}
<p class="screen"><a href="records.html">${words.unit.allLists}</a></p>`,
  };
}
