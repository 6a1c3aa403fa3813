import { clocksOfUnits, type Span } from '../../findings/period.ts';
import { groupBy } from '../../group-by.ts';
import type { Receipts } from '../../ingest/receipts/read-receipts.ts';
import type { Site } from '../../site/site.ts';

/** Records that are joined at once, at most, unless one site has more. */
const AT_ONCE = 250_000;

/** Units of whole sites, and how many records were read of them. */
export interface PartOfFleet {
  units: string[];
  records: number;
}

/**
 * The units of a fleet in parts whose records are joined at once: whole sites, one after the other, until they have so many records.
 *
 * @param atOnce records of a part; a site that has more is a part by itself
 */
export function partsOfFleet(site: Site, { files }: Receipts, atOnce = AT_ONCE): PartOfFleet[] {
  const counts = new Map<string, number>();
  for (const { units } of files)
    for (const { unit, count } of units) counts.set(unit, (counts.get(unit) ?? 0) + count);
  const sites = groupBy(site.declared.units ?? [], (unit) => unit.site);
  const parts: PartOfFleet[] = [];
  for (const ofSite of sites.values()) {
    const units = ofSite.map(({ id }) => id);
    const records = units.reduce((sum, unit) => sum + (counts.get(unit) ?? 0), 0);
    const last = parts.at(-1);
    if (last && last.records + records <= atOnce) {
      last.units.push(...units);
      last.records += records;
    } else parts.push({ units, records });
  }
  return parts;
}

/**
 * Operating days of cycles and tests, the first and the last, as far as receipts tell: a record that is put to another or to the other side of a repeated hour is still counted where it
 * was read.
 */
export function spanOfReceipts(site: Site, { files }: Receipts): Span {
  const clockOf = clocksOfUnits(site);
  const days = files
    .filter(({ kind }) => kind === 'cycles' || kind === 'air_removal_tests')
    .flatMap(({ units }) =>
      units.flatMap(({ unit, first, last }) => [first, last].map((at) => clockOf(unit).operatingDay(at))),
    );
  if (days.length === 0) return null;
  return days.reduce(({ first, last }, day) => ({ first: Math.min(first, day), last: Math.max(last, day) }), {
    first: days[0]!,
    last: days[0]!,
  });
}
