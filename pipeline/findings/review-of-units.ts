import type { Review } from './review-schema.ts';

/**
 * The review as the pages of some units need it: the lists that are longest hold the rows of these units, and those of all units together. What is said of each unit in one row stays
 * whole but for its events, since pages name and link the others.
 */
export function reviewOfUnits(review: Review, units: readonly string[]): Review {
  const wanted = new Set(units);
  const own = <Row extends { unit: string | null }>(rows: readonly Row[]): Row[] =>
    rows.filter(({ unit }) => unit === null || wanted.has(unit));
  const scoped = <Row extends { scope: string }>(rows: readonly Row[]): Row[] =>
    rows.filter(({ scope }) => scope === 'fleet' || wanted.has(scope));
  const { cleaning, charts, drift, record_quality, next_month } = review;
  const sites = new Set(review.units.filter(({ unit }) => wanted.has(unit)).map(({ site }) => site));
  return {
    ...review,
    units: review.units.map((unit) => (wanted.has(unit.unit) ? unit : { ...unit, events: [] })),
    cleaning: { ...cleaning, days: own(cleaning.days) },
    comparisons: own(review.comparisons),
    strata: own(review.strata),
    charts: { failed_days: scoped(charts.failed_days), aborts: scoped(charts.aborts) },
    by_clock: scoped(review.by_clock),
    drift: {
      ...drift,
      units: own(drift.units),
      probes: own(drift.probes),
      sites: drift.sites.filter(({ site }) => sites.has(site)),
      heat_up_passes: own(drift.heat_up_passes),
      leak_tests_after_cleaning: own(drift.leak_tests_after_cleaning),
    },
    contradicted_records: own(review.contradicted_records),
    incomplete_returns: own(review.incomplete_returns),
    test_timing: own(review.test_timing),
    look_backs: own(review.look_backs),
    requalifications: own(review.requalifications),
    early_stops: own(review.early_stops),
    record_quality: {
      ...record_quality,
      clock_differences: own(record_quality.clock_differences),
      counters: own(record_quality.counters),
    },
    next_month: { ...next_month, tasks: own(next_month.tasks) },
  };
}
