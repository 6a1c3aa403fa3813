import { type ClassedCycle, isProduction } from '../cycles/class-cycles.ts';
import type { JudgedTest } from './judge-tests.ts';

/**
 * Whether the day's test came before production. `missing`: production and no valid test. `late`: the first valid test ended after the first
 * production cycle started. `no_time`: a test that may have come first has a date only. `not_needed`: no production.
 */
export type TestTiming = 'in_time' | 'late' | 'missing' | 'no_time' | 'not_needed';

/** Timing of one operating day. Qualification and tests after a repair count as tests here: the question is whether one came first. */
export function testTiming(
  cyclesOfDay: readonly ClassedCycle[],
  testsOfDay: readonly JudgedTest[],
): TestTiming {
  const firstProduction = cyclesOfDay.find(isProduction);
  if (!firstProduction) return 'not_needed';
  const valid = testsOfDay.filter((test) => test.role !== 'invalid');
  if (valid.length === 0) return 'missing';
  if (valid.some((test) => test.ended_at !== null && test.ended_at <= firstProduction.start))
    return 'in_time';
  return valid.some((test) => test.ended_at === null) ? 'no_time' : 'late';
}
