import { groupBy } from '../../group-by.ts';
import type { Records } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import { formatWall } from '../../site/wall-clock.ts';
import type { JoinCount } from '../../transform/join-count.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { Transformed } from '../../transform/transform.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Drift } from '../drift/drift-schema.ts';
import { driftWatch } from '../drift/drift-watch.ts';
import {
  contradictedRecords,
  countUnclassified,
  earlyStops,
  incompleteReturns,
  lookBackLists,
  requalificationList,
  testTimingList,
} from '../lists/record-lists.ts';
import { type MissingParts, missingParts } from '../next-month/missing-data.ts';
import { type UnitAhead, unitAhead } from '../next-month/next-month.ts';
import type { Period } from '../period.ts';
import { type QualityParts, qualityParts } from '../record-quality/record-quality.ts';
import { recordsUntil } from '../record-quality/records-until.ts';
import type { Review } from '../review-schema.ts';
import { recordsOfHistories } from './records-of-histories.ts';
import { type UnitCourse, unitCourse } from './unit-course.ts';
import { type UnitSummary, unitSummary } from './unit-summary.ts';

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
  lists: Pick<
    Review,
    | 'contradicted_records'
    | 'incomplete_returns'
    | 'test_timing'
    | 'look_backs'
    | 'requalifications'
    | 'early_stops'
  >;
  /** Abort texts that no row of the site's table matches, and how often each stands. */
  unclassified: [text: string, count: number][];
  quality: QualityParts;
  ahead: UnitAhead[];
  missing: MissingParts;
  /** The newest cycle or test, as an instant and as wall time. */
  newest: { at: number; text: string } | null;
  /** Records that lie after the period (water and inspections are not counted). */
  later_records: number;
}

/**
 * @param records of no unit
 * @param transformed of all units of some sites, and none of others
 */
export function shareOf(
  site: Site,
  { inspections, water, actions }: Pick<Records, 'inspections' | 'water' | 'actions'>,
  { histories, panel, joins, until, later_records }: Transformed,
  period: Period,
): Share {
  const { from } = period;
  const others = recordsUntil(site, { inspections, water, actions }, until);
  const upToNow = { ...others, ...recordsOfHistories(histories) };
  const rowsOf = groupBy(panel, (row) => row.unit);
  return {
    units: histories.map((history) => unitCourse(history, site, until)),
    panel,
    joins,
    summaries: histories.map((history) => unitSummary(site, history, rowsOf.get(history.unit) ?? [], period)),
    drift: driftWatch(histories, site, until),
    lists: {
      contradicted_records: contradictedRecords(histories, from, until),
      incomplete_returns: incompleteReturns(histories, from, until),
      test_timing: testTimingList(histories, panel, from),
      look_backs: lookBackLists(histories, from, until),
      requalifications: requalificationList(histories, from, site.rules),
      early_stops: earlyStops(histories, from, until),
    },
    unclassified: countUnclassified(histories),
    quality: qualityParts(site, upToNow, histories),
    ahead: histories.map((history) => unitAhead(site, history, period)),
    missing: missingParts(site, upToNow, histories, period),
    newest: newestEvent(histories),
    later_records,
  };
}

function newestEvent(histories: readonly UnitHistory[]): Share['newest'] {
  let newest: Share['newest'] = null;
  for (const { cycles, tests, clock } of histories) {
    const at = Math.max(
      cycles.at(-1)?.start ?? Number.NEGATIVE_INFINITY,
      tests.at(-1)?.time ?? Number.NEGATIVE_INFINITY,
    );
    if (Number.isFinite(at) && (newest === null || at > newest.at))
      newest = { at, text: formatWall(clock.wallOf(at)) };
  }
  return newest;
}
