import type { Day } from '../../site/day.ts';
import type { JudgedTest } from './judge-tests.ts';

/** From the first failed day result to the first passing day result after it; `to` is null while none has come. */
export interface FailureEpisode {
  from: Day;
  to: Day | null;
  failed_days: number;
}

/** Failure episodes of a unit, in order. Failures on the days of one episode are one failure. */
export function failureEpisodes(tests: readonly JudgedTest[]): FailureEpisode[] {
  const episodes: FailureEpisode[] = [];
  let open: FailureEpisode | null = null;
  for (const test of tests) {
    if (test.role !== 'day_result') continue;
    if (test.result === 'fail') {
      if (open) open.failed_days++;
      else {
        open = { from: test.day, to: null, failed_days: 1 };
        episodes.push(open);
      }
    } else if (open) {
      open.to = test.day;
      open = null;
    }
  }
  return episodes;
}

/** Days inside an episode: after its first day, to the passing day that ends it. A unit in an episode can't begin a new one. */
export function isInsideEpisode(episodes: readonly FailureEpisode[], day: Day): boolean {
  return episodes.some((episode) => episode.from < day && day <= (episode.to ?? Number.POSITIVE_INFINITY));
}
