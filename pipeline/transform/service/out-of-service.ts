import type { Day } from '../../site/day.ts';
import type { UseDay } from '../cleaning/due-tasks.ts';
import type { UnitRecords } from '../records-by-unit.ts';
import { possibleEnd } from './possible-end.ts';

const KINDS = new Set(['repair', 'out_of_service', 'controller_replaced']);

/**
 * Days of use on which the unit was out of service when the day's first cycle started: inside a repair, a controller's replacement or an out-of-service
 * record. A repair that began later that day does not take the day away: what went before it, a failed test as a rule, happened in service. A
 * record with no end is taken to end with its first operating day, and one that is known by dates to take in the whole of its first and its last day.
 */
export function outOfServiceDays(records: UnitRecords, useDays: readonly UseDay[]): Set<Day> {
  const spans = records.service
    .filter((service) => KINDS.has(service.kind))
    .map((service) => ({ from: service.from, to: possibleEnd(service, records.clock).latest }));
  return new Set(
    useDays
      .filter(({ first_cycle }) => spans.some((span) => span.from <= first_cycle && first_cycle < span.to))
      .map((use) => use.day),
  );
}
