import { formatDay, parseDay } from '../site/day.ts';
import type { ActionDone } from './actions/actions-done.ts';
import { movements, steps } from './attention-drift.ts';
import { byNeed } from './attention-order.ts';
import type { Drift } from './drift/drift-schema.ts';
import type { TaskAhead } from './next-month/next-month-schema.ts';
import type { Period } from './period.ts';
import type { AttentionCode, AttentionReason, Comparison, Review } from './review-schema.ts';
import type { UnitCourse } from './shares/unit-course.ts';

type Unit = Omit<Review['units'][number], 'attention'>;

/** What the reasons of one unit are found from; rows of other units may stand among its own. */
export interface AttentionInput {
  unit: Unit;
  history: UnitCourse;
  comparisons: readonly Comparison[];
  /** Due tasks of the month. */
  cleaning: Review['cleaning']['month'];
  /** Tasks of the unit that are outstanding at the end of the month. */
  outstanding: readonly TaskAhead[];
  withoutPass: Review['cycles_without_pass'];
  incompleteReturns: Review['incomplete_returns'];
  requalifications: Review['requalifications'];
  contradicted: Review['contradicted_records'];
  drift: Pick<Drift, 'units' | 'probes' | 'heat_up_passes'>;
  aborts: Review['charts']['aborts'];
  /** Actions of the unit that were done by the end of the month, in order. */
  done: readonly ActionDone[];
  period: Period;
}

/** Share of a leak limit from which a leak rate is near it (common practice, no source). */
const NEAR_LEAK_LIMIT = 0.8;
/** Share of missed strainer cleanings in a month from which it is worth a word (our choice). */
const STRAINERS_MISSED_SHARE = 0.1;

/**
 * Why a unit needs attention, most pressing first. A comparison that is *suggested* is none by itself: where nothing is going on most reviews have one, so it is told among the
 * comparisons alone. Nothing here releases or holds back a load: it points to records for those who decide.
 */
export function attentionReasons(input: AttentionInput): AttentionReason[] {
  return [
    ...failures(input),
    ...returns(input),
    ...evidence(input),
    ...cleaning(input),
    ...outstanding(input),
    ...leak(input),
    ...stops(input),
    ...drifting(input),
    ...rates(input),
  ].sort(byNeed);
}

const reason = (
  code: AttentionCode,
  level: AttentionReason['level'],
  numbers: AttentionReason['numbers'],
  comparison: string | null = null,
): AttentionReason => ({ code, level, numbers, comparison });

/** Cycles of the unit's lists of one kind. */
const cyclesOf = (
  { unit, withoutPass }: AttentionInput,
  why: Review['cycles_without_pass'][number]['why'],
): Review['cycles_without_pass'][number]['cycles'] =>
  withoutPass.flatMap((list) => (list.unit === unit.unit && list.why === why ? list.cycles : []));

function* failures(input: AttentionInput): Generator<AttentionReason> {
  const { unit, history, withoutPass } = input;
  const ran = cyclesOf(input, 'after_failure');
  if (ran.length > 0) {
    const certain = ran.filter((cycle) => cycle.certain).length;
    const lists = withoutPass.filter((list) => list.unit === unit.unit && list.why === 'after_failure');
    yield reason(
      certain > 0 ? 'ran_after_failure' : 'ran_after_failure_perhaps',
      certain > 0 ? 'act' : 'decide',
      {
        cycles: ran.length,
        certain,
        failures: lists.length,
        first: ran[0]!.started,
        last: ran.at(-1)!.started,
        ended: lists.at(-1)!.ended,
      },
    );
  }
  const open = history.episodes.find((episode) => episode.to === null);
  if (open)
    yield reason('episode_open', 'act', { since: formatDay(open.from), failed_days: open.failed_days });
  const month = unit.tests.find((tests) => tests.span === 'month')!;
  if (month.failures > 0)
    yield reason('failed_test', 'decide', {
      failures: month.failures,
      day_results: month.day_results,
      episodes: month.episodes,
    });
  if (month.missing > 0)
    yield reason('test_missing', 'decide', {
      missing: month.missing,
      production_days: month.production_days,
      cycles: cyclesOf(input, 'no_test').length,
    });
  if (month.late > 0)
    yield reason('test_late', 'decide', {
      late: month.late,
      production_days: month.production_days,
      cycles: cyclesOf(input, 'before_late_test').length,
    });
}

function* returns({ unit, incompleteReturns, requalifications }: AttentionInput): Generator<AttentionReason> {
  const after = incompleteReturns.filter((row) => row.unit === unit.unit && row.in_month);
  if (after.length > 0)
    yield reason('return_incomplete', 'act', { cleanings: after.length, last: after.at(-1)!.cleaned });
  for (const row of requalifications) {
    if (row.unit !== unit.unit || !row.in_month || row.state !== 'incomplete') continue;
    yield reason('requalification_incomplete', 'act', {
      ended: row.ended,
      passes: row.passes_in_a_row,
      wanted: row.wanted,
    });
  }
}

function* evidence({ unit, comparisons }: AttentionInput): Generator<AttentionReason> {
  for (const comparison of comparisons) {
    if (comparison.unit !== unit.unit || comparison.verdict !== 'shown') continue;
    const { exposure, outcome, ratio, low, high, p, adjusted_p } = comparison;
    yield reason(
      'comparison_shown',
      'decide',
      { exposure, outcome, ratio, low, high, p, adjusted_p },
      comparison.id,
    );
  }
}

function* cleaning({ unit, cleaning, contradicted }: AttentionInput): Generator<AttentionReason> {
  if ((unit.chamber.days_past_due ?? 0) > 0) {
    yield reason('chamber_overdue_now', 'decide', {
      days_past_due: unit.chamber.days_past_due,
      clock_days: unit.chamber.clock_days,
      interval: unit.chamber.interval,
    });
  }
  const inMonth = contradicted.filter((row) => row.unit === unit.unit && row.in_month).length;
  if (inMonth > 0)
    yield reason('records_contradicted', 'decide', {
      in_month: inMonth,
      records: unit.chamber.records,
      running: unit.chamber.running,
      hot: unit.chamber.hot,
    });
  const strainer = cleaning.find((row) => row.unit === unit.unit && row.task === 'drain_strainer');
  if (strainer && strainer.missed / strainer.due >= STRAINERS_MISSED_SHARE) {
    yield reason('strainers_missed', 'look', { missed: strainer.missed, due: strainer.due });
  }
}

/**
 * Tasks other than the daily ones that fell due and are not on record as done. The chamber has its own reason where its days past due are known; a task that the site's rule takes as done is
 * none.
 */
function* outstanding({ unit, history, outstanding, period }: AttentionInput): Generator<AttentionReason> {
  for (const { unit: of, task, due, last_done } of outstanding) {
    if (of !== unit.unit || (task === 'chamber' && unit.chamber.days_past_due !== null)) continue;
    const last = history.due.findLast((row) => row.task === task);
    if (last?.state === 'done' || last?.state === 'done_late') continue;
    yield reason('task_outstanding', 'look', {
      task,
      due,
      last_done,
      days_past_due: period.until - parseDay(due)!,
    });
  }
}

function* leak({ unit }: AttentionInput): Generator<AttentionReason> {
  const { last, limit, last_at, tests_in_month } = unit.leak;
  if (last === null || tests_in_month === 0) return;
  if (last > limit) yield reason('leak_over_limit', 'act', { last, limit, at: last_at });
  else if (last >= NEAR_LEAK_LIMIT * limit)
    yield reason('leak_near_limit', 'look', { last, limit, at: last_at });
}

function* stops({ unit }: AttentionInput): Generator<AttentionReason> {
  const month = unit.cycles.find((cycles) => cycles.span === 'month')!;
  if (month.early_stops > 0) yield reason('early_stops', 'look', { early_stops: month.early_stops });
}

function* drifting({ unit, drift, done, period }: AttentionInput): Generator<AttentionReason> {
  yield* movements(
    unit.unit,
    drift,
    done.filter((action) => action.unit === unit.unit),
  );
  yield* steps(unit.unit, drift, period);
  const passes = drift.heat_up_passes.filter(
    (pass) => pass.unit === unit.unit && pass.date >= formatDay(period.from),
  ).length;
  if (passes > 0) yield reason('heat_up_out_of_range', 'look', { passes });
}

function* rates({ unit, aborts, period }: AttentionInput): Generator<AttentionReason> {
  const point = aborts.find((of) => of.scope === unit.unit && of.month === period.month);
  if (point?.signals.some((signal) => signal.endsWith('high'))) {
    yield reason('abort_rate_signal', 'look', { events: point.events, of: point.of });
  }
}
