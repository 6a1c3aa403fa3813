import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import { CLEANLINESS_CLASSES } from '../../site/vocabulary.ts';
import { type ClassedCycle, isProduction } from '../../transform/cycles/class-cycles.ts';
import type { UnitCourse, UnitHistory } from '../../transform/unit-history.ts';

/** When a cycle ran, as wall times written as if they were UTC, ms, and whether a cleaning in its place displaces it. */
export interface Run {
  from: number;
  to: number;
  displaceable: boolean;
}

/** What the case for an interval takes from a unit: its course, and what its cycles say of costs and of the week. */
export interface UnitOfCase extends UnitCourse {
  /** Lengths of completed warm-ups, of completed air-removal tests, minutes. */
  warm_up_minutes: number[];
  test_minutes: number[];
  /** Lengths of production cycles whose abort is plausibly about cleanliness, h. */
  abort_hours: number[];
  /** Cycles of the weeks that the weekly pattern may be made from; purges and open cycles aside. */
  recent_runs: Run[];
  last_start: number | null;
}

const MINUTE = 60_000;
const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** Kinds of cycle that go with the return to service, or move with it: a cleaning displaces none of them. */
const WITH_THE_RETURN = new Set(['warm_up', 'air_removal_test', 'leak_test']);

/** Takes from a unit's history what the case needs, so that its cycles can be let go. */
export function unitOfCase(
  { cycles, leak_tests, ...course }: UnitHistory,
  site: Site,
  until: Day,
): UnitOfCase {
  const ended = cycles.filter((cycle) => cycle.end !== undefined);
  const lengths = (wanted: (cycle: ClassedCycle) => boolean, unit: number): number[] =>
    ended.filter(wanted).map((cycle) => (cycle.end! - cycle.start) / unit);
  return {
    ...course,
    warm_up_minutes: lengths((of) => of.kind === 'warm_up' && of.standing === 'completed', MINUTE),
    test_minutes: lengths((of) => of.kind === 'air_removal_test' && of.standing === 'completed', MINUTE),
    abort_hours: lengths(
      (of) => isProduction(of) && of.standing === 'abort' && CLEANLINESS_CLASSES.includes(of.abort_class!),
      HOUR,
    ),
    recent_runs: recentRuns(
      course,
      cycles,
      (until - 7 * site.declared.interval.planning.weeks) * DAY,
      until * DAY,
    ),
    last_start: cycles.at(-1)?.start ?? null,
  };
}

/** @param begin wall time, ms; `end` likewise: cycles that begin between them (the second left out) */
function recentRuns(
  { clock }: Pick<UnitCourse, 'clock'>,
  cycles: readonly ClassedCycle[],
  begin: number,
  end: number,
): Run[] {
  return cycles.flatMap((cycle) => {
    // A wall time lies within a day of its instant.
    if (cycle.start < begin - DAY || cycle.standing === 'purge' || cycle.standing === 'open') return [];
    const from = clock.wallOf(cycle.start);
    const to = clock.wallOf(cycle.end ?? cycle.start);
    return from < begin || from >= end ? [] : [{ from, to, displaceable: !WITH_THE_RETURN.has(cycle.kind) }];
  });
}
