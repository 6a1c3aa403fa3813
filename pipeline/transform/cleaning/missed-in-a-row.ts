import type { Day } from '../../site/day.ts';
import type { DueTask } from './due-tasks.ts';
import type { IntervalClock } from './interval-clock.ts';

/**
 * How many due tasks in a row were missed when a day began: counted back from the last one past its grace to the last one done. Null where one
 * of them is not recorded or contradicted, or none has been due yet.
 *
 * @param tasks the unit's due tasks in order
 * @param days days of use
 */
export function missedInARow(
  tasks: readonly DueTask[],
  days: readonly Day[],
  { withGrace }: Pick<IntervalClock, 'withGrace'>,
): Map<Day, number | null> {
  const result = new Map<Day, number | null>();
  for (const day of days) {
    let count: number | null = null;
    for (let index = tasks.length - 1; index >= 0; index--) {
      const task = tasks[index]!;
      const isDone = task.done !== null && task.done < day;
      if (withGrace(task.due) >= day && !isDone) continue;
      count ??= 0;
      if (isDone) break;
      if (task.state === 'not_recorded' || task.state === 'contradicted') {
        count = null;
        break;
      }
      count++;
    }
    result.set(day, count);
  }
  return result;
}
