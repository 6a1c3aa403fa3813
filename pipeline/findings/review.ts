import type { Reading } from '../ingest/reading.ts';
import { formatDay } from '../site/day.ts';
import type { Site } from '../site/site.ts';
import { formatWall } from '../site/wall-clock.ts';
import { groupBy } from '../transform/group-by.ts';
import type { Transformed } from '../transform/transform.ts';
import type { UnitHistory } from '../transform/unit-history.ts';
import { actionsOfMonth } from './actions/actions-of-month.ts';
import { attentionOrder, attentionReasons } from './attention.ts';
import { changesSince } from './changes/changes.ts';
import { type PreviousFile, readPrevious } from './changes/previous-review.ts';
import { comparisonFamily } from './comparisons/comparison-family.ts';
import { doses } from './comparisons/dose.ts';
import { jointModels } from './comparisons/joint-model.ts';
import { mostlyReactiveUnits } from './comparisons/mostly-reactive.ts';
import { strataTable } from './comparisons/strata-table.ts';
import { driftWatch } from './drift/drift-watch.ts';
import { DRIFT_OPERATING_CHARACTERISTICS } from './drift/operating-characteristics.ts';
import { problemsByCode, readingTotals } from './lists/reading-account.ts';
import {
  contradictedRecords,
  earlyStops,
  incompleteReturns,
  lookBackLists,
  requalificationList,
  testTimingList,
  unclassifiedTexts,
} from './lists/record-lists.ts';
import { settingsInForce } from './lists/settings.ts';
import { unitEvents } from './lists/unit-events.ts';
import { nextMonth } from './next-month/next-month.ts';
import { OPERATING_CHARACTERISTICS } from './operating-characteristics.ts';
import type { Period } from './period.ts';
import { recordQuality } from './record-quality/record-quality.ts';
import { recordsUntil } from './record-quality/records-until.ts';
import { REVIEW_FORMAT, type Review } from './review-schema.ts';
import { byClock } from './summaries/by-clock.ts';
import { chamberSummary } from './summaries/chamber.ts';
import { cleaningDays, dueCounts } from './summaries/cleaning-done.ts';
import { cycleCounts } from './summaries/cycle-counts.ts';
import { leakSummary } from './summaries/leak.ts';
import { abortsChart, failedDaysChart } from './summaries/monthly-charts.ts';
import { ranking } from './summaries/ranking.ts';
import { testCounts } from './summaries/test-counts.ts';

/** What a review is made from. */
export interface ReviewInput {
  site: Site;
  reading: Reading;
  transformed: Transformed;
  period: Period;
  version: string;
  /** The review before, if there is one; `lookedFor` names it where it was not found. */
  previous?: { lookedFor: string; given?: PreviousFile | undefined };
}

/** Makes the review of a month: the user's questions put to the panel. Pure. */
export function makeReview({ site, reading, transformed, period, version, previous }: ReviewInput): Review {
  const { histories, panel, joins } = transformed;
  const { from, until } = period;
  const { rules } = site;
  const level = rules.comparison.level;
  const rowsOf = groupBy(panel, (row) => row.unit);
  const recordFrom = panel.reduce((first, row) => Math.min(first, row.day), Number.POSITIVE_INFINITY);
  const recordTo = panel.reduce((last, row) => Math.max(last, row.day), Number.NEGATIVE_INFINITY);

  const reactive = mostlyReactiveUnits(histories, rules, 'site');
  const { comparisons, size } = comparisonFamily(panel, histories, rules);
  const cleaning = {
    month: dueCounts(histories, from, until),
    record: dueCounts(histories, Number.NEGATIVE_INFINITY, until),
    days: cleaningDays(histories, from, until),
  };
  const contradicted = contradictedRecords(histories, from, until);
  const returns = incompleteReturns(histories, from, until);
  const requalified = requalificationList(histories, from, rules);

  const drift = driftWatch(histories, site, until);
  const failedDays = [...failedDaysChart(panel, 'fleet', level), ...each(rowsOf, level, failedDaysChart)];
  const aborts = [...abortsChart(panel, 'fleet', level), ...each(rowsOf, level, abortsChart)];

  const units = histories.map((history) => {
    const rows = rowsOf.get(history.unit) ?? [];
    const declared = site.declared.units?.find((unit) => unit.id === history.unit);
    const unit = {
      unit: history.unit,
      site: history.site,
      name: declared?.name ?? '',
      liquids: declared?.liquids ?? false,
      first_day: rows[0]?.date ?? null,
      last_day: rows.at(-1)?.date ?? null,
      days_of_use: rows.length,
      days_of_use_in_month: rows.filter((row) => row.day >= from).length,
      eras: erasOf(history),
      events: unitEvents(history, rules.contradicted_counts_as_done),
      tests: [
        testCounts(history, rows, 'month', from, until, level),
        testCounts(history, rows, 'record', Number.NEGATIVE_INFINITY, until, level),
      ],
      cycles: [
        cycleCounts(history, 'month', from, until, level),
        cycleCounts(history, 'record', Number.NEGATIVE_INFINITY, until, level),
      ],
      chamber: chamberSummary(site, history, until),
      leak: leakSummary(history, from, rules),
    };
    const attention = attentionReasons({
      unit,
      history,
      comparisons,
      cleaning,
      incompleteReturns: returns,
      requalifications: requalified,
      contradicted,
      drift,
      aborts,
      period,
    });
    return { ...unit, attention };
  });

  const settings = settingsInForce(
    site,
    histories.map((history) => history.unit),
  );
  const order = attentionOrder(units);
  const upToNow = recordsUntil(site, reading.records, until);
  const before = readPrevious(previous?.given, previous?.lookedFor ?? null, period.month, REVIEW_FORMAT);

  return {
    format: REVIEW_FORMAT,
    version,
    organisation: site.organisation,
    period: {
      month: period.month,
      from: formatDay(from),
      to: formatDay(until - 1),
      record_from: panel.length > 0 ? formatDay(recordFrom) : null,
      record_to: panel.length > 0 ? formatDay(recordTo) : null,
      newest_event: newestEvent(histories),
      later_records: laterRecords(reading, histories),
    },
    sites: site.declared.sites.map(({ id, name, zone, day_starts }) => ({
      id,
      name: name ?? id,
      zone,
      day_starts,
    })),
    files: reading.files,
    totals: readingTotals(reading),
    problems_by_code: problemsByCode(reading),
    unclassified_abort_texts: unclassifiedTexts(histories),
    joins,
    units,
    attention_order: order,
    cleaning,
    comparisons,
    strata: strataTable(panel),
    doses: doses(panel, reactive),
    joint_models: jointModels(panel, rules.comparison, reactive),
    family_size: size,
    charts: {
      failed_days: failedDays,
      aborts,
    },
    ranking: ranking(panel, level),
    drift,
    by_clock: [
      ...byClock(panel, 'fleet', level),
      ...[...rowsOf].flatMap(([unit, rows]) => byClock(rows, unit, level)),
    ],
    contradicted_records: contradicted,
    incomplete_returns: returns,
    test_timing: testTimingList(histories, panel, from),
    look_backs: lookBackLists(histories, from, until),
    requalifications: requalified,
    early_stops: earlyStops(histories, from, until),
    record_quality: recordQuality(site, upToNow, histories),
    changes: changesSince(before.previous, before.review, { units, comparisons, drift, cleaning, settings }),
    actions: actionsOfMonth(site, reading.records.actions, period),
    next_month: nextMonth(site, histories, units, order, upToNow, reading.files, period),
    operating_characteristics: OPERATING_CHARACTERISTICS,
    drift_operating_characteristics: DRIFT_OPERATING_CHARACTERISTICS,
    settings,
  };
}

function each<Row, Point>(
  rowsOf: Map<string, Row[]>,
  level: number,
  chart: (rows: Row[], scope: string, level: number) => Point[],
): Point[] {
  return [...rowsOf].flatMap(([unit, rows]) => chart(rows, unit, level));
}

function erasOf(history: UnitHistory): Review['units'][number]['eras'] {
  const first = history.use_days[0]?.day;
  const last = history.use_days.at(-1)?.day;
  if (first === undefined || last === undefined) return [];
  return history.eras
    .filter((era) => era.to >= first && era.from <= last)
    .map((era) => ({
      from: formatDay(Math.max(era.from, first)),
      to: formatDay(Math.min(era.to, last)),
      opened_by: era.opened_by,
    }));
}

function newestEvent(histories: readonly UnitHistory[]): string | null {
  let newest: { at: number; text: string } | null = null;
  for (const { cycles, tests, clock } of histories) {
    const at = Math.max(
      cycles.at(-1)?.start ?? Number.NEGATIVE_INFINITY,
      tests.at(-1)?.time ?? Number.NEGATIVE_INFINITY,
    );
    if (Number.isFinite(at) && (newest === null || at > newest.at))
      newest = { at, text: formatWall(clock.wallOf(at)) };
  }
  return newest?.text ?? null;
}

/** Records of the reading that the histories leave out because they lie after the period (water and inspections are not counted). */
function laterRecords({ records }: Reading, histories: readonly UnitHistory[]): number {
  const read =
    records.cycles.length +
    records.air_removal_tests.length +
    records.leak_tests.length +
    records.cleanings.length +
    records.service.length;
  const used = histories.reduce(
    (sum, of) =>
      sum +
      of.cycles.length +
      of.tests.length +
      of.leak_tests.length +
      of.cleanings.length +
      of.service.length,
    0,
  );
  return read - used;
}
