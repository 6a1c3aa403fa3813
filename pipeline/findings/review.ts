import { groupBy } from '../group-by.ts';
import type { Reading } from '../ingest/reading.ts';
import { formatDay } from '../site/day.ts';
import type { Site } from '../site/site.ts';
import type { Transformed } from '../transform/transform.ts';
import { actionsDone } from './actions/actions-done.ts';
import { actionsOfMonth } from './actions/actions-of-month.ts';
import { attentionReasons } from './attention.ts';
import { attentionOrder } from './attention-order.ts';
import { changesSince } from './changes/changes.ts';
import { type PreviousFile, readPrevious } from './changes/previous-review.ts';
import { DRIFT_OPERATING_CHARACTERISTICS } from './drift/operating-characteristics.ts';
import { problemsByCode, readingTotals } from './lists/reading-account.ts';
import { unclassifiedTexts } from './lists/record-lists.ts';
import { settingsInForce } from './lists/settings.ts';
import { missingData } from './next-month/missing-data.ts';
import { nextMonth } from './next-month/next-month.ts';
import { OPERATING_CHARACTERISTICS } from './operating-characteristics.ts';
import { type PanelFindings, panelFindings } from './panel-findings.ts';
import type { Period } from './period.ts';
import { recordQuality } from './record-quality/record-quality.ts';
import { REVIEW_FORMAT, type Review } from './review-schema.ts';
import { mergeShares } from './shares/merge-shares.ts';
import { type Share, shareOf } from './shares/share.ts';
import { cleaningDays, dueCounts } from './summaries/cleaning-done.ts';
import { abortsChart, failedDaysChart } from './summaries/monthly-charts.ts';
import { outstandingTasks } from './summaries/outstanding.ts';

/** What was read, but for the records that shares were made of. */
export interface ReadingOfReview extends Pick<Reading, 'files' | 'problems'> {
  records: Pick<Reading['records'], 'actions'>;
}

/** What a review is made from beside the records of its units. */
interface ReviewBasis {
  site: Site;
  reading: ReadingOfReview;
  period: Period;
  version: string;
  /** The review before, if there is one; `lookedFor` names it where it was not found. */
  previous?: { lookedFor: string; given?: PreviousFile | undefined };
}

/** What a review is made from. */
export interface ReviewInput extends ReviewBasis {
  reading: Reading;
  transformed: Transformed;
}

/** Makes the review of a month: the user's questions put to the panel. Pure. */
export function makeReview({ transformed, ...basis }: ReviewInput): Review {
  const { site, reading, period } = basis;
  return reviewOfShare(basis, mergeShares(site, [shareOf(site, reading.records, transformed, period)]));
}

/**
 * The same from the share of all units, that is shares put together.
 *
 * @param share see `mergeShares`
 * @param ofPanel what was found in its panel, where that was asked before
 */
export function reviewOfShare(
  { site, reading, period, version, previous }: ReviewBasis,
  share: Share,
  ofPanel: PanelFindings = panelFindings(share.panel, share.units, site),
): Review {
  const { units: courses, panel, drift, lists } = share;
  const { comparisons } = ofPanel;
  const { from, until } = period;
  const { rules } = site;
  const level = rules.comparison.level;
  const rowsOf = groupBy(panel, (row) => row.unit);
  const recordFrom = panel.reduce((first, row) => Math.min(first, row.day), Number.POSITIVE_INFINITY);
  const recordTo = panel.reduce((last, row) => Math.max(last, row.day), Number.NEGATIVE_INFINITY);

  const cleaning = {
    month: dueCounts(courses, from, until),
    record: dueCounts(courses, Number.NEGATIVE_INFINITY, until),
    days: cleaningDays(courses, from, until),
  };
  const failedDays = [...failedDaysChart(panel, 'fleet', level), ...each(rowsOf, level, failedDaysChart)];
  const aborts = [...abortsChart(panel, 'fleet', level), ...each(rowsOf, level, abortsChart)];
  // Each unit is given its own rows: of a thousand units each would look through those of all.
  const ofUnit = {
    comparisons: byUnit(comparisons),
    cleaning: byUnit(cleaning.month),
    outstanding: byUnit(outstandingTasks({ tasks: share.ahead.flatMap(({ tasks }) => tasks) })),
    withoutPass: byUnit(lists.cycles_without_pass),
    returns: byUnit(lists.incomplete_returns),
    requalifications: byUnit(lists.requalifications),
    contradicted: byUnit(lists.contradicted_records),
    drift: byUnit(drift.units),
    probes: byUnit(drift.probes),
    passes: byUnit(drift.heat_up_passes),
    aborts: groupBy(aborts, ({ scope }) => scope),
    done: byUnit(actionsDone(site, reading.records.actions, period)),
  };
  const units = share.summaries.map((unit, index) => {
    const own = <Row>(rows: ReadonlyMap<string | null, Row[]>): Row[] => rows.get(unit.unit) ?? [];
    const attention = attentionReasons({
      unit,
      history: courses[index]!,
      comparisons: own(ofUnit.comparisons),
      cleaning: own(ofUnit.cleaning),
      outstanding: own(ofUnit.outstanding),
      withoutPass: own(ofUnit.withoutPass),
      incompleteReturns: own(ofUnit.returns),
      requalifications: own(ofUnit.requalifications),
      contradicted: own(ofUnit.contradicted),
      drift: {
        units: own(ofUnit.drift),
        probes: own(ofUnit.probes),
        heat_up_passes: own(ofUnit.passes),
      },
      aborts: own(ofUnit.aborts),
      done: own(ofUnit.done),
      period,
    });
    return { ...unit, attention };
  });

  const settings = settingsInForce(
    site,
    courses.map(({ unit }) => unit),
  );
  const order = attentionOrder(units);
  const missing = missingData(site, share.missing, reading.files, period);
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
      newest_event: share.newest?.text ?? null,
      later_records: share.later_records,
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
    unclassified_abort_texts: unclassifiedTexts(share.unclassified),
    joins: share.joins,
    units,
    attention_order: order,
    cleaning,
    comparisons,
    strata: ofPanel.strata,
    doses: ofPanel.doses,
    joint_models: ofPanel.joint_models,
    family_size: ofPanel.family_size,
    charts: {
      failed_days: failedDays,
      aborts,
    },
    ranking: ofPanel.ranking,
    drift,
    by_clock: ofPanel.by_clock,
    ...lists,
    record_quality: recordQuality(share.quality),
    changes: changesSince(before.previous, before.review, { units, comparisons, drift, cleaning, settings }),
    actions: actionsOfMonth(site, reading.records.actions, period),
    next_month: nextMonth(share.ahead, units, order, missing, period),
    operating_characteristics: OPERATING_CHARACTERISTICS,
    drift_operating_characteristics: DRIFT_OPERATING_CHARACTERISTICS,
    settings,
  };
}

const byUnit = <Row extends { unit: string | null }>(rows: readonly Row[]): Map<string | null, Row[]> =>
  groupBy(rows, ({ unit }) => unit);

function each<Row, Point>(
  rowsOf: Map<string, Row[]>,
  level: number,
  chart: (rows: Row[], scope: string, level: number) => Point[],
): Point[] {
  return [...rowsOf].flatMap(([unit, rows]) => chart(rows, unit, level));
}
