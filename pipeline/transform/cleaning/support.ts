import type { Cleaning } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';
import type { JudgedTest } from '../air-removal-tests/judge-tests.ts';
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

/**
 * Sets a chamber cleaning beside the cycle log. The stated work runs from the record's start (else its time less its minutes, else its time) to
 * its time. Drain purges are part of the work and are left out.
 */
export function supportOf(
  cleaning: Cleaning,
  cycles: readonly ClassedCycle[],
  tests: readonly JudgedTest[],
  rules: Rules,
): Support {
  if (cleaning.time_mark === 'day')
    return { judged: false, running: false, hot: false, no_return: false, idle_hours: null };
  const end = cleaning.time;
  const begin = Math.min(cleaning.start ?? end - (cleaning.minutes ?? 0) * 60_000, end);
  const others = cycles.filter((cycle) => cycle.standing !== 'purge');
  const running = others.some((cycle) => cycle.start < end && (cycle.end ?? cycle.start) > begin);
  const before = others.findLast((cycle) => (cycle.end ?? cycle.start) <= begin);
  const idle_hours = before ? (begin - (before.end ?? before.start)) / HOUR : null;
  return {
    judged: true,
    running,
    hot: !running && idle_hours !== null && idle_hours < rules.cool_down_hours,
    no_return: lacksReturn(end, others, tests),
    idle_hours,
  };
}

function lacksReturn(end: number, cycles: readonly ClassedCycle[], tests: readonly JudgedTest[]): boolean {
  const production = cycles.find((cycle) => cycle.start >= end && isProduction(cycle));
  if (!production) return false;
  const warmUp = cycles.some(
    (cycle) =>
      cycle.kind === 'warm_up' &&
      cycle.standing === 'completed' &&
      cycle.start >= end &&
      cycle.start < production.start,
  );
  const passed = tests.some(
    (test) =>
      test.result === 'pass' &&
      (test.ended_at ?? test.time) >= end &&
      (test.ended_at ?? test.time) <= production.start,
  );
  return !(warmUp && passed);
}
