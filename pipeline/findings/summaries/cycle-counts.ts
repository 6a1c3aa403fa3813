import type { Day } from '../../site/day.ts';
import { ABORT_CLASSES, CYCLE_KINDS } from '../../site/vocabulary.ts';
import { isProduction } from '../../transform/cycles/class-cycles.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Review } from '../review-schema.ts';
import { eventRate } from './rate.ts';

type CycleCounts = Review['units'][number]['cycles'][number];

/** Cycles of a unit between two operating days (the second left out). */
export function cycleCounts(
  history: UnitHistory,
  span: 'month' | 'record',
  from: Day,
  until: Day,
  level: number,
): CycleCounts {
  const cycles = history.cycles.filter((cycle) => cycle.day >= from && cycle.day < until);
  const standing = (name: string) => cycles.filter((cycle) => cycle.standing === name).length;
  const counted = cycles.filter((cycle) => cycle.standing === 'completed' || cycle.standing === 'abort');
  const production = counted.filter(isProduction);
  const aborts = production.filter((cycle) => cycle.standing === 'abort');
  const byClass = ABORT_CLASSES.map((name): [string, number] => [
    name,
    aborts.filter((cycle) => cycle.abort_class === name).length,
  ]);
  return {
    span,
    by_kind: Object.fromEntries(
      CYCLE_KINDS.map((kind) => [kind, counted.filter((cycle) => cycle.kind === kind).length]),
    ) as CycleCounts['by_kind'],
    production: production.length,
    aborts: eventRate(aborts.length, production.length, level),
    aborts_by_class: Object.fromEntries(byClass.filter(([, count]) => count > 0)),
    test_and_warm_up_aborts: counted.filter((cycle) => !isProduction(cycle) && cycle.standing === 'abort')
      .length,
    purges: standing('purge'),
    early_stops: standing('early_stop'),
    open: standing('open'),
  };
}
