import { groupBy } from '../../group-by.ts';
import type { Day } from '../../site/day.ts';
import type { AirRemovalTest } from '../../site/records.ts';
import type { WallClock } from '../../site/wall-clock.ts';
import type { ClassedCycle } from '../cycles/class-cycles.ts';
import { type PossibleTime, possibleTime } from '../possible-time.ts';
import type { UnitRecords } from '../records-by-unit.ts';
import { possibleEnd } from '../service/possible-end.ts';

/**
 * What a test counts as. Only `day_result` is counted; the others are kept and shown. `after_repair`: known to lie between the end of a repair and the end
 * of that operating day, so that a failure which may be what the repair was for is counted. `qualification`: its cycle is one.
 */
export type TestRole = 'day_result' | 'retest' | 'after_repair' | 'qualification' | 'invalid';

export interface JudgedTest extends AirRemovalTest {
  day: Day;
  role: TestRole;
  /** The test's cycle in the log, where one was found. */
  cycle: ClassedCycle | null;
  /** When the test was over: end of its cycle, else the recorded time; null where only the date is known. */
  ended_at: number | null;
}

/** Longest time between a test's recorded time and the start of its cycle: the sheet is read after the cycle, seldom at once. */
const LINK_WITHIN_MS = 3 * 3_600_000;

/** Judges a unit's air-removal tests in order of time: day, role and cycle. The first valid test of an operating day is its result. */
export function judgeTests(records: UnitRecords, cycles: readonly ClassedCycle[]): JudgedTest[] {
  const testCycles = groupBy(
    cycles.filter(
      (cycle) =>
        (cycle.kind === 'air_removal_test' || cycle.kind === 'qualification') && cycle.standing !== 'purge',
    ),
    (cycle) => cycle.day,
  );
  const taken = new Set<ClassedCycle>();
  const repairs = records.service
    .filter(
      (service) =>
        (service.kind === 'repair' || service.kind === 'controller_replaced') && service.to !== undefined,
    )
    .map((service) => possibleEnd(service, records.clock).latest);
  const resultDays = new Set<Day>();
  return records.air_removal_tests.map((test) => {
    const day = records.clock.operatingDay(test.time);
    const cycle = linkCycle(test, testCycles.get(day) ?? [], taken);
    if (cycle) taken.add(cycle);
    const ended_at = cycle ? (cycle.end ?? cycle.start) : test.time_mark === 'day' ? null : test.time;
    const when = possibleTimeOver(
      { ended_at, time: test.time, time_mark: test.time_mark },
      records.clock,
    ).earliest;
    const afterRepair = repairs.some((end) => end <= when && records.clock.operatingDay(end) === day);
    let role: TestRole = 'day_result';
    if (test.result === 'invalid') role = 'invalid';
    else if (cycle?.kind === 'qualification') role = 'qualification';
    else if (afterRepair) role = 'after_repair';
    else if (resultDays.has(day)) role = 'retest';
    if (role === 'day_result') resultDays.add(day);
    return judged(test, { day, role, cycle, ended_at });
  });
}

/** When a test may have been over: a date alone may be any time of its operating day, unless the test's cycle was found. */
export const possibleTimeOver = (
  { ended_at, time, time_mark }: Pick<JudgedTest, 'ended_at' | 'time' | 'time_mark'>,
  clock: WallClock,
): PossibleTime => possibleTime(ended_at ?? time, ended_at === null ? time_mark : 'time', clock);

/** Field by field, since copies by spread take several times the memory, and there may be millions. */
function judged(test: AirRemovalTest, of: Omit<JudgedTest, keyof AirRemovalTest>): JudgedTest {
  const all: Required<Record<keyof JudgedTest, unknown>> = {
    unit: test.unit,
    time: test.time,
    result: test.result,
    cycle_number: test.cycle_number,
    note: test.note,
    entered_at: test.entered_at,
    person: test.person,
    time_mark: test.time_mark,
    origin: test.origin,
    day: of.day,
    role: of.role,
    cycle: of.cycle,
    ended_at: of.ended_at,
  };
  return all as JudgedTest;
}

/**
 * The cycle of a test: the one of its number on that operating day, else the nearest free test cycle of the day (within three hours before
 * or after where the test has a time; in order of the day where it has not).
 */
function linkCycle(
  test: AirRemovalTest,
  ofDay: readonly ClassedCycle[],
  taken: ReadonlySet<ClassedCycle>,
): ClassedCycle | null {
  const free = ofDay.filter((cycle) => !taken.has(cycle));
  if (test.cycle_number !== undefined) {
    const numbered = free.find((cycle) => cycle.cycle_number === test.cycle_number);
    if (numbered) return numbered;
  }
  if (test.time_mark === 'day') return free[0] ?? null;
  const distance = (cycle: ClassedCycle) => Math.abs(cycle.start - test.time);
  const nearest = free.toSorted((a, b) => distance(a) - distance(b))[0];
  return nearest && distance(nearest) <= LINK_WITHIN_MS ? nearest : null;
}
