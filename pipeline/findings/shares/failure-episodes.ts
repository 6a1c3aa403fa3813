import type { JudgedTest } from '../../transform/air-removal-tests/judge-tests.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';

const HOUR = 3_600_000;

/** Hours from the first failed test of each episode to the next passing test, whatever it counted as. */
export function failureHours({ episodes, tests }: UnitHistory): number[] {
  const dayResults = placesOfDayResults(tests);
  return episodes.flatMap((episode) => {
    const failed = dayResults.get(episode.from);
    if (failed === undefined) return [];
    let next = failed + 1;
    while (next < tests.length && tests[next]!.result !== 'pass') next++;
    const [from, to] = [tests[failed]!.ended_at, tests[next]?.ended_at];
    return from != null && to != null && to > from ? [(to - from) / HOUR] : [];
  });
}

/** Tests after the failed one of each closed episode, up to the passing day result that ends it. */
export function retests({ episodes, tests }: UnitHistory): number[] {
  const dayResults = placesOfDayResults(tests);
  return episodes.flatMap((episode) => {
    if (episode.to === null) return [];
    let count = 0;
    for (let at = (dayResults.get(episode.from) ?? -1) + 1; at < tests.length; at++) {
      if (tests[at]!.day > episode.to) break;
      if (tests[at]!.role !== 'day_result') count++;
    }
    return [count];
  });
}

/** Place of each day's result among the tests. */
const placesOfDayResults = (tests: readonly JudgedTest[]): Map<number, number> =>
  new Map(tests.flatMap((test, index) => (test.role === 'day_result' ? [[test.day, index]] : [])));
