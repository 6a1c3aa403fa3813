import type { Service } from '../../site/records.ts';
import type { WallClock } from '../../site/wall-clock.ts';
import { type PossibleTime, possibleTime } from '../possible-time.ts';

/**
 * When a service may have ended. An end by date is any time of its operating day, and one that is not recorded any time of the day on which the service began. A
 * record says of its begin alone whether it is a date: its end is one too where it stands at the very opening of an operating day.
 */
export function possibleEnd(
  { from, to, time_mark }: Pick<Service, 'from' | 'to' | 'time_mark'>,
  clock: WallClock,
): PossibleTime {
  if (to === undefined) return { earliest: from, latest: clock.opensAt(clock.operatingDay(from) + 1) - 1 };
  const byDate = time_mark === 'day' && to === clock.opensAt(clock.operatingDay(to));
  return possibleTime(to, byDate ? 'day' : 'time', clock);
}
