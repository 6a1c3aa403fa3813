import { firstFrom } from '../../first-from.ts';
import type { Day } from '../../site/day.ts';
import type { Cleaning } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';
import type { JudgedTest } from '../air-removal-tests/judge-tests.ts';
import type { ClassedCycle } from '../cycles/class-cycles.ts';
import type { UnitRecords } from '../records-by-unit.ts';
import { type Support, supportOf } from './support.ts';

export interface JudgedCleaning extends Cleaning {
  day: Day;
  /** Whether the record says that the work was done; a record with no state does. */
  done: boolean;
  /** What the cycle log says of a chamber cleaning that was done; null for other records. */
  support: Support | null;
  /** Running or hot: the cycle log contradicts the record. */
  contradicted: boolean;
  /** Marked so, or within the site's number of days after a failed test. Null for work not done. */
  reactive: boolean | null;
}

/** Judges a unit's cleaning records, in order of time. */
export function judgeCleanings(
  records: UnitRecords,
  cycles: readonly ClassedCycle[],
  tests: readonly JudgedTest[],
  rules: Rules,
): JudgedCleaning[] {
  const others = cycles.filter((cycle) => cycle.standing !== 'purge');
  const failed = tests.filter((test) => test.result === 'fail');
  const passes = tests
    .filter((test) => test.result === 'pass')
    .map((test) => test.ended_at ?? test.time)
    .sort((a, b) => a - b);
  return records.cleanings.map((cleaning) => {
    const day = records.clock.operatingDay(cleaning.time);
    const done = (cleaning.state ?? 'done') === 'done';
    const support = done && cleaning.task === 'chamber' ? supportOf(cleaning, others, passes, rules) : null;
    const failure = failed[firstFrom(failed, (test) => test.time > cleaning.time) - 1];
    const afterFailure = failure !== undefined && day - failure.day <= rules.reactive_within_days;
    return {
      ...cleaning,
      day,
      done,
      support,
      contradicted: support !== null && (support.running || support.hot),
      reactive: done ? cleaning.reason === 'reactive' || afterFailure : null,
    };
  });
}
