import { parseDay } from '../../pipeline/site/day.ts';
import type { AirRemovalTest, Cleaning, Cycle, Records } from '../../pipeline/site/records.ts';

/**
 * What real records hold and the simulator does not: retests, invalid tests, purges, repairs, gaps. Each function changes the records of some units on
 * some days, by fixed rules. Days count from the first simulated day; minutes from midnight.
 */

const FIRST_DAY = parseDay('2024-01-01')!;
const DAY_MS = 86_400_000;
const MINUTE = 60_000;

export const instant = (day: number, minutes: number): number =>
  (FIRST_DAY + day) * DAY_MS + minutes * MINUTE;
const dayOf = (at: number): number => Math.floor(at / DAY_MS) - FIRST_DAY;
const minuteOf = (at: number): number => (at % DAY_MS) / MINUTE;
const made = { time_mark: 'time', origin: { source: '', file: '', sheet: null, row: 1 } } as const;

const cycle = (unit: string, day: number, from: number, to: number, rest: Partial<Cycle>): Cycle => ({
  ...made,
  unit,
  start: instant(day, from),
  end: instant(day, to),
  kind: 'production',
  outcome: 'completed',
  ...rest,
});

/** Leaves out what a unit did from one day to another (the last included). */
export function drop(
  records: Records,
  kinds: (keyof Records)[],
  units: string[],
  onDay: (day: number, minute: number) => boolean,
): void {
  for (const kind of kinds) {
    const rows = records[kind] as { unit: string; time?: number; start?: number }[];
    const kept = rows.filter((row) => {
      const at = row.time ?? row.start!;
      return !(units.includes(row.unit) && onDay(dayOf(at), minuteOf(at)));
    });
    rows.splice(0, rows.length, ...kept);
  }
}

/** A second test with its cycle, half an hour after the first: a retest of a failure, or what replaces a test that does not count. */
function secondTest(
  records: Records,
  unit: string,
  day: number,
  result: AirRemovalTest['result'],
  number?: number,
): void {
  const numbered = number === undefined ? {} : { cycle_number: number };
  records.cycles.push(cycle(unit, day, 425, 450, { kind: 'air_removal_test', ...numbered }));
  records.air_removal_tests.push({ ...made, unit, time: instant(day, 451), result, ...numbered });
}

/** Retests after every second failure; invalid tests, qualification runs and missing tests on days of their own. */
export function untidyTests(records: Records, units: string[]): void {
  let failures = 0;
  for (const test of [...records.air_removal_tests]) {
    if (!units.includes(test.unit)) continue;
    const day = dayOf(test.time);
    if (test.result === 'fail' && ++failures % 2 === 0) secondTest(records, test.unit, day, 'pass');
    else if (day % 41 === 17) {
      secondTest(records, test.unit, day, test.result);
      test.result = 'invalid';
    } else if (day % 97 === 60) {
      const own = records.cycles.find((of) => of.unit === test.unit && of.start === instant(day, 390))!;
      own.kind = 'qualification';
      own.cycle_number = 9000 + day;
      test.cycle_number = 9000 + day;
      secondTest(records, test.unit, day, test.result, 9500 + day);
      test.result = 'fail';
    } else if (day % 53 === 29) records.air_removal_tests.splice(records.air_removal_tests.indexOf(test), 1);
  }
}

/** A purge after each chamber cleaning of the early morning, and like stops with no cleaning near, in the morning after the strainer and at noon. */
export function purgesAndEarlyStops(records: Records, units: string[]): void {
  const stopped = { outcome: 'aborted', abort_text: 'stopped by operator' } as const;
  for (const cleaning of records.cleanings) {
    if (!units.includes(cleaning.unit) || cleaning.task !== 'chamber' || minuteOf(cleaning.time) !== 315)
      continue;
    records.cycles.push(cycle(cleaning.unit, dayOf(cleaning.time), 320, 323, stopped));
  }
  for (const [index, unit] of units.entries())
    for (let day = 20 + index; day < 400; day += 45) {
      records.cycles.push(cycle(unit, day, 460, 462, stopped));
      records.cycles.push(cycle(unit, day + 9, 720, 724, stopped));
      records.cycles.push(cycle(unit, day + 13, 720, 740, stopped));
    }
}

/** Odd cycles: texts in no table, a cycle reported as failed, one still running, other kinds, runs after midnight. */
export function oddCycles(records: Records, units: string[]): void {
  for (const [index, unit] of units.entries())
    for (let day = 11 + index; day < 400; day += 31) {
      records.cycles.push(cycle(unit, day, 780, 800, { outcome: 'aborted', abort_text: 'code 17' }));
      records.cycles.push(
        cycle(unit, day + 3, 780, 825, { outcome: 'failed', abort_text: 'temperature low' }),
      );
      records.cycles.push(cycle(unit, day + 6, 780, 800, { kind: 'other' }));
      records.cycles.push(cycle(unit, day + 8, 780, 840, { kind: 'liquids' }));
      records.cycles.push(
        cycle(unit, day + 10, 780, 785, { outcome: 'aborted', abort_text: 'steam supply' }),
      );
      const { end: _, ...running } = cycle(unit, day + 12, 780, 0, { outcome: 'running' });
      records.cycles.push(running);
      // After midnight, so of the operating day before.
      records.cycles.push(cycle(unit, day + 15, 30, 75, {}));
    }
}

/** Cleaning records as people keep them: dates without a time, strainers done after the first cycle or noted as missed, hot chambers, reasons. */
export function untidyCleanings(records: Records, units: string[]): void {
  const strainerDays = new Set<string>();
  let chambers = 0;
  for (const cleaning of records.cleanings) {
    const day = dayOf(cleaning.time);
    if (cleaning.task === 'drain_strainer') strainerDays.add(`${cleaning.unit} ${day}`);
    if (!units.includes(cleaning.unit)) continue;
    if (cleaning.task === 'drain_strainer') {
      if (day % 29 === 3) cleaning.time = instant(day, 540);
      else if (day % 29 === 19) cleaning.time_mark = 'day';
    } else if (minuteOf(cleaning.time) === 315) {
      chambers++;
      if (chambers % 6 === 0) dateOnly(cleaning);
      else if (chambers % 6 === 3) at(cleaning, day, 780, 825);
      else if (chambers % 6 === 5) cleaning.reason = 'routine';
    } else if (day % 2 === 0) cleaning.reason = 'reactive';
  }
  for (const unit of units)
    for (let day = 0; day < 400; day++)
      if (!strainerDays.has(`${unit} ${day}`) && day % 3 === 0)
        records.cleanings.push({
          ...made,
          unit,
          task: 'drain_strainer',
          time: instant(day, 345),
          state: 'missed',
        });
}

function dateOnly(cleaning: Cleaning): void {
  cleaning.time_mark = 'day';
  delete cleaning.start;
}

function at(cleaning: Cleaning, day: number, from: number, to: number): void {
  cleaning.start = instant(day, from);
  cleaning.time = instant(day, to);
}

/** A repair of three days: a qualification run inside it, two tests after it that count for nothing. */
export function repair(records: Records, unit: string, day: number): void {
  drop(
    records,
    ['cycles', 'air_removal_tests'],
    [unit],
    (of, minute) =>
      (of === day && minute >= 600) || (of > day && of < day + 3) || (of === day + 3 && minute < 900),
  );
  records.service.push({
    ...made,
    unit,
    kind: 'repair',
    from: instant(day, 600),
    to: instant(day + 3, 900),
  });
  records.cycles.push(cycle(unit, day + 2, 700, 740, { kind: 'qualification' }));
  for (const from of [910, 950]) {
    records.cycles.push(cycle(unit, day + 3, from, from + 25, { kind: 'air_removal_test' }));
    records.air_removal_tests.push({
      ...made,
      unit,
      time: instant(day + 3, from + 26),
      result: from === 910 ? 'fail' : 'pass',
    });
  }
}
