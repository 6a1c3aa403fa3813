import { type Period, spanOfRecords } from '../../findings/period.ts';
import { type CarriedShare, carried } from '../../findings/shares/carried-share.ts';
import { shareOf } from '../../findings/shares/share.ts';
import type { Inputs } from '../../ingest/read-jobs.ts';
import { type Part, recordsOfParts } from '../../ingest/receipts/records-of-parts.ts';
import type { Settlement } from '../../ingest/settlement.ts';
import type { Day } from '../../site/day.ts';
import { sortRecords, transformSorted } from '../../transform/transform.ts';

/** Units of whole sites whose share is to be made; plain data. */
export interface UnitsToShare {
  units: readonly string[];
  /** The files that hold records of them. */
  parts: readonly Part[];
  history: string;
  period: Period;
}

export interface SharedUnits {
  share: CarriedShare;
  settlement: Settlement;
  /** First and last operating day of their cycles and tests. */
  span: { first: Day; last: Day } | null;
}

/** Takes the records of some units from the history, joins them, and keeps what a review asks of them. */
export async function shareOfUnits(inputs: Inputs, of: UnitsToShare): Promise<SharedUnits> {
  const { site } = inputs;
  const { period } = of;
  const { sorted, others, ...rest } = await sortedRecords(inputs, of);
  const transformed = transformSorted(site, sorted, period.until);
  return { share: carried(shareOf(site, others, transformed, period)), ...rest };
}

/** The records, sorted to their units, and in no other list: so those of a unit can be let go when it is joined. */
async function sortedRecords(inputs: Inputs, { units, parts, history, period }: UnitsToShare) {
  const { site } = inputs;
  const { records, settlement } = await recordsOfParts(parts, inputs, history, new Set(units));
  const { inspections, water, actions } = records;
  return {
    sorted: sortRecords(site, records, period.until, units),
    others: { inspections, water, actions },
    settlement,
    span: spanOfRecords(site, records),
  };
}
