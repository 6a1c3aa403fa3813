import type { Day } from '../../site/day.ts';
import type { UnitRecords } from '../records-by-unit.ts';

/** A span of a unit's life with one baseline. `from` and `to` are operating days, both included; `to` of the last era is open. */
export interface Era {
  index: number;
  from: Day;
  to: Day;
  /** What ended the era before; null for the first. */
  opened_by: 'repair' | 'controller_replaced' | 'professional_cleaning' | null;
}

/**
 * Cuts a unit's record into eras at each event that resets its baseline: repair, controller replaced, professional cleaning (from the service
 * records, or a cleaning record of that task that was done). The new era begins on the operating day on which the event ended.
 */
export function eras(records: UnitRecords): Era[] {
  const resets = new Map<Day, Era['opened_by']>();
  for (const service of records.service) {
    if (
      service.kind === 'repair' ||
      service.kind === 'controller_replaced' ||
      service.kind === 'professional_cleaning'
    ) {
      resets.set(records.clock.operatingDay(service.to ?? service.from), service.kind);
    }
  }
  for (const cleaning of records.cleanings) {
    const day = records.clock.operatingDay(cleaning.time);
    if (cleaning.task === 'professional' && (cleaning.state ?? 'done') === 'done' && !resets.has(day))
      resets.set(day, 'professional_cleaning');
  }
  const starts = [...resets].sort(([a], [b]) => a - b);
  const all: Era[] = [
    { index: 0, from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY, opened_by: null },
  ];
  for (const [from, opened_by] of starts) {
    all.at(-1)!.to = from - 1;
    all.push({ index: all.length, from, to: Number.POSITIVE_INFINITY, opened_by });
  }
  return all;
}

/** The era in which a day lies. */
export function eraOf(list: readonly Era[], day: Day): Era {
  return list.findLast((era) => era.from <= day)!;
}
