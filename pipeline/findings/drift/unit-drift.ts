import { type Day, formatDay } from '../../site/day.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { causePattern, type ProbeMove } from './cause-pattern.ts';
import type { DriftState, ProbeDrift, UnitDrift } from './drift-schema.ts';
import type { Probe } from './probes.ts';

/** States, most pressing first. */
const PRESSING: readonly DriftState[] = ['near_limit', 'moving', 'stepped', 'steady', 'not_enough_data'];

/**
 * Puts a unit's probes in the era in force together.
 *
 * @param probes of the unit, in all eras
 * @param events of the unit, see {@link driftEvents}
 */
export function unitDrift(
  { unit, site }: { unit: string; site: string },
  probes: readonly ProbeDrift[],
  events: UnitDrift['events'],
): UnitDrift {
  const now = probes.filter((of) => of.era.current);
  const moves = new Map(
    now.flatMap((of): [Probe, ProbeMove][] =>
      of.state === 'not_enough_data' ? [] : [[of.probe, moveOf(of)]],
    ),
  );
  const days = now.flatMap((of) => of.days_to_limit?.days ?? []);
  const cause = causePattern(moves);
  return {
    unit,
    site,
    state: PRESSING.find((state) => now.some((of) => of.state === state)) ?? 'not_enough_data',
    days_to_limit: days.length === 0 ? null : Math.min(...days),
    saw_tooth: now.some((of) => of.saw_tooth !== null),
    cause: cause && {
      ...cause,
      probes: [...moves].filter(([, move]) => move !== 'still').map(([probe]) => probe),
    },
    events,
  };
}

/** Units by days to the limit, then by state, then as the site file has them. */
export function inOrder(units: readonly UnitDrift[]): UnitDrift[] {
  return units.toSorted(
    (a, b) =>
      (a.days_to_limit ?? Number.MAX_SAFE_INTEGER) - (b.days_to_limit ?? Number.MAX_SAFE_INTEGER) ||
      PRESSING.indexOf(a.state) - PRESSING.indexOf(b.state) ||
      Number(b.saw_tooth) - Number(a.saw_tooth),
  );
}

/** A saw-tooth counts as a movement of its own direction: between cleanings it is one. */
function moveOf(of: ProbeDrift): ProbeMove {
  if (of.direction !== null) return of.direction;
  if (of.saw_tooth) return of.saw_tooth.fall < 0 ? 'up' : 'down';
  return 'still';
}

/** What happened to a unit that a movement may go with, in order of time. */
export function driftEvents(history: UnitHistory, until: Day): UnitDrift['events'] {
  const events: { day: Day; kind: UnitDrift['events'][number]['kind'] }[] = [];
  for (const test of history.tests)
    if (test.role === 'day_result' && test.result === 'fail')
      events.push({ day: test.day, kind: 'failed_test' });
  for (const cleaning of history.cleanings) {
    const { task, day } = cleaning;
    if (!cleaning.done || cleaning.contradicted) continue;
    if (task === 'chamber' || task === 'drain_flush') events.push({ day, kind: task });
  }
  for (const era of history.eras) if (era.opened_by) events.push({ day: era.from, kind: era.opened_by });
  return events
    .filter((of) => of.day < until)
    .sort((a, b) => a.day - b.day)
    .map(({ day, kind }) => ({ date: formatDay(day), kind }));
}
