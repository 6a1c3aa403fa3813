import { rowsOfUnits } from '../../rows-of-units.ts';
import type { Records } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import type { JoinCount } from '../../transform/join-count.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Transformed } from '../../transform/transform.ts';
import type { Drift } from '../drift/drift-schema.ts';
import { driftOfUnits } from '../drift/drift-watch.ts';
import type { RecordLists, TextCounts } from '../lists/record-lists.ts';
import { type MissingParts, missingParts } from '../next-month/missing-data.ts';
import type { UnitAhead } from '../next-month/next-month.ts';
import type { Period } from '../period.ts';
import { type QualityParts, qualityParts } from '../record-quality/record-quality.ts';
import { recordsUntil } from '../record-quality/records-until.ts';
import { type NewestEvent, type PartOfUnit, partOfUnit } from './part-of-unit.ts';
import type { UnitCourse } from './unit-course.ts';
import type { UnitSummary } from './unit-summary.ts';

/**
 * What a review takes from the records of some units, all of their sites. Once it is made the records can be let go, so that those of a whole fleet need never be held at once.
 * What is asked of all units together is asked of the shares put together.
 */
export interface Share {
  units: UnitCourse[];
  panel: UnitDay[];
  joins: JoinCount[];
  summaries: UnitSummary[];
  drift: Drift;
  lists: RecordLists;
  /** Of those that no row of the site's table matches. */
  unclassified: TextCounts;
  quality: QualityParts;
  ahead: UnitAhead[];
  missing: MissingParts;
  newest: NewestEvent;
  /** Records that lie after the period (water and inspections are not counted). */
  later_records: number;
}

/**
 * The share of some units from all of their histories at once.
 *
 * @param records of no unit
 * @param transformed of all units of some sites, and none of others
 */
export function shareOf(
  site: Site,
  records: Pick<Records, 'inspections' | 'water' | 'actions'>,
  { histories, panel, joins, later_records }: Transformed,
  period: Period,
): Share {
  const rowsOf = rowsOfUnits(panel);
  const parts = histories.map((history) => partOfUnit(site, history, rowsOf(history.unit), period));
  return { ...shareOfParts(site, records, parts, period), joins, later_records };
}

/**
 * The same from what was taken of each unit, so that their records need not be held at once.
 *
 * @param parts of all units of some sites, in order
 */
export function shareOfParts(
  site: Site,
  { inspections, water, actions }: Pick<Records, 'inspections' | 'water' | 'actions'>,
  parts: readonly PartOfUnit[],
  period: Period,
): Omit<Share, 'joins' | 'later_records'> {
  const { until } = period;
  const all = <Row>(of: (part: PartOfUnit) => readonly Row[]): Row[] => parts.flatMap(of);
  return {
    units: parts.map((part) => part.course),
    panel: all((part) => part.rows),
    summaries: parts.map((part) => part.summary),
    drift: driftOfUnits(
      parts.map((part) => part.watched),
      site.rules,
      until,
    ),
    lists: {
      contradicted_records: all((part) => part.lists.contradicted_records),
      incomplete_returns: all((part) => part.lists.incomplete_returns),
      test_timing: all((part) => part.lists.test_timing),
      look_backs: all((part) => part.lists.look_backs),
      cycles_without_pass: all((part) => part.lists.cycles_without_pass),
      requalifications: all((part) => part.lists.requalifications),
      early_stops: all((part) => part.lists.early_stops),
    },
    unclassified: sumOfTexts(all((part) => part.unclassified)),
    quality: qualityParts(
      site,
      parts.map((part) => part.quality),
    ),
    ahead: parts.map((part) => part.ahead),
    missing: missingParts(
      site,
      recordsUntil(site, { inspections, water, actions }, until),
      parts.map((part) => part.missing),
      period,
    ),
    newest: newestOf(parts.map((part) => part.newest)),
  };
}

/** Counts of abort texts added up, in the order in which they come. */
export function sumOfTexts(counts: TextCounts): TextCounts {
  const sums = new Map<string, number>();
  for (const [text, count] of counts) sums.set(text, (sums.get(text) ?? 0) + count);
  return [...sums];
}

/** The newest of events; of several at one instant the first. */
export const newestOf = (events: readonly NewestEvent[]): NewestEvent =>
  events.reduce((newest, of) => (of && (newest === null || of.at > newest.at) ? of : newest), null);
