import { describe, expect, it } from 'vitest';
import { formatDay, parseDay } from '../../../pipeline/site/day.ts';
import { transform } from '../../../pipeline/transform/transform.ts';
import { cleaning, ordinaryDay, recordsOf, siteOf } from '../build.ts';

const MONDAY = parseDay('2025-03-03')!;
const date = (day: number): string => formatDay(MONDAY + day);
/** Four weeks, Monday to Friday. */
const WEEKDAYS = Array.from({ length: 28 }, (_, day) => day).filter((day) => day % 7 < 5);

function history(yaml: string, cleanings: ReturnType<typeof cleaning>[]) {
  const days = WEEKDAYS.map((day) => ordinaryDay(date(day)));
  const records = recordsOf({
    cycles: days.flatMap((of) => of.cycles),
    air_removal_tests: days.flatMap((of) => of.tests),
    cleanings,
  });
  return transform(siteOf(yaml), records, MONDAY + 28).histories[0]!;
}

describe('the cleaning of a unit', () => {
  it('asks for the strainer each day of use, and for nothing at weekends, however the site says "each day"', () => {
    const done = WEEKDAYS.map((day) => cleaning('drain_strainer', `${date(day)} 05:30`));
    for (const counted of ['', ', counted_in: days_of_use']) {
      const { cleaning: of } = history(
        `cleaning: [{ task: drain_strainer, every: 1${counted}, unrecorded_means: missed }]`,
        done,
      );
      const due = of.due.filter((task) => task.task === 'drain_strainer');
      expect(due.map((task) => task.due - MONDAY)).toEqual(WEEKDAYS);
      expect(new Set(due.map((task) => task.state))).toEqual(new Set(['done']));
      expect(new Set([...of.strainersMissed.values()].slice(6))).toEqual(new Set([0]));
    }
  });

  it('takes a record that says "not due" on a day of use neither for done nor for missed', () => {
    const { cleaning: of } = history(
      'cleaning: [{ task: drain_strainer, every: 1, unrecorded_means: missed }]',
      [
        cleaning('drain_strainer', `${date(0)} 05:30`),
        cleaning('drain_strainer', `${date(1)} 05:30`, { state: 'not_due' }),
        cleaning('drain_strainer', `${date(3)} 05:30`),
      ],
    );
    const states = of.due.filter((task) => task.task === 'drain_strainer').map((task) => task.state);
    expect(states.slice(0, 4)).toEqual(['done', 'not_recorded', 'missed', 'done']);
  });

  it('asks for a flush after a chamber cleaning on any unit, and reads it as the site says of flushes', () => {
    const chamber = [
      cleaning('chamber', `${date(1)} 15:00`),
      cleaning('drain_strainer', `${date(25)} 05:30`),
    ];
    const flushes = (yaml: string) =>
      history(yaml, [...chamber, cleaning('drain_flush', `${date(24)} 15:00`)])
        .cleaning.due.filter((task) => task.task === 'drain_flush')
        .map((task) => `${task.due - MONDAY} ${task.state}`);
    const liquids = 'units: [{ id: U1 }, { id: U2, liquids: true }]\n';
    expect(
      flushes(`${liquids}cleaning: [{ task: drain_flush, every: 7, unrecorded_means: missed }]`),
    ).toEqual(['1 done_late']);
    const without = history(
      `${liquids}cleaning: [{ task: drain_flush, every: 7, unrecorded_means: missed }]`,
      [...chamber, cleaning('drain_flush', `${date(0)} 15:00`)],
    ).cleaning.due.filter((task) => task.task === 'drain_flush');
    expect(without.map((task) => `${task.due - MONDAY} ${task.state}`)).toEqual(['1 missed']);
  });
});
