import type { UnitHistory } from '../../transform/unit-history.ts';

const HOUR = 3_600_000;

/** Hours from the first failed test of each episode to the next passing test, whatever it counted as. */
export function failureHours({ episodes, tests }: UnitHistory): number[] {
  return episodes.flatMap((episode) => {
    const failed = tests.findIndex((test) => test.role === 'day_result' && test.day === episode.from);
    const passed = tests.find((test, index) => index > failed && test.result === 'pass');
    const [from, to] = [tests[failed]?.ended_at, passed?.ended_at];
    return from != null && to != null && to > from ? [(to - from) / HOUR] : [];
  });
}

/** Tests after the failed one of each closed episode, up to the passing day result that ends it. */
export function retests({ episodes, tests }: UnitHistory): number[] {
  return episodes.flatMap((episode) => {
    if (episode.to === null) return [];
    const first = tests.findIndex((test) => test.role === 'day_result' && test.day === episode.from);
    return [
      tests.filter((test, index) => index > first && test.day <= episode.to! && test.role !== 'day_result')
        .length,
    ];
  });
}
