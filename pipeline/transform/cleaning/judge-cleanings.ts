import { firstFrom } from '../../first-from.ts';
import type { Day } from '../../site/day.ts';
import type { Cleaning } from '../../site/records.ts';
import type { Rules } from '../../site/rules.ts';
import type { JudgedTest } from '../air-removal-tests/judge-tests.ts';
import { timedTests } from '../air-removal-tests/timed-tests.ts';
import type { ClassedCycle } from '../cycles/class-cycles.ts';
import { possibleTime } from '../possible-time.ts';
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
  /**
   * Marked so, or within the site's number of days after a failed test. A date alone on the day of a failed test may be before or after it, and is taken as
   * after: a unit just mended is then never taken for one just cleaned. Null for work not done.
   */
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
  const timed = timedTests(tests, records.clock);
  const failed = timed.filter(({ test }) => test.result === 'fail');
  const passes = timed.filter(({ test }) => test.result === 'pass');
  return records.cleanings.map((cleaning) => {
    const day = records.clock.operatingDay(cleaning.time);
    const done = (cleaning.state ?? 'done') === 'done';
    const support = done && cleaning.task === 'chamber' ? supportOf(cleaning, others, passes, rules) : null;
    const { latest } = possibleTime(cleaning.time, cleaning.time_mark, records.clock);
    const failure = failed[firstFrom(failed, (test) => test.earliest > latest) - 1];
    const afterFailure = failure !== undefined && day - failure.test.day <= rules.reactive_within_days;
    const contradicted = support !== null && (support.running || support.hot);
    const reactive = done ? cleaning.reason === 'reactive' || afterFailure : null;
    return judged(cleaning, { day, done, support, contradicted, reactive });
  });
}

/** Field by field, since copies by spread take several times the memory, and there may be millions. */
function judged(cleaning: Cleaning, of: Omit<JudgedCleaning, keyof Cleaning>): JudgedCleaning {
  const all: Required<Record<keyof JudgedCleaning, unknown>> = {
    unit: cleaning.unit,
    task: cleaning.task,
    time: cleaning.time,
    start: cleaning.start,
    minutes: cleaning.minutes,
    state: cleaning.state,
    reason: cleaning.reason,
    note: cleaning.note,
    entered_at: cleaning.entered_at,
    person: cleaning.person,
    time_mark: cleaning.time_mark,
    origin: cleaning.origin,
    day: of.day,
    done: of.done,
    support: of.support,
    contradicted: of.contradicted,
    reactive: of.reactive,
  };
  return all as JudgedCleaning;
}
