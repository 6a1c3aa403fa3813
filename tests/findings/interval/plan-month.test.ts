import { describe, expect, it } from 'vitest';
import { intervalCase } from '../../../pipeline/findings/interval/interval-case.ts';
import { unitAhead } from '../../../pipeline/findings/next-month/next-month.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { caseOf, every, FIRST_DAY, recordsOf, type UnitPlan } from './fleet.ts';

/** Units in use from 06:00 to 17:00 on each day but Sunday, cleaned every 28 days. */
const units = (count: number, days = 365): UnitPlan[] =>
  Array.from({ length: count }, (_, index) => ({
    unit: `U${index + 1}`,
    days,
    cleanings: every(28, 2 + 3 * index, days - 20).map((day) => ({ day })),
    fails: every(31, 9 + index, days),
    production: every(60, 480, 990),
    idle: every(7, 6, days),
  }));
const plan = (list: UnitPlan[], site = '') => caseOf(list, site).found.schedule;
const HOUR = 3_600_000;

describe('when to clean', () => {
  it('finds windows outside the hours in which a unit runs, with work in hours of work', () => {
    const schedule = plan(units(3));
    const window = schedule.units[0]!.windows[0]!;
    expect(window.displaced).toBe(0);
    // Cycles start from 06:00 on: work from the hour before on, so that a unit that cooled overnight is ready in the morning.
    for (const { windows } of schedule.units)
      for (const { work_from } of windows) expect(work_from >= '05:00' && work_from < '17:00').toBe(true);
    const monday = schedule.units[0]!.in_use.slice(0, 24);
    expect(monday[3]).toBe(0);
    expect(monday[8]).toBe(1);
    expect(schedule.sites[0]!.worked.slice(0, 24).indexOf(1)).toBe(5);
    expect(schedule.sites[0]!.needed[8]).toBe(3);
  });

  it('takes the hours of the site file, and displaces cycles where they leave no other choice', () => {
    const planning = 'interval: { planning: { work_from: "10:00", work_to: "16:00", units_in_use: 1 } }';
    const schedule = plan(units(3), planning);
    expect(schedule.sites[0]).toMatchObject({ worked_origin: 'site', needed_origin: 'site' });
    const weekdays = schedule.units[0]!.windows.filter((window) => window.weekday < 7);
    expect(weekdays.length).toBe(6);
    for (const { work_from, back, displaced } of weekdays) {
      expect(work_from >= '10:00' && back <= '16:00').toBe(true);
      expect(displaced).toBeGreaterThan(0);
    }
    // On Sunday nothing runs, so that it comes first.
    expect(schedule.units[0]!.windows[0]).toMatchObject({ weekday: 7, displaced: 0 });
    // By hand: work at 10:00 with cool-down from 05:30 and 1.5 h of work and return touches the cycles at 08:00 to 11:00.
    const slow = weekdays.find((window) => window.work_from === '10:00');
    if (slow) expect(slow.displaced).toBe(4);
  });

  it('keeps the units that must stay in use', () => {
    const none = plan(units(2), 'interval: { planning: { units_in_use: 2 } }');
    expect(none.units.every((unit) => unit.windows.length === 0 && unit.no_window === 'units_needed')).toBe(
      true,
    );
    expect(none.proposals).toEqual([]);
    expect(none.not_placed.length).toBeGreaterThan(0);
    expect(none.not_placed[0]!.why).toBe('units_needed');

    const one = plan(units(4), 'interval: { planning: { units_in_use: 3 } }');
    for (const [index, a] of one.proposals.entries())
      for (const b of one.proposals.slice(index + 1))
        expect(a.back_at <= b.out_at || b.back_at <= a.out_at, `${a.unit} ${a.out}, ${b.unit} ${b.out}`).toBe(
          true,
        );
    expect(one.proposals.length).toBeGreaterThanOrEqual(4);
  });

  it('takes as many as needed those of the median week, rounded up to a whole unit', () => {
    // Four units in the first of two weeks, one or two in the second: 2.5 of them in the median, or 3.
    const needed = (inSecond: number) =>
      plan(
        units(4, 364).map((unit, index) => ({
          ...unit,
          idle: index < inSecond ? unit.idle! : [...unit.idle!, ...every(1, 357, 364)],
        })),
        'interval: { planning: { weeks: 2 } }',
      ).sites[0]!.needed[8];
    expect([needed(1), needed(2), needed(4)]).toEqual([3, 3, 4]);
  });

  it('proposes never after the due day, in the week before it, and again after the interval', () => {
    const schedule = plan(units(3));
    expect(schedule.month).toBe('2026-01');
    const due = schedule.proposals.filter((proposal) => proposal.state === 'due');
    expect(due.length).toBeGreaterThan(0);
    for (const proposal of due) {
      expect(proposal.work.slice(0, 10) <= proposal.due!, proposal.work).toBe(true);
      expect(Date.parse(proposal.due!) - Date.parse(proposal.work.slice(0, 10))).toBeLessThanOrEqual(
        7 * 24 * HOUR,
      );
    }
    // The record ends on 5 January in the evening: U1, due on the 7th, can't be decided before.
    expect(schedule.earliest).toBe('2026-01-08');
    expect(schedule.proposals.map(({ unit, state }) => `${unit} ${state}`)).toContain('U1 due_before_plan');
    for (const proposal of schedule.proposals) {
      expect(proposal.out.slice(0, 10) >= schedule.earliest, proposal.out).toBe(true);
      expect(proposal.work_at - proposal.out_at).toBe(schedule.cool_down_hours * HOUR);
      expect(proposal.work_to_at - proposal.work_at).toBeCloseTo(schedule.work_hours * HOUR, 0);
      expect(proposal.back_at - proposal.work_to_at).toBeCloseTo(schedule.return_hours * HOUR, 0);
    }
  });

  it('puts overdue units into the first week, and says where no cleaning is recorded', () => {
    const list = units(3);
    const late = plan([
      { ...list[0]!, cleanings: [{ day: 2 }, { day: 30 }] },
      { ...list[1]!, cleanings: [] },
      list[2]!,
    ]);
    const of = (unit: string) => late.proposals.find((proposal) => proposal.unit === unit)!;
    expect(of('U1').state).toBe('overdue');
    expect(of('U2')).toMatchObject({ state: 'never_recorded', due: null });
    expect(of('U1').work.slice(0, 10) <= '2026-01-12').toBe(true);
  });

  it('has one chamber worked at a time at a site, and says where no hour is left', () => {
    const sameDay = units(6).map((unit) => ({ ...unit, cleanings: [{ day: 310 }] }));
    const overlaps = ({ proposals }: ReturnType<typeof plan>) =>
      proposals.flatMap((a, index) =>
        proposals.slice(index + 1).filter((b) => a.work_at < b.work_to_at && b.work_at < a.work_to_at),
      );
    const free = plan(sameDay, 'interval: { planning: { units_in_use: 0 } }');
    expect(free.proposals.filter(({ state }) => state === 'overdue')).toHaveLength(6);
    expect(overlaps(free)).toEqual([]);
    // One hour and a half of work a day: one cleaning each, on seven days at most.
    const hours = 'interval: { planning: { units_in_use: 0, work_from: "09:00", work_to: "11:00" } }';
    const narrow = plan(
      units(9).map((unit) => ({ ...unit, cleanings: [{ day: 310 }] })),
      hours,
    );
    expect(overlaps(narrow)).toEqual([]);
    expect(narrow.not_placed.map(({ why }) => why)).toContain('work_taken');
  });

  it('has the same due day as the tasks of the next month', () => {
    for (const counted of ['calendar_days', 'days_of_use', 'cycles'] as const) {
      const every = { calendar_days: 28, days_of_use: 24, cycles: 240 }[counted];
      // Until 1 January. In calendar days U1 was due on a Sunday, on which it is not in use.
      const [first, ...rest] = units(3, 360);
      const made = caseOf(
        [{ ...first!, cleanings: [{ day: 321 }] }, ...rest],
        `cleaning: [{ task: chamber, every: ${every}, counted_in: ${counted} }]`,
      );
      const until = FIRST_DAY + 360;
      const { histories } = made.transformed;
      const dueOf = (wanted: string) =>
        made.found.schedule.proposals.find(({ unit }) => unit === wanted)?.due;
      for (const history of histories) {
        const ahead = unitAhead(made.file, history, { month: '2025-12', from: until - 31, until });
        const task = ahead.tasks.find((of) => of.task === 'chamber')!;
        expect(dueOf(history.unit), `${history.unit}, ${counted}`).toBe(task.due);
      }
      if (counted === 'calendar_days') expect(dueOf('U1')).toBe('2025-12-21');
    }
  });

  it('keeps wall times where clocks change: instants follow the zone', () => {
    // St. John's: clocks went back on 2 November 2025 at 02:00, from -02:30 to -03:30.
    const days = 299;
    const list = units(3, days).map((unit) => ({ ...unit, cleanings: [{ day: 200 }, { day: days - 15 }] }));
    const file = readSiteFile(
      'sites: [{ id: s, zone: America/St_Johns }]\ncleaning: [{ task: chamber, every: 28 }]',
      'site',
    );
    const records = recordsOf(list);
    // The same wall times: moved by the offset of summer time (noon of the last day lies in it).
    const offset = 2.5 * HOUR;
    for (const cycle of records.cycles) {
      cycle.start += offset;
      cycle.end! += offset;
    }
    for (const cleaning of records.cleanings) {
      cleaning.time += offset;
      cleaning.start! += offset;
    }
    for (const test of records.air_removal_tests) test.time += offset;
    const until = FIRST_DAY + days;
    const { histories, panel } = transform(file, records, until);
    const { schedule } = intervalCase(histories, panel, file, records, until);
    expect(schedule.month).toBe('2025-11');
    expect(schedule.proposals.length).toBeGreaterThan(0);
    for (const proposal of schedule.proposals) {
      const hours = proposal.work >= '2025-11-02 03' ? 3.5 : 2.5;
      expect(proposal.work_at).toBe(Date.parse(`${proposal.work.replace(' ', 'T')}:00Z`) + hours * HOUR);
    }
  });

  it('says why nothing is proposed', () => {
    expect(plan(units(2, 10)).not_planned).toBe('record_too_short');
    expect(plan(units(2), 'cleaning: []\ninterval: {}').not_planned).not.toBe('no_units_in_use');
    const noInterval = plan([{ ...units(1)[0]!, cleanings: [], fails: [] }], 'cleaning: []');
    expect(noInterval.not_planned).toBe('no_interval');
    expect(noInterval.units[0]!.in_use.some((share) => share > 0)).toBe(true);
  });
});
