import { byCodeUnit } from '../../by-code-unit.ts';
import { clocksOfUnits } from '../../site/clocks-of-units.ts';
import { formatDay } from '../../site/day.ts';
import type { Action } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import type { Period } from '../period.ts';

/** An action of a unit that the site's list has as done. */
export interface ActionDone {
  unit: string;
  action: string;
  /** Operating day, yyyy-MM-dd. */
  done_on: string;
}

/** Actions of single units that were done on a stated day up to the end of the month, in the order of that day. */
export function actionsDone(site: Site, actions: readonly Action[], { until }: Period): ActionDone[] {
  const clockOf = clocksOfUnits(site);
  return actions
    .flatMap(({ unit, action, state, done_on }) => {
      if (unit === undefined || done_on === undefined || state === 'open' || state === 'dropped') return [];
      const day = clockOf(unit).operatingDay(done_on);
      return day < until ? [{ unit, action, done_on: formatDay(day) }] : [];
    })
    .sort((a, b) => byCodeUnit(a.done_on, b.done_on));
}
