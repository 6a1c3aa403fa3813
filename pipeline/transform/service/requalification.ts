import { z } from 'zod';
import type { Service } from '../../site/records.ts';
import type { WallClock } from '../../site/wall-clock.ts';
import type { JudgedTest } from '../air-removal-tests/judge-tests.ts';
import { type TimedTest, timedTests } from '../air-removal-tests/timed-tests.ts';
import { type ClassedCycle, isProduction } from '../cycles/class-cycles.ts';
import type { PossibleTime } from '../possible-time.ts';
import { possibleEnd } from './possible-end.ts';

/** After major service: whether the wanted number of passing air-removal tests in a row came before production. */
export const requalificationSchema = z.strictObject({
  unit: z.string(),
  service_kind: z.string(),
  ended_at: z.number().int(),
  day: z.number().int().describe('Operating day on which the service ended'),
  wanted: z.number().int(),
  passes_in_a_row: z
    .number()
    .int()
    .describe('Passing tests in a row, the last ones before production: those that are known to be'),
  first_production: z.number().int().nullable(),
  state: z
    .enum(['complete', 'incomplete', 'no_production_yet', 'not_judged'])
    .describe(
      'not_judged: some dates stand without a time, and on the order within these days it depends whether the tests were complete',
    ),
});
export type Requalification = z.infer<typeof requalificationSchema>;

/**
 * Where only dates are known, each order within these days that is possible is asked; the state is said where all of them agree.
 *
 * Source of the wanted number: three in a row after a major repair is common to the guidance in use (CDC 2008; AAMI ST79 as cited in trade texts).
 */
export function requalifications(
  records: { unit: string; clock: WallClock; service: readonly Service[] },
  cycles: readonly ClassedCycle[],
  tests: readonly JudgedTest[],
  wanted: number,
): Requalification[] {
  const valid = timedTests(tests, records.clock);
  return records.service
    .filter((service) => service.major === true && service.to !== undefined)
    .map((service) => {
      const ended = possibleEnd(service, records.clock);
      const firsts = firstProductions(ended, cycles);
      const passes = firsts.map((first) => passesBetween(ended, first, valid));
      const fewest = Math.min(...passes.map((of) => of.fewest));
      const most = Math.max(...passes.map((of) => of.most));
      const none = firsts.filter((first) => first === null).length;
      let state: Requalification['state'] = 'incomplete';
      if (fewest >= wanted) state = 'complete';
      else if (most >= wanted || (none > 0 && none < firsts.length)) state = 'not_judged';
      else if (none > 0) state = 'no_production_yet';
      return {
        unit: records.unit,
        service_kind: service.kind,
        ended_at: service.to!,
        day: records.clock.operatingDay(service.to!),
        wanted,
        passes_in_a_row: fewest,
        first_production: firsts[0]!,
        state,
      };
    });
}

/** Starts of the cycles that may be the first production after an end: each of its possible time, and the first after it (null where none has come). */
function firstProductions(ended: PossibleTime, cycles: readonly ClassedCycle[]): (number | null)[] {
  const starts = cycles.filter((cycle) => isProduction(cycle)).map((cycle) => cycle.start);
  return [
    ...starts.filter((start) => start >= ended.earliest && start < ended.latest),
    starts.find((start) => start >= ended.latest) ?? null,
  ];
}

/** Passes in a row between an end and production: those that are known to be the last ones, and those that may be. */
function passesBetween(
  ended: PossibleTime,
  production: number | null,
  tests: readonly TimedTest[],
): { fewest: number; most: number } {
  const before = production ?? Number.POSITIVE_INFINITY;
  const known = tests.filter((test) => test.earliest >= ended.latest && test.latest <= before);
  const possible = tests.filter((test) => test.latest >= ended.earliest && test.earliest <= before);
  const fails = (of: typeof known) => of.filter(isFailed);
  const surelyAfter = Math.max(...fails(possible).map((test) => test.latest));
  const perhapsAfter = Math.max(...fails(known).map((test) => test.earliest));
  return {
    fewest: known.filter((test) => !isFailed(test) && test.earliest >= surelyAfter).length,
    most: possible.filter((test) => !isFailed(test) && test.latest >= perhapsAfter).length,
  };
}

const isFailed = ({ test }: TimedTest): boolean => test.result === 'fail';
