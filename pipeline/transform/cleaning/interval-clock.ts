import { firstFrom } from '../../first-from.ts';
import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import type { UseDay } from './due-tasks.ts';

/** The clock of a task that is due again after an interval, in what the policy counts. */
export interface IntervalClock {
  /** Day on which `times` intervals after the anchor are over, whole ones or halves; Infinity where the record does not reach so far. Half a number of calendar days may end between two days. */
  reached(anchor: Day, times: number): Day;
  /** First day of use on or after a day; Infinity where none has come. */
  nextUse(day: Day): Day;
  /** Last day on which a task that fell due on a day of use is not yet late. */
  withGrace(due: Day): Day;
}

/**
 * Calendar days: anchor + interval. Days of use: the interval-th day of use after the anchor. Cycles: the first day of use before which so many cycles
 * have run since the anchor's day. The grace counts the same, and calendar days where cycles are counted.
 *
 * @param useDays days of use in order
 */
export function intervalClock(policy: Policy, useDays: readonly UseDay[]): IntervalClock {
  const days = useDays.map((use) => use.day);
  const cyclesBefore = [0];
  for (const use of useDays) cyclesBefore.push(cyclesBefore.at(-1)! + use.cycles);
  const firstAfter = (day: Day): number => firstFrom(days, (use) => use > day);
  const nextUse = (day: Day): Day => days[firstFrom(days, (use) => use >= day)] ?? Number.POSITIVE_INFINITY;
  const reached = (anchor: Day, times: number): Day => {
    const wanted = policy.every * times;
    if (policy.counted_in === 'calendar_days') return anchor + wanted;
    const first = firstAfter(anchor);
    if (policy.counted_in === 'days_of_use')
      return days[first + Math.ceil(wanted) - 1] ?? Number.POSITIVE_INFINITY;
    const since = cyclesBefore[first]!;
    return (
      days[firstFrom(cyclesBefore, (before) => before >= since + wanted, first)] ?? Number.POSITIVE_INFINITY
    );
  };
  const withGrace = (due: Day): Day =>
    policy.counted_in === 'days_of_use' && policy.grace_days > 0
      ? (days[firstAfter(due) + policy.grace_days - 1] ?? Number.POSITIVE_INFINITY)
      : due + policy.grace_days;
  return { reached, nextUse, withGrace };
}
