import type { Day } from '../../site/day.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Review } from '../review-schema.ts';
import { proportion } from './rate.ts';

type TestCounts = Review['units'][number]['tests'][number];

/** Air-removal tests of a unit between two operating days (the second left out). */
export function testCounts(
  history: UnitHistory,
  rows: readonly UnitDay[],
  span: 'month' | 'record',
  from: Day,
  until: Day,
  level: number,
): TestCounts {
  const tests = history.tests.filter((test) => test.day >= from && test.day < until);
  const days = rows.filter((row) => row.day >= from && row.day < until);
  const role = (name: string) => tests.filter((test) => test.role === name).length;
  const timing = (name: string) => days.filter((row) => row.test_timing === name).length;
  const results = tests.filter((test) => test.role === 'day_result');
  const failures = results.filter((test) => test.result === 'fail').length;
  return {
    span,
    failed_days: proportion(failures, results.length, level),
    day_results: results.length,
    failures,
    episodes: history.episodes.filter((episode) => episode.from >= from && episode.from < until).length,
    retests: role('retest'),
    after_repair: role('after_repair'),
    qualification: role('qualification'),
    invalid: role('invalid'),
    production_days: days.filter((row) => row.test_timing !== 'not_needed').length,
    missing: timing('missing'),
    late: timing('late'),
    time_unknown: timing('no_time'),
  };
}
