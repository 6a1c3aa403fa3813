import type { Span } from '../../findings/period.ts';
import { groupBy } from '../../group-by.ts';
import { KNOWN_AT_END, loneAtEnds } from '../../ingest/lone/lone-at-ends.ts';
import type { Receipts } from '../../ingest/receipts/read-receipts.ts';
import { outermost } from '../../ingest/receipts/receipt.ts';
import { clocksOfUnits } from '../../site/clocks-of-units.ts';
import type { Day } from '../../site/day.ts';
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

const NONE_LONE = { early: 0, late: 0 };

/**
 * Operating days of cycles and tests, the first and the last, as far as receipts tell: a record that is put to another or to the other side of a repeated hour is still counted where it
 * was read, records of one instant are taken for one where it is asked which are lone, and their days are those of the first site's clock.
 */
export function spanOfReceipts(site: Site, { files }: Receipts): Span {
  const clockOf = clocksOfUnits(site);
  const dated = files.filter(({ kind }) => kind === 'cycles' || kind === 'air_removal_tests');
  const ends = outermost(dated.flatMap((file) => file.ends));
  const firstClock = site.sites.values().next().value!.clock;
  const dayOf = (at: number): Day => firstClock.operatingDay(at);
  const ofEnds = loneAtEnds(
    ends.slice(0, KNOWN_AT_END).map(dayOf),
    ends.slice(-KNOWN_AT_END).reverse().map(dayOf),
    dated.reduce((sum, { count }) => sum + count, 0),
  );
  // Where many records are of a few instants, no end can be told from the other.
  const { early, late } = ofEnds.early + ofEnds.late < ends.length ? ofEnds : NONE_LONE;
  const from = ends[early];
  const to = ends[ends.length - 1 - late];
  if (from === undefined || to === undefined) return null;
  const lone = [...ends.slice(0, early), ...ends.slice(ends.length - late)].map(dayOf);
  const span = { first: Number.POSITIVE_INFINITY, last: Number.NEGATIVE_INFINITY, lone };
  for (const { units } of dated)
    for (const { unit, first, last } of units) {
      const clock = clockOf(unit);
      if (last >= from) span.first = Math.min(span.first, clock.operatingDay(Math.max(first, from)));
      if (first <= to) span.last = Math.max(span.last, clock.operatingDay(Math.min(last, to)));
    }
  return span;
}
