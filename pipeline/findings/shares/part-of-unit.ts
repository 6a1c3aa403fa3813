import type { Site } from '../../site/site.ts';
import { formatWall } from '../../site/wall-clock.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { type WatchedUnit, watchedUnit } from '../drift/watched-unit.ts';
import { cyclesWithoutPass } from '../lists/cycles-without-pass.ts';
import {
  contradictedRecords,
  countUnclassified,
  earlyStops,
  incompleteReturns,
  lookBackLists,
  type RecordLists,
  requalificationList,
  type TextCounts,
  testTimingList,
} from '../lists/record-lists.ts';
import { type MissingOfUnit, missingOfUnit } from '../next-month/missing-data.ts';
import { type UnitAhead, unitAhead } from '../next-month/next-month.ts';
import type { Period } from '../period.ts';
import { type QualityOfUnit, qualityOfUnit } from '../record-quality/record-quality.ts';
import { type UnitCourse, unitCourse } from './unit-course.ts';
import { type UnitSummary, unitSummary } from './unit-summary.ts';

/** The newest cycle or test, as an instant and as wall time. */
export type NewestEvent = { at: number; text: string } | null;

/**
 * What a review takes from the records of one unit: what is told of it by itself, and what is set beside the other units of its site. Once it is made the unit's records can be let go,
 * so that those of a site need never be held at once.
 */
export interface PartOfUnit {
  course: UnitCourse;
  /** Rows of the panel. */
  rows: readonly UnitDay[];
  summary: UnitSummary;
  watched: WatchedUnit;
  lists: RecordLists;
  unclassified: TextCounts;
  quality: QualityOfUnit;
  ahead: UnitAhead;
  missing: MissingOfUnit;
  newest: NewestEvent;
}

/** @param rows of the panel of the unit */
export function partOfUnit(
  site: Site,
  history: UnitHistory,
  rows: readonly UnitDay[],
  period: Period,
): PartOfUnit {
  const { from, until } = period;
  const withoutPass = cyclesWithoutPass(history, rows, from, until);
  return {
    course: unitCourse(history, site, until),
    rows,
    summary: unitSummary(site, history, rows, period),
    watched: watchedUnit(history, site.rules, until),
    lists: {
      contradicted_records: contradictedRecords(history, from, until),
      incomplete_returns: incompleteReturns(history, from, until),
      test_timing: testTimingList(history, rows, from, withoutPass),
      look_backs: lookBackLists(history, from, until),
      cycles_without_pass: withoutPass,
      requalifications: requalificationList(history, from, site.rules),
      early_stops: earlyStops(history, from, until),
    },
    unclassified: countUnclassified(history),
    quality: qualityOfUnit(site, history),
    ahead: unitAhead(site, history, period),
    missing: missingOfUnit(site, history, period),
    newest: newestEvent(history),
  };
}

function newestEvent({ cycles, tests, clock }: UnitHistory): NewestEvent {
  const at = Math.max(
    cycles.at(-1)?.start ?? Number.NEGATIVE_INFINITY,
    tests.at(-1)?.time ?? Number.NEGATIVE_INFINITY,
  );
  return Number.isFinite(at) ? { at, text: formatWall(clock.wallOf(at)) } : null;
}
