import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import { CLEANLINESS_CLASSES } from '../../site/vocabulary.ts';
import type { WallClock } from '../../site/wall-clock.ts';
import type { FailureEpisode } from '../../transform/air-removal-tests/failure-episodes.ts';
import type { LoggedUnit } from '../../transform/cleaning/cleaning-log.ts';
import type { DueTask, UseDay } from '../../transform/cleaning/due-tasks.ts';
import type { JudgedCleaning } from '../../transform/cleaning/judge-cleanings.ts';
import { type ClassedCycle, isProduction } from '../../transform/cycles/class-cycles.ts';
import type { Era } from '../../transform/service/eras.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { type CleaningCount, cleaningCounts } from '../comparisons/mostly-reactive.ts';
import { failureHours, retests } from './failure-episodes.ts';

/** When a cycle ran, as wall times written as if they were UTC, ms, and whether a cleaning in its place displaces it. */
export interface Run {
  from: number;
  to: number;
  displaceable: boolean;
}

/** A unit's history without what there is most of: what questions to a whole fleet are put to once its cycles, tests and daily records are let go. */
export interface UnitCourse extends LoggedUnit {
  clock: WallClock;
  eras: Era[];
  episodes: FailureEpisode[];
  use_days: UseDay[];
  due: DueTask[];
  chamber_cleanings: JudgedCleaning[];
  /** Cleanings of all tasks. */
  cleaning_counts: CleaningCount[];
  /** The newest cycle, test or cleaning. */
  newest_event: number | null;
  /** Lengths of completed warm-ups, of completed air-removal tests, minutes. */
  warm_up_minutes: number[];
  test_minutes: number[];
  /** Lengths of production cycles whose abort is plausibly about cleanliness, h. */
  abort_hours: number[];
  /** Hours out of use by failure episode, and tests made again. */
  failure_hours: number[];
  retests: number[];
  /** Cycles of the weeks that a weekly pattern may be made from; purges and open cycles aside. */
  recent_runs: Run[];
}

const MINUTE = 60_000;
const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** Kinds of cycle that go with the return to service, or move with it: a cleaning displaces none of them. */
const WITH_THE_RETURN = new Set(['warm_up', 'air_removal_test', 'leak_test']);

/** @param until first operating day after the period */
export function unitCourse(history: UnitHistory, site: Site, until: Day): UnitCourse {
  const { unit, clock, cycles, cleanings, tests, eras, episodes, use_days } = history;
  const ended = cycles.filter((cycle) => cycle.end !== undefined);
  const lengths = (wanted: (cycle: ClassedCycle) => boolean, measure: number): number[] =>
    ended.filter(wanted).map((cycle) => (cycle.end! - cycle.start) / measure);
  const weeks = 7 * site.declared.interval.planning.weeks;
  const newest = [cycles.at(-1)?.start, tests.at(-1)?.time, cleanings.at(-1)?.time].filter(
    (at) => at !== undefined,
  );
  return {
    unit,
    site: history.site,
    clock,
    eras,
    episodes,
    use_days,
    due: history.cleaning.due,
    chamber_cleanings: cleanings.filter((cleaning) => cleaning.task === 'chamber'),
    cleaning_counts: cleaningCounts(cleanings),
    logged_days: [...new Set(cleanings.map((cleaning) => cleaning.day))],
    logged_tasks: [...new Set(cleanings.map((cleaning) => cleaning.task))],
    newest_event: newest.length === 0 ? null : Math.max(...newest),
    warm_up_minutes: lengths((of) => of.kind === 'warm_up' && of.standing === 'completed', MINUTE),
    test_minutes: lengths((of) => of.kind === 'air_removal_test' && of.standing === 'completed', MINUTE),
    abort_hours: lengths(
      (of) => isProduction(of) && of.standing === 'abort' && CLEANLINESS_CLASSES.includes(of.abort_class!),
      HOUR,
    ),
    failure_hours: failureHours(history),
    retests: retests(history),
    recent_runs: recentRuns(clock, cycles, (until - weeks) * DAY, until * DAY),
  };
}

/** @param begin wall time, ms; `end` likewise: cycles that begin between them (the second left out) */
function recentRuns(clock: WallClock, cycles: readonly ClassedCycle[], begin: number, end: number): Run[] {
  return cycles.flatMap((cycle) => {
    // A wall time lies within a day of its instant.
    if (cycle.start < begin - DAY || cycle.standing === 'purge' || cycle.standing === 'open') return [];
    const from = clock.wallOf(cycle.start);
    const to = clock.wallOf(cycle.end ?? cycle.start);
    return from < begin || from >= end ? [] : [{ from, to, displaceable: !WITH_THE_RETURN.has(cycle.kind) }];
  });
}
