import type { Day } from '../../site/day.ts';
import type { DueTask } from './due-tasks.ts';

/**
 * How often a task was missed in the last days of use, the present one included: missed before it, not done before its own first
 * cycle on it. Null where one of them is not recorded, or fewer days of use have come.
 *
 * @param tasks the unit's due tasks in order, none on a day without use
 * @param days days of use in order
 * @param window days of use that are looked at, at least 1
 */
export function missedInWindow(
  tasks: readonly DueTask[],
  days: readonly Day[],
  window: number,
): Map<Day, number | null> {
  const result = new Map<Day, number | null>();
  let [from, to] = [0, 0];
  for (const [index, day] of days.entries()) {
    const first = days[index - window + 1];
    while (to < tasks.length && tasks[to]!.due <= day) to++;
    while (first !== undefined && from < to && tasks[from]!.due < first) from++;
    const last = tasks.slice(from, to);
    const unknown = first === undefined || last.some((of) => of.state === 'not_recorded');
    const missed = last.filter(
      (of) => of.state === 'missed' || (of.due === day && of.state === 'done_late'),
    ).length;
    result.set(day, unknown ? null : missed);
  }
  return result;
}
