import type { Period } from '../../findings/period.ts';
import { endsOfRecords, type RecordEnds } from '../../ingest/lone/record-ends.ts';
import type { Inputs } from '../../ingest/read-jobs.ts';
import type { Part } from '../../ingest/receipts/records-of-parts.ts';
import { recordsOfUnits, type TakenRecords } from '../../ingest/receipts/records-of-units.ts';
import type { Settlement } from '../../ingest/settlement.ts';
import type { Cleaning } from '../../site/records.ts';
import type { Site } from '../../site/site.ts';
import { logsOfSites, transformUnit } from '../../transform/transform.ts';
import { unitOrder } from '../../transform/unit-order.ts';

/** Units of whole sites that are to be joined; plain data. */
export interface UnitsToJoin extends Pick<Period, 'until' | 'since'> {
  units: readonly string[];
  /** The files that hold records of them. */
  parts: readonly Part[];
  history: string;
}

/** One unit, joined, and the ends of its cycles and tests, of whatever period. */
export type JoinedUnit = ReturnType<typeof transformUnit> & { ends: RecordEnds };

const AFTER_CLEANINGS = ['cycles', 'air_removal_tests', 'leak_tests', 'service'] as const;

/** Units that are joined when they are asked for. */
export interface JoinedUnits {
  units: AsyncIterable<JoinedUnit>;
  /** What became of the rows of those that were asked for. */
  settlement: Settlement;
}

/**
 * Takes the records of some units from the history and joins them, one unit after the other: no more than the records of one are held, beside the cleanings of all, since a site has one
 * cleaning log.
 *
 * @throws UserError where a file must be read again, since its part of the history is gone, and has changed
 */
export function joinedUnits(inputs: Inputs, { units, parts, history, ...period }: UnitsToJoin): JoinedUnits {
  const records = recordsOfUnits(parts, inputs, history);
  return { units: joinAll(inputs.site, units, records, period), settlement: records.settlement };
}

async function* joinAll(
  site: Site,
  units: readonly string[],
  records: TakenRecords,
  { until, since }: Pick<Period, 'until' | 'since'>,
): AsyncGenerator<JoinedUnit> {
  const cleaningsOf = new Map<string, Cleaning[]>();
  for (const unit of units) cleaningsOf.set(unit, (await records.take(unit, ['cleanings'])).cleanings);
  const logs = logsOfSites(site, { cleanings: [...cleaningsOf.values()].flat() }, until, units);
  for (const unit of unitOrder(site, units)) {
    const own = { ...(await records.take(unit, AFTER_CLEANINGS)), cleanings: cleaningsOf.get(unit)! };
    cleaningsOf.delete(unit);
    yield { ...transformUnit(site, unit, own, until, logs, since), ends: endsOfRecords(site, own) };
  }
}
