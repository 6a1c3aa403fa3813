import { formatDay } from '../site/day.ts';
import type { Drift } from './drift/drift-schema.ts';
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
  incompleteReturns: Review['incomplete_returns'];
  requalifications: Review['requalifications'];
  contradicted: Review['contradicted_records'];
  drift: Pick<Drift, 'units' | 'probes' | 'heat_up_passes'>;
  aborts: Review['charts']['aborts'];
  period: Period;
}

/** Share of a leak limit from which a leak rate is near it (common practice, no source). */
const NEAR_LEAK_LIMIT = 0.8;
/** Share of missed strainer cleanings in a month from which it is worth a word (our choice). */
const STRAINERS_MISSED_SHARE = 0.1;
const LEVEL_ORDER = { act: 0, decide: 1, look: 2 } as const;

/** Why a unit needs attention, most pressing first. Nothing here releases or holds back a load: it points to records for those who decide. */
export function attentionReasons(input: AttentionInput): AttentionReason[] {
  const all = [
    ...failures(input),
    ...returns(input),
    ...evidence(input),
    ...cleaning(input),
    ...leak(input),
    ...stops(input),
    ...drifting(input),
    ...rates(input),
  ];
  return all.toSorted((a, b) => LEVEL_ORDER[a.level] - LEVEL_ORDER[b.level]);
}

/** Units with a reason, those to act on first, then by how many reasons of each level, then in the order of the units. */
export function attentionOrder(
  units: readonly { unit: string; attention: readonly AttentionReason[] }[],
): string[] {
  const count = (unit: { attention: readonly AttentionReason[] }, level: string) =>
    unit.attention.filter((reason) => reason.level === level).length;
  return units
    .filter((unit) => unit.attention.length > 0)
    .toSorted(
      (a, b) =>
        count(b, 'act') - count(a, 'act') ||
        count(b, 'decide') - count(a, 'decide') ||
        count(b, 'look') - count(a, 'look'),
    )
    .map((unit) => unit.unit);
}

const reason = (
  code: AttentionCode,
  level: AttentionReason['level'],
  numbers: AttentionReason['numbers'],
  comparison: string | null = null,
): AttentionReason => ({ code, level, numbers, comparison });

function* failures({ unit, history }: AttentionInput): Generator<AttentionReason> {
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
    });
  if (month.late > 0)
    yield reason('test_late', 'look', { late: month.late, production_days: month.production_days });
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
    if (comparison.unit !== unit.unit) continue;
    if (comparison.verdict !== 'shown' && comparison.verdict !== 'suggested') continue;
    const shown = comparison.verdict === 'shown';
    yield reason(
      shown ? 'comparison_shown' : 'comparison_suggested',
      shown ? 'decide' : 'look',
      {
        exposure: comparison.exposure,
        outcome: comparison.outcome,
        ratio: comparison.ratio,
        low: comparison.low,
        high: comparison.high,
        p: comparison.p,
        adjusted_p: comparison.adjusted_p,
      },
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

/** Probes that move in the era in force. A saw-tooth that cleaning sets back is no reason for a repair, but one for cleaning: it is named as such. */
function* drifting({ unit, drift, period }: AttentionInput): Generator<AttentionReason> {
  const codes = { near_limit: 'drift_near_limit', moving: 'drift_moving', stepped: 'drift_stepped' } as const;
  const levels = { near_limit: 'decide', moving: 'decide', stepped: 'look' } as const;
  const cause = drift.units.find((of) => of.unit === unit.unit)?.cause?.fits_best.join(' or ') ?? null;
  for (const probe of drift.probes) {
    const { state, since } = probe;
    if (probe.unit !== unit.unit || !probe.era.current) continue;
    if (state !== 'near_limit' && state !== 'moving' && state !== 'stepped') continue;
    if (state === 'stepped' && (since === null || since < formatDay(period.from))) continue;
    yield reason(codes[state], levels[state], {
      probe: probe.probe,
      measure: probe.measure,
      direction: probe.direction,
      since,
      rate: probe.rate_per_week?.value ?? null,
      rate_low: probe.rate_per_week?.low ?? null,
      rate_high: probe.rate_per_week?.high ?? null,
      days: probe.days_to_limit?.days ?? null,
      days_low: probe.days_to_limit?.low ?? null,
      days_high: probe.days_to_limit?.high ?? null,
      before: probe.step?.before ?? null,
      after: probe.step?.after ?? null,
      falls_back_at: probe.saw_tooth?.falls_back_at ?? null,
      cause,
    });
  }
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
