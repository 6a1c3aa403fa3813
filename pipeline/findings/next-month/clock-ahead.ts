import type { Day } from '../../site/day.ts';
import type { Policy } from '../../site/site-schema.ts';
import { type IntervalClock, intervalClock } from '../../transform/cleaning/interval-clock.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { expectedUse } from './expected-use.ts';

/**
 * The clock of a policy over the days of use on record and those expected between two days: what says when a task falls due that has not yet.
 *
 * @param from first operating day that is expected; `until` first day after them
 */
export const clockAhead = (
  policy: Policy,
  history: Pick<UnitHistory, 'use_days'>,
  from: Day,
  until: Day,
): IntervalClock => intervalClock(policy, [...history.use_days, ...expectedUse(history, from, until)]);
