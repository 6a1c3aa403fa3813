import type { Site } from '../../site/site.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { Clock } from './clocks.ts';

/** What the interval counts, the interval in force (of most units) and the longest that may be proposed. */
export interface IntervalInForce {
  clock: Clock;
  clock_origin: 'site' | 'policy' | 'default';
  /** Interval of the chamber policy that most units share in this clock; null where none states one. */
  every: number | null;
  /** Units with another interval, or one in another clock. */
  units_otherwise: string[];
}

export function intervalInForce(site: Site, histories: readonly UnitCourse[]): IntervalInForce {
  const policies = histories.map((history) => site.policyOf(history.unit, 'chamber'));
  const own = site.declared.interval.counted_in;
  const clock = own ?? mostCommon(policies.flatMap((policy) => (policy ? [policy.counted_in] : [])));
  const chosen = clock ?? 'calendar_days';
  const every = mostCommon(
    policies.flatMap((policy) => (policy?.counted_in === chosen ? [policy.every] : [])),
  );
  return {
    clock: chosen,
    clock_origin: own ? 'site' : clock ? 'policy' : 'default',
    every: every ?? null,
    units_otherwise: histories
      .filter((_, index) => {
        const policy = policies[index];
        return policy !== undefined && !(policy.counted_in === chosen && policy.every === every);
      })
      .map((history) => history.unit),
  };
}

/** The value that stands most often; of equals the one that came first. */
function mostCommon<T>(values: readonly T[]): T | undefined {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].reduce<[T, number] | undefined>(
    (best, of) => (best === undefined || of[1] > best[1] ? of : best),
    undefined,
  )?.[0];
}
