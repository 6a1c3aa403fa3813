import type { WallClock } from '../../site/wall-clock.ts';
import type { PossibleTime } from '../possible-time.ts';
import { type JudgedTest, possibleTimeOver } from './judge-tests.ts';

/** A test, and when it may have been over. */
export type TimedTest = PossibleTime & { test: JudgedTest };

/** Valid tests in the order of their earliest possible times, that of the records where these are one. */
export const timedTests = (tests: readonly JudgedTest[], clock: WallClock): TimedTest[] =>
  tests
    .filter((test) => test.result !== 'invalid')
    .map((test) => ({ test, ...possibleTimeOver(test, clock) }))
    .sort((a, b) => a.earliest - b.earliest);

/** Whether only the date of something is known. */
export const isByDate = (of: PossibleTime): boolean => of.earliest < of.latest;

/** First instant that may no longer lie before something was over. */
export const endOf = (of: PossibleTime): number => (isByDate(of) ? of.latest + 1 : of.latest);
