import {
  type EntryHabits,
  recordQualitySchema,
} from '../../findings/record-quality/record-quality-schema.ts';
import { type UnitDay, unitDaySchema } from '../../transform/panel/unit-day.ts';
import type { ReportContext } from '../page-context.ts';
import { CALENDAR_COLUMNS, calendarRows } from '../rows/calendar-rows.ts';
import { CLOCK_COLUMNS, clockRows } from '../rows/clock-rows.ts';
import { DRIFT_COLUMNS, driftRows } from '../rows/drift-rows.ts';
import { DUE_COLUMNS, dueRows } from '../rows/due-rows.ts';
import { FOREST_COLUMNS, forestRows } from '../rows/forest-rows.ts';
import { HISTORY_COLUMNS, historyRows } from '../rows/history-rows.ts';
import { MONTHLY_COLUMNS, monthlyRows } from '../rows/monthly-rows.ts';
import { RANKING_COLUMNS, rankingRows } from '../rows/ranking-rows.ts';
import { type Table, tableOf, tableOfParts } from './table.ts';

const DUE_BY_UNIT_COLUMNS = [
  'unit',
  'task',
  'due',
  'done',
  'done_late',
  'missed',
  'not_recorded',
  'contradicted',
  'open',
] as const;

const STRATA_COLUMNS = [
  'exposure',
  'outcome',
  'unit',
  'era',
  'stratum',
  'first_date',
  'last_date',
  'exposed_days',
  'exposed_trials',
  'exposed_events',
  'unexposed_days',
  'unexposed_trials',
  'unexposed_events',
] as const;

const CLOCK_DIFFERENCE_COLUMNS = [
  'source',
  'kind',
  'unit',
  'matched',
  'unmatched',
  'median_minutes',
  'low_minutes',
  'high_minutes',
  'before_end',
  'verdict',
  'suggested_offset_minutes',
] as const;

const CLEANING_CLOCK_COLUMNS = [
  'source',
  'site',
  'records',
  'left_out',
  'fit',
  'fit_with_offset',
  'p',
  'low_minutes',
  'high_minutes',
  'verdict',
  'suggested_offset_minutes',
] as const;

const ENTRY_COLUMNS = Object.keys(recordQualitySchema.shape.entry.element.shape) as (keyof EntryHabits &
  string)[];

const COUNTER_COLUMNS = [
  'unit',
  'numbered',
  'unnumbered',
  'missing_numbers',
  'repeated_numbers',
  'jumps_and_resets',
] as const;

const EVENT_COLUMNS = ['unit', 'date', 'to', 'what', 'detail', 'time', 'file', 'sheet', 'row'] as const;

/** The panel itself: with it the shift test of a comparison can be made again. */
const UNIT_DAY_COLUMNS = Object.keys(unitDaySchema.shape) as (keyof UnitDay & string)[];

/** One table for each kind of chart; charts of single units draw their rows of it. */
export function chartTables(context: ReportContext): Table[] {
  const { review, words } = context;
  const scopes = [...new Set(review.by_clock.map((row) => row.scope))];
  return [
    tableOf('cleaning-due', DUE_COLUMNS, dueRows(review, words)),
    tableOf('cleaning-due-by-unit', DUE_BY_UNIT_COLUMNS, review.cleaning.month),
    tableOf('cleaning-calendar', CALENDAR_COLUMNS, calendarRows(review.cleaning.days, words)),
    tableOf('failed-days-by-month', MONTHLY_COLUMNS, monthlyRows(review.charts.failed_days, review, words)),
    tableOf('aborts-by-month', MONTHLY_COLUMNS, monthlyRows(review.charts.aborts, review, words)),
    tableOf(
      'failed-days-by-clock',
      CLOCK_COLUMNS,
      scopes.flatMap((scope) => clockRows(review, scope, 'failed_days', words)),
    ),
    tableOf(
      'aborts-by-clock',
      CLOCK_COLUMNS,
      scopes.flatMap((scope) => clockRows(review, scope, 'aborts', words)),
    ),
    tableOf('ranking', RANKING_COLUMNS, rankingRows(review, words)),
    tableOfParts('drift', DRIFT_COLUMNS, review.drift.probes, (probe) => driftRows([probe])),
    tableOf('unit-days', UNIT_DAY_COLUMNS, context.panel),
    tableOf('strata', STRATA_COLUMNS, review.strata),
    tableOf('comparisons', FOREST_COLUMNS, forestRows(review.comparisons, words)),
    tableOfParts('unit-history', HISTORY_COLUMNS, review.units, ({ unit }) => historyRows(context, unit)),
    tableOf(
      'unit-events',
      EVENT_COLUMNS,
      review.units.flatMap(({ unit, events }) => events.map((event) => ({ unit, ...event }))),
    ),
    tableOf('record-clocks', CLOCK_DIFFERENCE_COLUMNS, review.record_quality.clock_differences),
    tableOf('record-cleaning-clocks', CLEANING_CLOCK_COLUMNS, review.record_quality.cleaning_clocks),
    tableOf('record-entry', ENTRY_COLUMNS, review.record_quality.entry),
    tableOf(
      'record-counters',
      COUNTER_COLUMNS,
      review.record_quality.counters.map((row) => ({ ...row, jumps_and_resets: row.events.length })),
    ),
  ];
}
