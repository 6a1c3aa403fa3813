import { describe, expect, it } from 'vitest';
import { cleaningSpells, type Spell } from '../../../pipeline/findings/interval/spells.ts';
import { unitCourse } from '../../../pipeline/findings/shares/unit-course.ts';
import { rowsOfUnits } from '../../../pipeline/rows-of-units.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import { caseOf, FIRST_DAY, type UnitPlan } from './fleet.ts';

const site = readSiteFile(
  'sites: [{ id: s, zone: Etc/UTC }]\nunits: [{ id: U1 }]\ncleaning: [{ task: chamber, every: 28, unrecorded_means: missed }]',
  'site',
);
const spellsOf = (plan: Omit<UnitPlan, 'unit'>, reading: 'site' | 'all_records' = 'site') => {
  const { transformed } = caseOf([{ unit: 'U1', ...plan }]);
  const units = transformed.histories.map((history) => unitCourse(history, site, transformed.until));
  return cleaningSpells(units, rowsOfUnits(transformed.panel), site, reading);
};
/** Days at risk of a spell, one object each. */
const daysOf = ({ from: first, days: { columns, from, to } }: Spell) =>
  Array.from({ length: to - from }, (_, index) => ({
    day: first + columns.calendar_days[from + index]!,
    calendar_days: columns.calendar_days[from + index]!,
    days_of_use: columns.days_of_use[from + index]!,
    cycles: columns.cycles[from + index]!,
    failed: columns.failed[from + index]!,
  }));
const summary = (plan: Omit<UnitPlan, 'unit'>, reading: 'site' | 'all_records' = 'site') =>
  spellsOf(plan, reading).map((spell) => [spell.from - FIRST_DAY, spell.ended_by, daysOf(spell).length]);

describe('cleaning spells', () => {
  it('run from one routine cleaning to the next; days before the first belong to none', () => {
    const plan = { days: 30, cleanings: [{ day: 5 }, { day: 20 }] };
    expect(summary(plan)).toEqual([
      [5, 'routine_cleaning', 15],
      [20, 'record_end', 10],
    ]);
    const [first] = spellsOf(plan);
    // Cleaned at 05:15 before the first cycle at 06:00: that day stands at clock 0 on all three clocks.
    expect(daysOf(first!)[0]).toMatchObject({
      day: FIRST_DAY + 5,
      calendar_days: 0,
      days_of_use: 0,
      cycles: 0,
    });
    // Four cycles a day, and a day without use moves the calendar alone.
    const idle = spellsOf({ ...plan, idle: [7] })[0]!;
    expect(daysOf(idle)[2]).toMatchObject({
      day: FIRST_DAY + 8,
      calendar_days: 3,
      days_of_use: 2,
      cycles: 8,
    });
    expect(idle.passed).toEqual({ calendar_days: 15, days_of_use: 14, cycles: 56 });
  });

  it('end at a reactive cleaning, which starts none', () => {
    const plan = {
      days: 30,
      fails: [12],
      cleanings: [{ day: 5 }, { day: 12, how: 'reactive' as const }, { day: 22 }],
    };
    const spells = spellsOf(plan);
    expect(spells.map((spell) => [spell.from - FIRST_DAY, spell.ended_by])).toEqual([
      [5, 'reactive_cleaning'],
      [22, 'record_end'],
    ]);
    // The failed test of the morning belongs to the spell that the afternoon's cleaning ends.
    expect(daysOf(spells[0]!).at(-1)).toMatchObject({ day: FIRST_DAY + 12, failed: 1 });
  });

  it('take a date alone on the day of a failed test as reactive', () => {
    const plan = (fails: number[]) => ({
      days: 20,
      fails,
      cleanings: [{ day: 2 }, { day: 9, how: 'date' as const }],
    });
    expect(summary(plan([9])).map(([, end]) => end)).toEqual(['reactive_cleaning']);
    expect(summary(plan([]))).toEqual([
      [2, 'routine_cleaning', 8],
      [9, 'record_end', 10],
    ]);
  });

  it('run through a record that the cycle log contradicts, but not in the other reading', () => {
    const plan = { days: 30, cleanings: [{ day: 5 }, { day: 15, how: 'running' as const }] };
    expect(summary(plan)).toEqual([[5, 'record_end', 25]]);
    expect(summary(plan, 'all_records').map(([from, end]) => [from, end])).toEqual([
      [5, 'routine_cleaning'],
      [15, 'record_end'],
    ]);
  });

  it('end where a repair opens an era, and wait for the next cleaning', () => {
    const spells = spellsOf({ days: 40, cleanings: [{ day: 5 }, { day: 25 }], repairs: [15] });
    expect(spells.map((spell) => [spell.from - FIRST_DAY, spell.ended_by, spell.era])).toEqual([
      [5, 'era_end', 0],
      [25, 'record_end', 1],
    ]);
  });

  it('end where the cleaning log has a gap', () => {
    // The log reaches two intervals (56 days) past its last record.
    const spells = spellsOf({ days: 120, cleanings: [{ day: 5 }] });
    expect(spells).toHaveLength(1);
    expect(spells[0]).toMatchObject({ ended_by: 'log_gap' });
    expect(daysOf(spells[0]!).at(-1)!.day).toBe(FIRST_DAY + 61);
  });

  it('count one failure an episode, at risk alone', () => {
    const [spell] = spellsOf({ days: 20, fails: [8, 9, 10], cleanings: [{ day: 2 }] });
    expect(
      daysOf(spell!)
        .filter((day) => day.failed)
        .map((day) => day.day - FIRST_DAY),
    ).toEqual([8]);
    // Days 9, 10 and the passing day 11 lie inside the episode.
    expect(daysOf(spell!).map((day) => day.day - FIRST_DAY)).not.toContain(11);
    expect(daysOf(spell!).map((day) => day.day - FIRST_DAY)).toContain(12);
  });
});
