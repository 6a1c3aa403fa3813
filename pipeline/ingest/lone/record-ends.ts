import { byCodeUnit } from '../../by-code-unit.ts';
import { clocksOfUnits } from '../../site/clocks-of-units.ts';
import type { Day } from '../../site/day.ts';
import type { Origin, Records } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import { KNOWN_AT_END, loneAtEnds } from './lone-at-ends.ts';

/** Kinds of records that say from when to when there is a record at all. */
export type EndKind = 'cycles' | 'air_removal_tests';

/** A cycle or test at an end of the record. */
export interface EndRecord {
  /** Operating day of its unit's clock. */
  day: Day;
  at: number;
  kind: EndKind;
  unit: string;
  origin: Origin;
}

/** The five earliest and five latest of cycles and tests by operating day, and how many there are; plain data. */
export interface RecordEnds {
  count: number;
  /** The earliest first. */
  earliest: EndRecord[];
  /** The latest first. */
  latest: EndRecord[];
}

/** Instants so far apart lie on days in the same order, ms: clocks differ by 26 hours at most, and days open within 24. */
const IN_ORDER = 72 * 3_600_000;

export function endsOfRecords(site: Site, { cycles, air_removal_tests }: Pick<Records, EndKind>): RecordEnds {
  const clockOf = clocksOfUnits(site);
  const ends: RecordEnds = { count: cycles.length + air_removal_tests.length, earliest: [], latest: [] };
  const take = (kind: EndKind, of: { unit: string; origin: Origin }, at: number) => {
    const first = ends.earliest[KNOWN_AT_END - 1];
    const last = ends.latest[KNOWN_AT_END - 1];
    // Nearly all records lie between the ends that are known already.
    if (first && last && at > first.at + IN_ORDER && at < last.at - IN_ORDER) return;
    const { unit, origin } = of;
    const record = { day: clockOf(unit).operatingDay(at), at, kind, unit, origin };
    keep(ends.earliest, record, inOrder);
    keep(ends.latest, record, inReverse);
  };
  for (const cycle of cycles) take('cycles', cycle, cycle.start);
  for (const test of air_removal_tests) take('air_removal_tests', test, test.time);
  return ends;
}

/** The ends of all of them, the same in whichever parts the records were taken. */
export function mergeEnds(parts: readonly RecordEnds[]): RecordEnds {
  return {
    count: parts.reduce((sum, { count }) => sum + count, 0),
    earliest: parts
      .flatMap(({ earliest }) => earliest)
      .sort(inOrder)
      .slice(0, KNOWN_AT_END),
    latest: parts
      .flatMap(({ latest }) => latest)
      .sort(inReverse)
      .slice(0, KNOWN_AT_END),
  };
}

/** The lone records at each end, and the first and last of the others; null where there is no record. */
export function splitEnds({ count, earliest, latest }: RecordEnds): {
  first: EndRecord;
  last: EndRecord;
  /** In order of time. */
  lone: EndRecord[];
} | null {
  const { early, late } = loneAtEnds(earliest.map(dayOf), latest.map(dayOf), count);
  const first = earliest[early];
  const last = latest[late];
  if (!first || !last) return null;
  return { first, last, lone: [...earliest.slice(0, early), ...latest.slice(0, late).reverse()] };
}

function keep(list: EndRecord[], record: EndRecord, order: (a: EndRecord, b: EndRecord) => number): void {
  if (list.length === KNOWN_AT_END && order(record, list[KNOWN_AT_END - 1]!) > 0) return;
  list.push(record);
  list.sort(order);
  if (list.length > KNOWN_AT_END) list.pop();
}

const dayOf = ({ day }: EndRecord): Day => day;

/** Order by day and time; of records at one time by their origin, so that the answer does not depend on where they were read. */
function inOrder(a: EndRecord, b: EndRecord): number {
  return a.day - b.day || a.at - b.at || byCodeUnit(placeOf(a), placeOf(b)) || a.origin.row - b.origin.row;
}

const inReverse = (a: EndRecord, b: EndRecord): number => inOrder(b, a);

const placeOf = ({ kind, unit, origin: { source, file, sheet } }: EndRecord): string =>
  JSON.stringify([kind, unit, source, file, sheet]);
