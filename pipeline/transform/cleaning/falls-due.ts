import type { Day } from '../../site/day.ts';
import type { IntervalClock } from './interval-clock.ts';

/** A day on which a task falls due. */
export interface FallsDue {
  /** First day of use on or after `over`; Infinity where none has come. */
  due: Day;
  /** Day on which the interval was over, or on which something else made the task due. */
  over: Day;
  /** Work from here on is for this due day: half-way to it, or the day that made the task due. May lie between two days. */
  from: Day;
  /** Whether something else than the interval made it due. */
  byEvent: boolean;
}

/**
 * The days on which a task falls due between a cleaning and an end, in order, each a day of use: of what ends while the unit is idle, one task is waiting when it is used again. Where the
 * interval and something else fall due within the grace of one another, the later takes the place of both: one piece of work is what is asked.
 *
 * @param anchor day of the cleaning
 * @param events other days that make the task due, in order
 * @param repeats false where only events make it due
 * @param isWithin whether a day of `over` and `due` lies before the end; once false, false for all later ones
 */
export function fallsDue(
  clock: IntervalClock,
  anchor: Day,
  events: readonly Day[],
  repeats: boolean,
  isWithin: (over: Day, due: Day) => boolean,
): FallsDue[] {
  const days: FallsDue[] = [];
  let [intervals, event] = [0, 0];
  for (;;) {
    const byInterval = repeats ? clock.reached(anchor, intervals + 1) : Number.POSITIVE_INFINITY;
    const byEvent = events[event] ?? Number.POSITIVE_INFINITY;
    const over = Math.min(byInterval, byEvent);
    const due = clock.nextUse(over);
    if (over === Number.POSITIVE_INFINITY || !isWithin(over, due)) return days;
    const isEvent = byEvent <= byInterval;
    const from = isEvent ? over : clock.reached(anchor, intervals + 0.5);
    if (isEvent) event++;
    else intervals++;
    const last = days.at(-1);
    if (last?.due === due) {
      last.byEvent ||= isEvent;
      last.from = Math.min(last.from, from);
    } else if (last && last.byEvent !== isEvent && due <= clock.withGrace(last.due)) {
      days[days.length - 1] = { ...last, due, byEvent: true, from: Math.min(last.from, from) };
    } else days.push({ due, over, from, byEvent: isEvent });
  }
}
