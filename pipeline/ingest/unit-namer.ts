import type { Day } from '../site/day.ts';
import type { Site } from '../site/site.ts';
import type { NamedUnit } from '../site/unit-names.ts';
import { Fault } from './cell.ts';
import type { SourceReader } from './read-fields.ts';

const FAULTS = {
  unknown_name: new Fault('unknown_unit', 'the id or an alias of a unit'),
  not_valid: new Fault('unknown_unit', 'a name that means a unit on that day'),
  reserved: new Fault(
    'unknown_unit',
    'another name than that for all units together: declare the unit under an id of its own',
  ),
  before_service: new Fault('clock_reset', 'a time on or after the first day of service of the unit'),
} as const;

/** Names of units that are remembered at once. */
const MOST_NAMES = 10_000;

/** The id of the unit that a name means at an instant, or what is wrong with it. */
export type NameUnit = (name: string, at: number) => string | Fault;

/** Whether what is wrong with a name lies in the time of the record. */
export const isBeforeService = (fault: Fault): boolean => fault === FAULTS.before_service;

/** Names units of one source; what each name meant on the day for which it was asked last is remembered. */
export function unitNamer(site: Site, { source, clock }: SourceReader): NameUnit {
  const lastNames = new Map<string, { day: Day; named: NamedUnit }>();
  return (name, at) => {
    const day = clock.operatingDay(at);
    let known = lastNames.get(name);
    if (known?.day !== day) {
      known = { day, named: site.readUnit(name, day, source.site) };
      if (lastNames.size >= MOST_NAMES) lastNames.clear();
      lastNames.set(name, known);
    }
    const { named } = known;
    if (named.known) return named.unit;
    if (named.reason === 'before_service') return FAULTS.before_service;
    if (named.reason === 'reserved_name') return FAULTS.reserved;
    return named.reason === 'unknown_name' ? FAULTS.unknown_name : FAULTS.not_valid;
  };
}
