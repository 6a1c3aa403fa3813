import { byCodeUnit } from '../../by-code-unit.ts';
import { clocksOfUnits } from '../../site/clocks-of-units.ts';
import { type Day, formatDay } from '../../site/day.ts';
import type { Action } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import type { Period } from '../period.ts';
import { ACTION_STANDINGS, type ActionStanding, type Actions } from './actions-schema.ts';

/**
 * Actions as they stood at the end of the month. An action decided after the month is left out; one done after it is open or late, with the day beside it, so
 * that the month can be reviewed again. What the list says of an action rules over its days: "done" with no day is done, "open" with a day is not.
 * Actions that were dropped with no day are shown in the month in which they were decided.
 */
export function actionsOfMonth(site: Site, actions: readonly Action[], period: Period): Actions {
  const clockOf = clocksOfUnits(site);
  const { from, until } = period;
  let settled_before = 0;
  const list: Actions['list'] = [];
  for (const action of actions) {
    const clock = clockOf(action.unit ?? '');
    const day = (at: number | undefined) => (at === undefined ? null : clock.operatingDay(at));
    const decided = clock.operatingDay(action.time);
    if (decided >= until) continue;
    const due = day(action.due);
    const done = action.state === 'open' ? null : day(action.done_on);
    const standing = standingOf(action.state, due, done, until);
    const settled = standing === 'done' || standing === 'done_late' || standing === 'dropped';
    if (settled && decided < from && (done === null || done < from)) {
      settled_before++;
      continue;
    }
    const ended = settled ? done : until - 1;
    const isLate = standing === 'late' || standing === 'done_late';
    list.push({
      decided: formatDay(decided),
      action: action.action,
      unit: action.unit ?? null,
      role: action.role ?? null,
      due: due === null ? null : formatDay(due),
      done_on: done === null ? null : formatDay(done),
      standing,
      days_late: isLate && due !== null && ended !== null ? ended - due : null,
      decided_in_month: decided >= from,
      file: action.origin.file,
      sheet: action.origin.sheet,
      row: action.origin.row,
    });
  }
  const rank = (of: Actions['list'][number]) => ACTION_STANDINGS.indexOf(of.standing);
  list.sort(
    (a, b) =>
      rank(a) - rank(b) ||
      byCodeUnit(a.due ?? '9999', b.due ?? '9999') ||
      byCodeUnit(a.decided, b.decided) ||
      byCodeUnit(a.file, b.file) ||
      a.row - b.row,
  );
  return { kept: actions.length > 0, list, settled_before };
}

function standingOf(state: Action['state'], due: Day | null, done: Day | null, until: Day): ActionStanding {
  if (state === 'dropped') return 'dropped';
  if (done !== null && done < until) return due !== null && done > due ? 'done_late' : 'done';
  if (state === 'done' && done === null) return 'done';
  return due !== null && due < until - 1 ? 'late' : 'open';
}
