import type { TopLevelSpec } from 'vega-lite';
import { byClockChart } from '../../../pipeline/report/charts/by-clock.ts';
import { cleaningCalendarChart } from '../../../pipeline/report/charts/cleaning-calendar.ts';
import { clockHistogramChart } from '../../../pipeline/report/charts/clock-histogram.ts';
import { contrastChart } from '../../../pipeline/report/charts/contrast.ts';
import { driftChart } from '../../../pipeline/report/charts/drift.ts';
import { dueBarsChart } from '../../../pipeline/report/charts/due-bars.ts';
import { forestChart } from '../../../pipeline/report/charts/forest.ts';
import { historyChart } from '../../../pipeline/report/charts/history.ts';
import { monthlyByUnitChart, monthlyChart } from '../../../pipeline/report/charts/monthly.ts';
import {
  monthlyCountsByUnitChart,
  monthlyCountsChart,
} from '../../../pipeline/report/charts/monthly-counts.ts';
import { rankingChart } from '../../../pipeline/report/charts/ranking.ts';
import { toldText } from '../../../pipeline/report/charts/told.ts';
import { reportContext } from '../../../pipeline/report/page-context.ts';
import { calendarRows } from '../../../pipeline/report/rows/calendar-rows.ts';
import { clockRows } from '../../../pipeline/report/rows/clock-rows.ts';
import { contrastRows } from '../../../pipeline/report/rows/contrast-rows.ts';
import type { DriftPoint } from '../../../pipeline/report/rows/drift-weeks.ts';
import { dueRows } from '../../../pipeline/report/rows/due-rows.ts';
import { forestRows } from '../../../pipeline/report/rows/forest-rows.ts';
import { histogramRows } from '../../../pipeline/report/rows/histogram-rows.ts';
import { historyRows, LANES } from '../../../pipeline/report/rows/history-rows.ts';
import { monthlyRows } from '../../../pipeline/report/rows/monthly-rows.ts';
import { rankingRows } from '../../../pipeline/report/rows/ranking-rows.ts';
import { en } from '../../../pipeline/report/words/en.ts';
import { formatDay } from '../../../pipeline/site/day.ts';
import { fleetInput } from '../fixtures/fleet.ts';
import { intervalExamples } from './interval-examples.ts';

/** A chart with its rows: its test and its entry in the gallery. */
export interface ChartExample {
  name: string;
  /** Rows that the chart was given, to set its marks beside them. */
  rows: readonly object[];
  spec: TopLevelSpec;
}

/** One example of each chart, with the rows of a fleet of so many units. */
export function chartExamples(units = 3): ChartExample[] {
  const { review, panel, dueOf } = fleetInput(units);
  const context = reportContext(review, panel, dueOf, en);
  const monthly = monthlyRows(review.charts.failed_days, review, en);
  const fleet = monthly.filter((row) => row.scope === 'fleet');
  const ofUnits = monthly.filter((row) => row.scope !== 'fleet');
  const months = [...new Set(monthly.map((row) => row.month))];
  const sparse = months.filter((_, index) => index % 6 === 0);
  const shared = {
    valueTitle: 'Failed day results per 100 test days',
    scale: { max: 8 },
    labelledMonths: months,
  };
  const counts = { ...shared, valueTitle: 'Failed day results', scale: { max: 10 } };
  const calendar = calendarRows(review.cleaning.days, en);
  const bars = dueRows(review, en);
  const clock = clockRows(review, 'fleet', 'failed_days', en);
  const contrast = contrastRows(review.comparisons.slice(0, 4), context);
  const forest = forestRows(review.comparisons, en);
  const history = historyRows(context, 'A1');
  const histogram = histogramRows(review, 'A1', en);
  const ranking = rankingRows(review, en);
  return [
    {
      name: 'cleaning-calendar',
      rows: calendar,
      spec: cleaningCalendarChart(calendar, {
        dayTitle: 'Operating day of March 2026',
        days: Array.from({ length: 31 }, (_, index) => index + 1),
        labelWidth: 40,
      }),
    },
    { name: 'due-bars', rows: bars, spec: dueBarsChart(bars, { shareTitle: 'Share of tasks due' }) },
    {
      name: 'monthly',
      rows: fleet,
      spec: monthlyChart(fleet, {
        ...shared,
        words: { centre: 'mean', upper: 'upper limit', lower: 'lower limit' },
      }),
    },
    {
      name: 'monthly-by-unit',
      rows: ofUnits,
      spec: monthlyByUnitChart(ofUnits, { ...shared, labelledMonths: sparse, columns: 3 }),
    },
    { name: 'monthly-counts', rows: fleet, spec: monthlyCountsChart(fleet, counts) },
    {
      name: 'monthly-counts-by-unit',
      rows: ofUnits,
      spec: monthlyCountsByUnitChart(ofUnits, { ...counts, labelledMonths: sparse, columns: 3 }),
    },
    {
      name: 'by-clock',
      rows: clock,
      spec: byClockChart(clock, {
        valueTitle: 'Failed day results per 100 test days',
        clockTitle: 'Calendar days since the last counted chamber cleaning',
        scale: { max: 12 },
      }),
    },
    {
      name: 'forest',
      rows: forest,
      spec: forestChart(
        forest.map((row, index) => ({ ...row, label: `${index + 1} ${row.label}` })),
        {
          ratioTitle: 'Odds ratio (log scale)',
          fewer: 'fewer',
          more: 'more',
          heads: { exposed: 'with', unexposed: 'without', ratio: 'ratio (interval)', verdict: 'verdict' },
          labelWidth: 90,
        },
      ),
    },
    {
      name: 'contrast',
      rows: contrast,
      spec: contrastChart(contrast, { valueTitle: 'Failed day results per 100 test days' }),
    },
    {
      name: 'history',
      rows: history,
      spec: historyChart(history, {
        timeTitle: 'Operating day',
        from: '2025-01-01',
        to: '2026-03-31',
        monthFrom: '2026-03-01',
        contradictedLetter: 'C',
        lanes: LANES.map((lane) => en.charts.lane[lane] ?? lane),
        months: [
          { date: '2025-01-01', label: ['Jan', '2025'] },
          { date: '2025-07-01', label: ['Jul'] },
          { date: '2026-01-01', label: ['Jan', '2026'] },
        ],
      }),
    },
    {
      name: 'clock-histogram',
      rows: histogram,
      spec: clockHistogramChart(histogram, { clockTitle: 'Days since cleaning', daysTitle: 'Test days' }),
    },
    {
      name: 'ranking',
      rows: ranking,
      spec: rankingChart(ranking, {
        valueTitle: 'Failed day results per 100 test days',
        scale: { max: 4 },
        labelWidth: 40,
      }),
    },
    { name: 'drift', rows: driftExample, spec: driftSpec(driftExample) },
    { name: 'drift-weeks', rows: driftOfWeeks, spec: driftSpec(driftOfWeeks) },
    ...intervalExamples(),
  ];
}

/** Forty days, level and then rising. */
const driftExample = Array.from({ length: 40 }, (_, index): DriftPoint & { tip: string } => {
  const value = 100 + ((index * 7) % 5) - 2 + Math.max(0, index - 25);
  const day = 20_000 + index;
  return { day, date: formatDay(day), value, values: 1, low: value, high: value, tip: `day ${index}` };
});
/** The same with the first of them as weeks. */
const driftOfWeeks = driftExample.map((row, index) =>
  index < 12 ? { ...row, values: 7, low: row.value - 3, high: row.value + 4 } : row,
);

const driftSpec = (rows: typeof driftExample) =>
  driftChart(rows, 'U1', {
    timeTitle: 'Operating day',
    from: 20_000,
    to: 20_039,
    monthFrom: 20_030,
    months: [{ day: 20_000, label: ['Oct', '2024'] }],
    bands: [{ from: 20_000, to: 20_039, low: 97, high: 103 }],
    limit: { value: 118, name: 'alarm time' },
    movement: { from: 20_025, to: 20_039, from_value: 100, to_value: 114 },
    events: [
      { day: 20_005, kind: 'cleaning', told: toldText({ unit: 'U1', tip: 'cleaning' }) },
      { day: 20_012, kind: 'failure', told: toldText({ unit: 'U1', tip: 'failure' }) },
      { day: 20_020, kind: 'service', told: toldText({ unit: 'U1', tip: 'service' }) },
    ],
  });
