import { firstFrom } from '../../first-from.ts';
import type { Cleaning } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';
import { type ClassedCycle, isProduction } from '../cycles/class-cycles.ts';
import type { PossibleTime } from '../possible-time.ts';

/**
 * What the cycle log says of a chamber cleaning record. `judged` is false where only the record's date is known, and the rest is then false or null.
 * A record can be hot and lack its return at once.
 */
export interface Support {
  judged: boolean;
  /** A cycle overlaps the stated work. */
  running: boolean;
  /** Less idle time before the work than the cool-down. */
  hot: boolean;
  /**
   * Production came before a warm-up and a passing air-removal test. Null where that can't be judged: of the record or of the passing test only the date is
   * known.
   */
  no_return: boolean | null;
  /** Idle time before the work, hours; null where the log has no cycle before it. */
  idle_hours: number | null;
}

/** Whether the cycle log supports a record. */
export const isSupported = ({ running, hot, no_return }: Support): boolean =>
  !running && !hot && no_return === false;

/** Whether a record is neither supported nor faulted, since of it or of the passing test after it only the date is known. */
export const isUnjudged = ({ running, hot, no_return }: Support): boolean =>
  !running && !hot && no_return === null;

const HOUR = 3_600_000;
/** A cycle ends within so long: one is believed for a day at most, and one that was put together of two for a little more. */
const LONGEST_CYCLE = 48 * HOUR;
/** No operating day is longer, with any change of the clock. */
const LONGEST_DAY = 48 * HOUR;

/**
 * Sets a chamber cleaning beside the cycle log. The stated work runs from the record's start (else its time less its minutes, else its time) to
 * its time. Drain purges are part of the work and are left out.
 *
 * @param others cycles of the unit in order of start, without purges
 * @param passes when passing air-removal tests may have been over, in order of the earliest
 */
export function supportOf(
  cleaning: Cleaning,
  others: readonly ClassedCycle[],
  passes: readonly PossibleTime[],
  rules: Rules,
): Support {
  if (cleaning.time_mark === 'day')
    return { judged: false, running: false, hot: false, no_return: null, idle_hours: null };
  const end = cleaning.time;
  const begin = Math.min(cleaning.start ?? end - (cleaning.minutes ?? 0) * 60_000, end);
  const near = others.slice(
    firstFrom(others, (cycle) => cycle.start >= begin - LONGEST_CYCLE),
    firstFrom(others, (cycle) => cycle.start >= end),
  );
  const running = near.some((cycle) => (cycle.end ?? cycle.start) > begin);
  const before = lastOver(others, begin);
  const idle_hours = before ? (begin - (before.end ?? before.start)) / HOUR : null;
  return {
    judged: true,
    running,
    hot: !running && idle_hours !== null && idle_hours < rules.cool_down_hours,
    no_return: lacksReturn(end, others, passes),
    idle_hours,
  };
}

/** The last cycle that was over by an instant. */
function lastOver(cycles: readonly ClassedCycle[], at: number): ClassedCycle | undefined {
  for (let index = firstFrom(cycles, (cycle) => cycle.start > at) - 1; index >= 0; index--) {
    const cycle = cycles[index]!;
    if ((cycle.end ?? cycle.start) <= at) return cycle;
  }
  return undefined;
}

/** Whether production came before a warm-up and a pass; null where the order of the pass is not known. */
function lacksReturn(
  end: number,
  cycles: readonly ClassedCycle[],
  passes: readonly PossibleTime[],
): boolean | null {
  const after = firstFrom(cycles, (cycle) => cycle.start >= end);
  let first = after;
  while (first < cycles.length && !isProduction(cycles[first]!)) first++;
  const production = cycles[first];
  if (!production) return false;
  const warmUp = cycles
    .slice(after, first)
    .some(
      (cycle) => cycle.kind === 'warm_up' && cycle.standing === 'completed' && cycle.start < production.start,
    );
  if (!warmUp) return true;
  const near = passes.slice(
    firstFrom(passes, (pass) => pass.earliest >= end - LONGEST_DAY),
    firstFrom(passes, (pass) => pass.earliest > production.start),
  );
  if (near.some((pass) => pass.earliest >= end && pass.latest <= production.start)) return false;
  return near.some((pass) => pass.latest >= end) ? null : true;
}
