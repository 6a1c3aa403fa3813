import type { Day } from '../../site/day.ts';
import type { UnitRecords } from '../records-by-unit.ts';

/**
 * Operating days on which a unit was out of service: from the first day of a repair, a controller's replacement or an out-of-service record to the
 * day before it ended. The day on which the unit came back is a day in service. A record with no end counts its first day only.
 */
export function outOfServiceDays(records: UnitRecords): Set<Day> {
  const days = new Set<Day>();
  for (const service of records.service) {
    if (
      service.kind !== 'repair' &&
      service.kind !== 'out_of_service' &&
      service.kind !== 'controller_replaced'
    )
      continue;
    const first = records.clock.operatingDay(service.from);
    const last = service.to === undefined ? first : records.clock.operatingDay(service.to) - 1;
    for (let day = first; day <= last; day++) days.add(day);
  }
  return days;
}
