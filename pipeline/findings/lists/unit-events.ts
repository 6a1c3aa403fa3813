import { byCodeUnit } from '../../by-code-unit.ts';
import { type Day, formatDay } from '../../site/day.ts';
import type { Origin, TimeMark } from '../../site/records.ts';
import { formatWall } from '../../site/wall-clock.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Review } from '../review-schema.ts';

type Event = Review['units'][number]['events'][number];

/**
 * Events of a unit's history: chamber cleanings that were done (with whether they count), professional cleanings, service, failed day results. Of a
 * professional cleaning that stands in the cleaning log and among the service, the service record is kept.
 *
 * @param contradictedCounts whether records that the cycle log contradicts count as done
 */
export function unitEvents(history: UnitHistory, contradictedCounts: boolean): Event[] {
  const { clock, cleanings, service, tests } = history;
  const event = (
    what: Event['what'],
    day: Day,
    at: number,
    of: { time_mark: TimeMark; origin: Origin },
    parts: Partial<Event> = {},
  ): Event => ({
    date: formatDay(day),
    to: null,
    what,
    detail: null,
    time: of.time_mark === 'day' ? null : formatWall(clock.wallOf(at)),
    file: of.origin.file,
    sheet: of.origin.sheet,
    row: of.origin.row,
    ...parts,
  });
  const served = service.map((of) =>
    event(of.kind, clock.operatingDay(of.from), of.from, of, {
      to: of.to === undefined ? null : formatDay(clock.operatingDay(of.to)),
      detail: of.major ? 'major' : null,
    }),
  );
  const known = new Set(
    served.filter((of) => of.what === 'professional_cleaning').flatMap((of) => [of.date, of.to]),
  );
  return [
    ...served,
    ...cleanings
      .filter((of) => of.done && of.task === 'chamber')
      .map((of) =>
        event('chamber_cleaning', of.day, of.time, of, {
          detail: countsAsDone(of, contradictedCounts) ? 'counts' : 'contradicted',
        }),
      ),
    ...cleanings
      .filter((of) => of.done && of.task === 'professional' && !known.has(formatDay(of.day)))
      .map((of) => event('professional_cleaning', of.day, of.time, of)),
    ...tests
      .filter((of) => of.role === 'day_result' && of.result === 'fail')
      .map((of) => event('failed_test', of.day, of.time, of)),
  ].sort((a, b) => byCodeUnit(a.date, b.date));
}
