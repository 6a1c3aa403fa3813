import type { Day } from '../../site/day.ts';
import type { Rules } from '../../site/rules.ts';
import { formatWall } from '../../site/wall-clock.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Review } from '../review-schema.ts';

/** Leak tests of a unit in a month, and the last one up to its end. The limit is the record's own, else the site's. */
export function leakSummary(history: UnitHistory, from: Day, rules: Rules): Review['units'][number]['leak'] {
  const inMonth = history.leak_tests.filter((test) => test.day >= from);
  const last = history.leak_tests.at(-1);
  const limitOf = (test: { limit_kpa_min?: number | undefined }) =>
    test.limit_kpa_min ?? rules.leak_limit_kpa_min;
  return {
    tests_in_month: inMonth.length,
    last: last?.leak_rate_kpa_min ?? null,
    last_at: last ? formatWall(history.clock.wallOf(last.time)) : null,
    limit: last ? limitOf(last) : rules.leak_limit_kpa_min,
    over_limit_in_month: inMonth.filter((test) => test.leak_rate_kpa_min > limitOf(test)).length,
  };
}
