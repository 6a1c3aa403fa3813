import { type ComparisonFamily, comparisonFamily } from '../findings/comparisons/comparison-family.ts';
import { type Measurement, measure } from '../findings/comparisons/measure.ts';
import { countedUnit } from '../findings/comparisons/mostly-reactive.ts';
import { type CountedOutcome, stratifyBy } from '../findings/comparisons/strata.ts';
import type { Drift } from '../findings/drift/drift-schema.ts';
import { driftWatch } from '../findings/drift/drift-watch.ts';
import { intervalCase } from '../findings/interval/interval-case.ts';
import type { IntervalCase } from '../findings/interval/interval-schema.ts';
import { countedSince, reviewPeriod, spanOfRecords } from '../findings/period.ts';
import { makeReview } from '../findings/review.ts';
import type { Review } from '../findings/review-schema.ts';
import type { Reading } from '../ingest/reading.ts';
import type { Site } from '../site/site.ts';
import type { UnitDay } from '../transform/panel/unit-day.ts';
import { type Transformed, transform } from '../transform/transform.ts';
import { UserError } from '../user-error.ts';
import { VERSION } from '../version.ts';

/** Records joined: the unit-day panel and the units' histories, to which every question is put. */
export interface Panel extends Transformed {
  site: Site;
  reading: Reading;
}

/**
 * Joins records to the unit-day panel (`panel`: one row a unit and day of use).
 *
 * @param options `month`: up to the end of this month, such as `2026-03`; left out: up to the last day of the records. Lone records (problems `lone_record`) move neither and stay out
 * @throws UserError `no_records` where there is no cycle and no test, `month` where the month is none or has none
 * @example const joined = panel(site, reading, { month: '2026-09' });
 */
export function panel(site: Site, reading: Reading, options: { month?: string } = {}): Panel {
  const span = spanOfRecords(site, reading.records);
  if (!span)
    throw new UserError('no_records', 'There must be at least one cycle or air-removal test, found none');
  const { until, since } =
    options.month === undefined
      ? { until: span.last + 1, ...countedSince(span) }
      : reviewPeriod(options.month, span);
  return { site, reading, ...transform(site, reading.records, until, since) };
}

/**
 * All comparisons: each unit and the fleet, each exposure, each outcome, with counts, ratio, interval, p, adjusted p and verdict.
 *
 * @example const { comparisons } = compare(joined);
 */
export function compare({ panel, histories, site }: Panel): ComparisonFamily {
  return comparisonFamily(panel, histories.map(countedUnit), site.rules);
}

/**
 * Measures an exposure of your own in the same way as those of the review. It gives no verdict: a question that is thought of after a look at the data
 * is not one of the family over which p was adjusted.
 *
 * @param exposure of a row of the panel: 1 exposed, 0 not, null not known
 * @param options `rows`: rows of the panel to use, in order of unit and day; left out: all. `scope`: `unit` (exact) or `fleet`
 * @example const trained = compareBy(joined, (row) => (row.date >= '2026-02-01' ? 1 : 0), 'failed_test');
 */
export function compareBy(
  { panel, site }: Panel,
  exposure: (row: UnitDay) => 0 | 1 | null,
  outcome: CountedOutcome,
  options: { rows?: readonly UnitDay[]; scope?: 'unit' | 'fleet' } = {},
): Measurement {
  const { rows = panel, scope = 'fleet' } = options;
  return measure(stratifyBy(rows, exposure, outcome), outcome, scope, site.rules.comparison);
}

/**
 * Watches the empty daily cycles: what is steady, moving, near its limit or stepped on the last day of the panel.
 *
 * @example const moving = watch(joined).probes.filter((probe) => probe.state === 'moving');
 */
export function watch({ histories, site, until }: Panel): Drift {
  return driftWatch(histories, site, until);
}

/**
 * The case for a cleaning interval, up to the last day of the panel.
 *
 * @example const { answer } = interval(joined);
 */
export function interval({ histories, panel, site, reading, until }: Panel): IntervalCase {
  return intervalCase(histories, panel, site, reading.records, until);
}

/**
 * The review of a month as data, the same that the command writes to `review.json`.
 *
 * @param month such as `2026-09`; left out: the last whole month in the records
 * @throws UserError `month` where the month is none or the records have none of its days
 * @example const { attention_order } = review(site, reading, '2026-09');
 */
export function review(site: Site, reading: Reading, month?: string): Review {
  const period = reviewPeriod(month, spanOfRecords(site, reading.records));
  const transformed = transform(site, reading.records, period.until, period.since);
  return makeReview({ site, reading, transformed, period, version: VERSION });
}
