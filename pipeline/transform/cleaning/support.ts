import { firstFrom } from '../../first-from.ts';
import type { Cleaning } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';
import { type ClassedCycle, isProduction } from '../cycles/class-cycles.ts';

/**
 * What the cycle log says of a chamber cleaning record. `judged` is false where only a date is known, and the rest is then false or null.
 * A record can be hot and lack its return at once.
 */
export interface Support {
  judged: boolean;
  /** A cycle overlaps the stated work. */
  running: boolean;
  /** Less idle time before the work than the cool-down. */
  hot: boolean;
  /** Production came before a warm-up and a passing air-removal test. */
  no_return: boolean;
  /** Idle time before the work, hours; null where the log has no cycle before it. */
  idle_hours: number | null;
}

const HOUR = 3_600_000;
/** A cycle ends within so long: one is believed for a day at most, and one that was put together of two for a little more. */
const LONGEST_CYCLE = 48 * HOUR;

/**
 * Sets a chamber cleaning beside the cycle log. The stated work runs from the record's start (else its time less its minutes, else its time) to
 * its time. Drain purges are part of the work and are left out.
 *
 * @param others cycles of the unit in order of start, without purges
 * @param passes instants at which passing air-removal tests were over, in order
 */
export function supportOf(
  cleaning: Cleaning,
  others: readonly ClassedCycle[],
  passes: readonly number[],
  rules: Rules,
): Support {
  if (cleaning.time_mark === 'day')
    return { judged: false, running: false, hot: false, no_return: false, idle_hours: null };
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

function lacksReturn(end: number, cycles: readonly ClassedCycle[], passes: readonly number[]): boolean {
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
  const passed = passes[firstFrom(passes, (at) => at >= end)];
  return !(warmUp && passed !== undefined && passed <= production.start);
}
