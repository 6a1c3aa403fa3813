import { z } from 'zod';
import type { Service } from '../../site/records.ts';
import type { WallClock } from '../../site/wall-clock.ts';
import type { JudgedTest } from '../air-removal-tests/judge-tests.ts';
import { type ClassedCycle, isProduction } from '../cycles/class-cycles.ts';

/** After major service: whether the wanted number of passing air-removal tests in a row came before production. */
export const requalificationSchema = z.strictObject({
  unit: z.string(),
  service_kind: z.string(),
  ended_at: z.number().int(),
  day: z.number().int().describe('Operating day on which the service ended'),
  wanted: z.number().int(),
  passes_in_a_row: z.number().int().describe('Passing tests in a row, the last ones before production'),
  first_production: z.number().int().nullable(),
  state: z.enum(['complete', 'incomplete', 'no_production_yet']),
});
export type Requalification = z.infer<typeof requalificationSchema>;

/** Source of the wanted number: three in a row after a major repair is common to the guidance in use (CDC 2008; AAMI ST79 as cited in trade texts). */
export function requalifications(
  records: { unit: string; clock: WallClock; service: readonly Service[] },
  cycles: readonly ClassedCycle[],
  tests: readonly JudgedTest[],
  wanted: number,
): Requalification[] {
  return records.service
    .filter((service) => service.major === true && service.to !== undefined)
    .map((service) => {
      const ended_at = service.to!;
      const production = cycles.find((cycle) => isProduction(cycle) && cycle.start >= ended_at);
      const before = tests.filter((test) => {
        const at = test.ended_at ?? test.time;
        return test.result !== 'invalid' && at >= ended_at && (!production || at <= production.start);
      });
      const lastFail = before.findLastIndex((test) => test.result === 'fail');
      const passes = before.length - lastFail - 1;
      return {
        unit: records.unit,
        service_kind: service.kind,
        ended_at,
        day: records.clock.operatingDay(ended_at),
        wanted,
        passes_in_a_row: passes,
        first_production: production?.start ?? null,
        state: passes >= wanted ? 'complete' : production ? 'incomplete' : 'no_production_yet',
      };
    });
}
