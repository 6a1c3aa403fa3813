import type { Day } from '../../site/day.ts';
import type { UseDay } from '../cleaning/due-tasks.ts';
import type { UnitRecords } from '../records-by-unit.ts';

const KINDS = new Set(['repair', 'out_of_service', 'controller_replaced']);

/**
 * Days of use on which the unit was out of service when the day's first cycle started: inside a repair, a controller's replacement or an out-of-service
 * record. A repair that began later that day does not take the day away: what went before it, a failed test as a rule, happened in service. A
 * record with no end is taken to end with its first operating day.
 */
export function outOfServiceDays(records: UnitRecords, useDays: readonly UseDay[]): Set<Day> {
  const spans = records.service
    .filter((service) => KINDS.has(service.kind))
    .map(({ from, to }) => ({ from, to: to ?? records.clock.opensAt(records.clock.operatingDay(from) + 1) }));
  return new Set(
    useDays
      .filter(({ first_cycle }) => spans.some((span) => span.from <= first_cycle && first_cycle < span.to))
      .map((use) => use.day),
  );
}
