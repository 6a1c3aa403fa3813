import { actionsSchema } from '../../findings/actions/actions-schema.ts';
import { changesSchema } from '../../findings/changes/changes-schema.ts';
import { nextMonthSchema } from '../../findings/next-month/next-month-schema.ts';
import { type Review, reviewSchema } from '../../findings/review-schema.ts';
import type { ReportContext } from '../page-context.ts';
import { NEXT_STEP_COLUMNS, nextSteps } from '../pages/meeting/actions.ts';
import { AHEAD_COLUMNS } from '../rows/ahead-rows.ts';
import { type Table, tableOf } from './table.ts';

const { shape } = reviewSchema;

/** Names of the fields of a list's rows, in the order of its schema. */
const fields = <Row extends object>(element: { shape: Record<string, unknown> }, without: string[] = []) =>
  Object.keys(element.shape).filter((name) => !without.includes(name)) as (keyof Row & string)[];

type Row<K extends keyof Review> = Review[K] extends readonly (infer R extends object)[] ? R : never;

const UNIT_COLUMNS = [
  'unit',
  'site',
  'name',
  'liquids',
  'first_day',
  'last_day',
  'days_of_use',
  'days_of_use_in_month',
  'failed_days_in_month',
  'day_results_in_month',
  'production_in_month',
  'aborts_in_month',
  'chamber_interval',
  'chamber_clock_days',
  'chamber_days_past_due',
  'last_leak_kpa_min',
  'leak_limit_kpa_min',
  'reasons_act',
  'reasons_decide',
  'reasons_look',
] as const;

/** Lists of the review as tables: units, the meeting, single records, what was read, settings. */
export function listTables(context: ReportContext): Table[] {
  const { review } = context;
  const { changes, next_month } = review;
  const moved = changesSchema.shape;
  type Changes = Review['changes'];
  const clean = changes.cleaning.map(({ unit, task, before, now, moved: share }) => ({
    unit,
    task,
    due_before: before?.due ?? null,
    done_before: before?.done ?? null,
    missed_before: before?.missed ?? null,
    due_now: now?.due ?? null,
    done_now: now?.done ?? null,
    missed_now: now?.missed ?? null,
    share_missed: share,
  }));
  const cycles = review.look_backs.flatMap((list) =>
    list.cycles.map((cycle) => ({
      unit: list.unit,
      failed: list.failed,
      last_pass: list.last_pass,
      failed_by_date: list.failed_by_date,
      last_pass_by_date: list.last_pass_by_date,
      started: cycle.started,
      cycle_number: cycle.cycle_number,
      kind: cycle.kind,
      standing: cycle.standing,
      file: cycle.file,
      row: cycle.row,
    })),
  );
  const withoutPass = review.cycles_without_pass.flatMap(({ cycles, date: _, ...list }) =>
    cycles.map((cycle) => ({ ...list, ...cycle })),
  );
  return [
    tableOf('units', UNIT_COLUMNS, review.units.map(unitRow)),
    tableOf('next-steps', NEXT_STEP_COLUMNS, nextSteps(context)),
    tableOf(
      'action-list',
      fields<Review['actions']['list'][number]>(actionsSchema.shape.list.element),
      review.actions.list,
    ),
    tableOf('tasks-ahead', AHEAD_COLUMNS, next_month.tasks),
    tableOf('watch', ['unit', 'code'], next_month.watch),
    tableOf(
      'missing-data',
      fields<Review['next_month']['missing'][number]>(nextMonthSchema.shape.missing.element),
      next_month.missing,
    ),
    tableOf(
      'changes-verdicts',
      fields<Changes['verdicts'][number]>(moved.verdicts.element),
      changes.verdicts,
    ),
    tableOf('changes-drift', fields<Changes['drift'][number]>(moved.drift.element), changes.drift),
    tableOf(
      'changes-attention',
      fields<Changes['attention'][number]>(moved.attention.element),
      changes.attention,
    ),
    tableOf('changes-cleaning', CLEANING_CHANGE_COLUMNS, clean),
    tableOf(
      'changes-settings',
      fields<Changes['settings'][number]>(moved.settings.element),
      changes.settings,
    ),
    tableOf(
      'contradicted-records',
      fields<Row<'contradicted_records'>>(shape.contradicted_records.element),
      review.contradicted_records,
    ),
    tableOf(
      'incomplete-returns',
      fields<Row<'incomplete_returns'>>(shape.incomplete_returns.element),
      review.incomplete_returns,
    ),
    tableOf(
      'requalifications',
      fields<Row<'requalifications'>>(shape.requalifications.element, ['ended_at', 'day']),
      review.requalifications,
    ),
    tableOf('test-timing', fields<Row<'test_timing'>>(shape.test_timing.element), review.test_timing),
    tableOf('without-pass-cycles', WITHOUT_PASS_COLUMNS, withoutPass),
    tableOf('look-back-cycles', LOOK_BACK_COLUMNS, cycles),
    tableOf('early-stops', fields<Row<'early_stops'>>(shape.early_stops.element), review.early_stops),
    tableOf('abort-texts', ['text', 'count'], review.unclassified_abort_texts),
    tableOf('files', fields<Row<'files'>>(shape.files.element), review.files),
    tableOf(
      'problem-counts',
      fields<Row<'problems_by_code'>>(shape.problems_by_code.element, ['examples']),
      review.problems_by_code,
    ),
    tableOf('settings', fields<Row<'settings'>>(shape.settings.element), review.settings),
  ];
}

const CLEANING_CHANGE_COLUMNS = [
  'unit',
  'task',
  'due_before',
  'done_before',
  'missed_before',
  'due_now',
  'done_now',
  'missed_now',
  'share_missed',
] as const;

const WITHOUT_PASS_COLUMNS = [
  'unit',
  'why',
  'failed',
  'failed_by_date',
  'ended',
  'ended_by_date',
  'started',
  'date',
  'cycle_number',
  'kind',
  'standing',
  'certain',
  'file',
  'row',
] as const;

const LOOK_BACK_COLUMNS = [
  'unit',
  'failed',
  'last_pass',
  'failed_by_date',
  'last_pass_by_date',
  'started',
  'cycle_number',
  'kind',
  'standing',
  'file',
  'row',
] as const;

function unitRow(unit: Review['units'][number]) {
  const tests = unit.tests.find((of) => of.span === 'month')!;
  const cycles = unit.cycles.find((of) => of.span === 'month')!;
  const reasons = (level: string) => unit.attention.filter((reason) => reason.level === level).length;
  return {
    unit: unit.unit,
    site: unit.site,
    name: unit.name,
    liquids: unit.liquids,
    first_day: unit.first_day,
    last_day: unit.last_day,
    days_of_use: unit.days_of_use,
    days_of_use_in_month: unit.days_of_use_in_month,
    failed_days_in_month: tests.failed_days.events,
    day_results_in_month: tests.failed_days.of,
    production_in_month: cycles.production,
    aborts_in_month: cycles.aborts.events,
    chamber_interval: unit.chamber.interval,
    chamber_clock_days: unit.chamber.clock_days,
    chamber_days_past_due: unit.chamber.days_past_due,
    last_leak_kpa_min: unit.leak.last,
    leak_limit_kpa_min: unit.leak.limit,
    reasons_act: reasons('act'),
    reasons_decide: reasons('decide'),
    reasons_look: reasons('look'),
  };
}
