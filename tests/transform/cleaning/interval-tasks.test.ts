import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Policy } from '../../../pipeline/site/site-schema.ts';
import type { UseDay } from '../../../pipeline/transform/cleaning/due-tasks.ts';
import { type IntervalInput, intervalTasks } from '../../../pipeline/transform/cleaning/interval-tasks.ts';
import type { JudgedCleaning } from '../../../pipeline/transform/cleaning/judge-cleanings.ts';

// Tables made by hand from the rules of falling due (day 0 is the first day of use): no day of use, nothing due; a task not done before the next falls due gives way to it.

const WEEKLY: Policy = {
  task: 'drain_flush',
  every: 7,
  counted_in: 'calendar_days',
  grace_days: 1,
  unrecorded_means: 'missed',
};
const KEPT = { covers: () => true };

const used = (days: readonly number[], cycles = 4): UseDay[] =>
  days.map((day) => ({ day, first_cycle: day * 86_400_000, cycles }));
const from = (first: number, until: number): number[] =>
  Array.from({ length: until - first }, (_, index) => first + index);
const record = (day: number, fields: Partial<JudgedCleaning> = {}): JudgedCleaning =>
  ({ day, done: true, contradicted: false, state: 'done', ...fields }) as JudgedCleaning;

/** Tasks as "due state done", in their order. */
function tasks(
  days: readonly number[],
  done: readonly (number | JudgedCleaning)[],
  input: Partial<IntervalInput> = {},
): string[] {
  const found = intervalTasks({
    unit: 'U1',
    policy: WEEKLY,
    useDays: used(days),
    records: done.map((of) => (typeof of === 'number' ? record(of) : of)),
    alsoDue: [],
    repeats: true,
    until: (days.at(-1) ?? 0) + 1,
    contradictedCounts: false,
    log: KEPT,
    ...input,
  });
  return found.map((of) => `${of.due} ${of.state} ${of.done ?? '-'}`);
}

describe('a task that is due again after an interval', () => {
  it('falls due a week after it was done, and gives way to the next where it is not', () => {
    expect(tasks(from(0, 30), [7, 15])).toEqual(['7 done 7', '14 done 15', '22 missed -', '29 open -']);
    expect(tasks(from(0, 30), [7, 16])).toEqual(['7 done 7', '14 done_late 16', '23 missed -']);
  });

  it('waits once for the day on which a unit is used again, however many intervals ended while it was idle', () => {
    const days = [...from(0, 7), ...from(28, 36)];
    expect(tasks(days, [0, 6, 28])).toEqual(['6 done 6', '28 done 28', '35 open -']);
    // Done two days after the return, which is past the grace of one.
    expect(tasks(days, [0, 6, 30])).toEqual(['6 done 6', '28 done_late 30']);
    expect(tasks(days, [0, 6])).toEqual(['6 done 6', '28 missed -', '34 open -']);
  });

  it('is done before its day where the work was done while the unit was idle', () => {
    expect(tasks([...from(0, 7), ...from(28, 32)], [0, 6, 25])).toEqual(['6 done 6', '25 done 25']);
  });

  it('is one task with what a chamber cleaning of its day or of its grace asks for', () => {
    const days = from(0, 18);
    expect(tasks(days, [7, 14], { alsoDue: [14] })).toEqual(['7 done 7', '14 done 14']);
    // The week ends on day 14, the chamber was cleaned and the drain flushed on the next.
    expect(tasks(days, [7, 15], { alsoDue: [15] })).toEqual(['7 done 7', '15 done 15']);
    expect(tasks(days, [7], { alsoDue: [15] })).toEqual(['7 done 7', '15 missed -']);
    // The chamber was cleaned on day 13, and the flush due by the week a day later came in time for both.
    expect(tasks(days, [7, 14], { alsoDue: [13] })).toEqual(['7 done 7', '14 done 14']);
    // Flushed when the week ended, and not after the chamber cleaning of the day after.
    expect(tasks(days, [7, 14], { alsoDue: [15] })).toEqual(['7 done 7', '14 done 14', '15 missed -']);
    // Further apart than the grace they are two.
    expect(tasks(days, [7, 16], { alsoDue: [16] })).toEqual(['7 done 7', '14 missed -', '16 done 16']);
  });

  it('has no more than one task a day of use, none on a day without, whatever was done when', () => {
    const day = fc.integer({ min: 0, max: 120 });
    fc.assert(
      fc.property(
        fc.uniqueArray(day, { minLength: 1, maxLength: 60 }),
        fc.array(day, { maxLength: 20 }),
        fc.uniqueArray(day, { maxLength: 8 }),
        fc.constantFrom<Policy['counted_in']>('calendar_days', 'days_of_use', 'cycles'),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 0, max: 3 }),
        (days, done, alsoDue, counted_in, every, grace_days) => {
          const sort = (all: readonly number[]): number[] => all.toSorted((a, b) => a - b);
          const useDays = used(sort(days));
          const found = intervalTasks({
            unit: 'U1',
            policy: { ...WEEKLY, counted_in, every, grace_days },
            useDays,
            records: sort(done).map((of) => record(of)),
            alsoDue: sort(alsoDue),
            repeats: true,
            until: 121,
            contradictedCounts: false,
            log: KEPT,
          });
          const due = found.map((of) => of.due);
          expect(new Set(due).size).toBe(due.length);
          expect(due).toEqual(sort(due));
          const inUse = new Set(days);
          for (const task of found) expect(inUse.has(task.due) || task.due === task.done).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('counts days of use and cycles, and their grace, by the days on which the unit ran', () => {
    // Five days of use a week, Monday to Friday, day 0 a Monday.
    const weeks = from(0, 28).filter((day) => day % 7 < 5);
    const ofUse: Policy = { ...WEEKLY, every: 5, counted_in: 'days_of_use', grace_days: 2 };
    // The fifth day of use after day 0 is the next Monday; two days of grace end on Wednesday, day 9.
    expect(tasks(weeks, [9], { policy: ofUse })).toEqual(['7 done 9', '16 missed -', '23 open -']);
    expect(tasks(weeks, [10], { policy: ofUse })[0]).toBe('7 done_late 10');
    // Due on Friday, day 11: the grace ends on Tuesday, day 15.
    expect(tasks(weeks, [4, 15], { policy: ofUse })).toEqual(['4 done 4', '11 done 15', '22 missed -']);
    // Four cycles a day: sixteen have run before the fifth day of use.
    const ofCycles: Policy = { ...WEEKLY, every: 16, counted_in: 'cycles' };
    expect(tasks(weeks, [], { policy: ofCycles })).toEqual([
      '7 missed -',
      '11 missed -',
      '17 missed -',
      '23 missed -',
    ]);
  });

  it('counts work in the second half of the interval as the coming task, also where the record ends before it', () => {
    const ofUse: Policy = { ...WEEKLY, every: 30, counted_in: 'days_of_use' };
    for (const until of [30, 33, 60])
      expect(tasks(from(0, until), [29], { policy: ofUse })[0]).toBe('29 done 29');
    expect(tasks(from(0, 20), [3])).toEqual(['10 missed -', '17 missed -']);
    expect(tasks(from(0, 20), [4])).toEqual(['4 done 4', '11 missed -', '18 open -']);
  });

  it('is contradicted only by records of the second half of its interval, in what the policy counts', () => {
    const contradicted = (day: number) => record(day, { contradicted: true });
    const ofCycles: Policy = { ...WEEKLY, every: 80, counted_in: 'cycles' };
    // Eighty cycles are twenty days: from the tenth day on the record is for the coming task.
    for (const policy of [ofCycles, { ...WEEKLY, every: 20 }]) {
      expect(tasks(from(0, 40), [contradicted(3)], { policy })[0]).toMatch(/ missed -$/);
      expect(tasks(from(0, 40), [contradicted(12)], { policy })[0]).toMatch(/ contradicted -$/);
    }
  });

  it('is not recorded where a record says that it was not due, and missed where one says so', () => {
    expect(tasks(from(0, 10), [record(6, { done: false, state: 'not_due' })])).toEqual(['7 not_recorded -']);
    const policy: Policy = { ...WEEKLY, unrecorded_means: 'not_recorded' };
    expect(tasks(from(0, 10), [record(6, { done: false, state: 'missed' })], { policy })).toEqual([
      '7 missed -',
    ]);
  });
});
