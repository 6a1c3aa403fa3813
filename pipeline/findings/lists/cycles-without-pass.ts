import { byCodeUnit } from '../../by-code-unit.ts';
import { groupBy } from '../../group-by.ts';
import { type Day, formatDay } from '../../site/day.ts';
import { formatWall } from '../../site/wall-clock.ts';
import {
  endOf,
  isByDate,
  type TimedTest,
  timedTests,
} from '../../transform/air-removal-tests/timed-tests.ts';
import { type ClassedCycle, isProduction } from '../../transform/cycles/class-cycles.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { CyclesWithoutPass } from './cycles-without-pass-schema.ts';

/** From a failed valid test to the first pass that is known to have come after it, ms; `closed_by` is null while none has. */
interface Spell {
  failed: TimedTest;
  until: number;
  closed_by: TimedTest | null;
}

/**
 * Production and liquids cycles of some operating days (the second left out) that no passing test preceded: after a failed test and before one passed, before a test
 * that came late, on a day with no test. Each cycle stands once, after a failure before all else. Lists without a cycle are left out.
 *
 * Every valid test counts, whatever its role: a failed retest or qualification run keeps a unit out of use too, and any pass ends that. Where only the date of a test is known the
 * list errs toward more: a failure begins with its day, a pass ends with its own; of two tests of one date the order of the records is taken. `certain` says of a cycle
 * that no pass may have come between the failure and its start.
 *
 * @param rows of the panel of the unit
 */
export function cyclesWithoutPass(
  history: UnitHistory,
  rows: readonly UnitDay[],
  from: Day,
  until: Day,
): CyclesWithoutPass[] {
  const { unit, clock, cycles } = history;
  const wall = (at: number) => formatWall(clock.wallOf(at));
  const tests = timedTests(history.tests, clock);
  const production = cycles.filter((of) => of.day >= from && of.day < until && isProduction(of));
  const listed = new Set<ClassedCycle>();
  const take = (wanted: readonly ClassedCycle[], certain: (cycle: ClassedCycle) => boolean) =>
    wanted
      .filter((cycle) => !listed.has(cycle))
      .map((cycle) => {
        listed.add(cycle);
        return {
          started: wall(cycle.start),
          date: formatDay(cycle.day),
          cycle_number: cycle.cycle_number ?? null,
          kind: cycle.kind,
          standing: cycle.standing,
          certain: certain(cycle),
          file: cycle.origin.file,
          row: cycle.origin.row,
        };
      });
  const after = failedSpells(tests).map((spell): CyclesWithoutPass => {
    const { failed, closed_by } = spell;
    return {
      unit,
      why: 'after_failure',
      date: formatDay(failed.test.day),
      failed: wall(failed.earliest),
      failed_by_date: isByDate(failed),
      ended: closed_by && wall(closed_by.earliest),
      ended_by_date: closed_by !== null && isByDate(closed_by),
      cycles: take(
        production.filter(({ start }) => start >= failed.earliest && start < spell.until),
        ({ start }) => noPassBefore(tests, start),
      ),
    };
  });
  const ofDay = groupBy(production, (cycle) => cycle.day);
  const before = rows
    .filter((row) => row.day >= from && (row.test_timing === 'late' || row.test_timing === 'missing'))
    .map((row): CyclesWithoutPass => {
      const late = row.test_timing === 'late';
      const ended = late
        ? Math.min(...tests.filter(({ test }) => test.day === row.day).map((of) => of.earliest))
        : null;
      return {
        unit,
        why: late ? 'before_late_test' : 'no_test',
        date: row.date,
        failed: null,
        failed_by_date: false,
        ended: ended === null ? null : wall(ended),
        ended_by_date: false,
        cycles: take(
          ofDay.get(row.day)!.filter(({ start }) => ended === null || start < ended),
          () => true,
        ),
      };
    });
  return [...after, ...before]
    .filter((list) => list.cycles.length > 0)
    .sort((a, b) => byCodeUnit(a.date, b.date));
}

/** The spells, in order; those that meet are one, with its first failure. */
function failedSpells(tests: readonly TimedTest[]): Spell[] {
  const spells: Spell[] = [];
  for (const [index, failed] of tests.entries()) {
    if (failed.test.result !== 'fail') continue;
    const closed_by = passAfter(tests, index);
    const until = closed_by === null ? Number.POSITIVE_INFINITY : endOf(closed_by);
    const open = spells.at(-1);
    if (open && failed.earliest < open.until) {
      if (until > open.until) Object.assign(open, { until, closed_by });
    } else spells.push({ failed, until, closed_by });
  }
  return spells;
}

/** The pass that ends the failure: of those known to have come after it, the one that is over first. */
function passAfter(tests: readonly TimedTest[], index: number): TimedTest | null {
  const failed = tests[index]!;
  let first: TimedTest | null = null;
  for (let next = index + 1; next < tests.length; next++) {
    const of = tests[next]!;
    if (first !== null && of.earliest > first.latest) break;
    if (of.test.result !== 'pass') continue;
    const sameDate = of.earliest === failed.earliest && of.latest === failed.latest;
    if ((of.earliest >= failed.latest || sameDate) && (first === null || of.latest < first.latest))
      first = of;
  }
  return first;
}

/** Whether some failure is known to have come before an instant and no pass may lie between the two. */
function noPassBefore(tests: readonly TimedTest[], start: number): boolean {
  const passes = tests.filter(({ test, earliest }) => test.result === 'pass' && earliest <= start);
  const lastPass = passes.reduce((last, { latest }) => Math.max(last, latest), Number.NEGATIVE_INFINITY);
  return tests.some(
    ({ test, earliest, latest }) => test.result === 'fail' && latest <= start && lastPass <= earliest,
  );
}
