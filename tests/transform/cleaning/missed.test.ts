import { describe, expect, it } from 'vitest';
import type { DueTask } from '../../../pipeline/transform/cleaning/due-tasks.ts';
import { missedInARow } from '../../../pipeline/transform/cleaning/missed-in-a-row.ts';
import { missedInWindow } from '../../../pipeline/transform/cleaning/missed-in-window.ts';

// Tables made by hand.

const task = (due: number, state: DueTask['state'], done: number | null = null): DueTask => ({
  unit: 'U1',
  task: 'drain_flush',
  due,
  state,
  done,
  days_late: done === null ? null : done - due,
});
const days = (first: number, until: number): number[] =>
  Array.from({ length: until - first }, (_, index) => first + index);

describe('tasks missed in a row', () => {
  const withGrace = (due: number): number => due + 1;
  const tasks = [
    task(7, 'done', 8),
    task(14, 'missed'),
    task(21, 'missed'),
    task(28, 'done_late', 30),
    task(35, 'not_recorded'),
    task(42, 'missed'),
  ];
  const on = (day: number) => missedInARow(tasks, [day], { withGrace }).get(day);

  it('are counted back from the last past its grace to the last done, as the day began', () => {
    expect([7, 8].map(on)).toEqual([null, null]);
    // Done on day 8: known from day 9 on.
    expect([9, 15, 16, 22, 23, 29].map(on)).toEqual([0, 0, 1, 1, 2, 2]);
    // Late past its grace on day 30, as the work of that day was not yet done; done from day 31 on.
    expect([30, 31, 36].map(on)).toEqual([3, 0, 0]);
  });

  it('are not known past one of which nothing is known', () => {
    expect([37, 43, 44].map(on)).toEqual([null, null, null]);
  });
});

describe('tasks missed in the last days of use', () => {
  it('are counted with the day’s own, which is missed until it is done', () => {
    const daily = [
      task(0, 'done', 0),
      task(1, 'missed'),
      task(2, 'done_late', 2),
      task(3, 'done', 3),
      task(4, 'done', 4),
      task(5, 'not_recorded'),
    ];
    const counts = missedInWindow(daily, days(0, 6), 3);
    // Two days short of a window; then the day's own late one counts on its day only.
    expect([...counts.values()]).toEqual([null, null, 2, 1, 0, null]);
  });

  it('look at days of use, also where the task is not due on each of them', () => {
    const everyThird = [task(3, 'missed'), task(8, 'done', 8)];
    const counts = missedInWindow(everyThird, [0, 1, 2, 3, 7, 8, 9, 10], 3);
    expect([...counts.values()]).toEqual([null, null, 0, 1, 1, 1, 0, 0]);
  });
});
