import { clocksOfUnits } from '../../site/clocks-of-units.ts';
import type { Day } from '../../site/day.ts';
import { type Records, TIME_FIELD } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import { RECORD_KINDS, type RecordKind } from '../../site/vocabulary.ts';

/**
 * Records up to an operating day (left out itself), so that a month can be judged again although newer records have come. The day is that of the clock of the
 * record's unit; a record of no unit (water) goes by the clock of its site, else of the first.
 */
export function recordsUntil<Kind extends RecordKind>(
  site: Site,
  records: Pick<Records, Kind>,
  until: Day,
): Pick<Records, Kind> {
  const clockOf = clocksOfUnits(site);
  const first = site.sites.values().next().value!.clock;
  const keep = (kind: Kind) => {
    const rows = records[kind] as readonly { unit?: string; site?: string }[];
    return rows.filter((row) => {
      const clock =
        row.unit === undefined ? (site.sites.get(row.site ?? '')?.clock ?? first) : clockOf(row.unit);
      return clock.operatingDay((row as Record<string, unknown>)[TIME_FIELD[kind]] as number) < until;
    });
  };
  const kinds = RECORD_KINDS.filter((kind): kind is Kind => kind in records);
  return Object.fromEntries(kinds.map((kind) => [kind, keep(kind)])) as unknown as Pick<Records, Kind>;
}
