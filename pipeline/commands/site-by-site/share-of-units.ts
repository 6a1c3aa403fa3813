import { type Period, type Span, spanOfRecords, spanOfSpans } from '../../findings/period.ts';
import { type CarriedShare, carried } from '../../findings/shares/carried-share.ts';
import { sumOfJoins } from '../../findings/shares/merge-shares.ts';
import { type PartOfUnit, partOfUnit } from '../../findings/shares/part-of-unit.ts';
import { shareOfParts } from '../../findings/shares/share.ts';
import type { Inputs } from '../../ingest/read-jobs.ts';
import type { Part } from '../../ingest/receipts/records-of-parts.ts';
import { recordsOfUnits } from '../../ingest/receipts/records-of-units.ts';
import type { Settlement } from '../../ingest/settlement.ts';
import type { Cleaning } from '../../site/records.ts';
import type { JoinCount } from '../../transform/join-count.ts';
import { logsOfSites, transformUnit } from '../../transform/transform.ts';
import { unitOrder } from '../../transform/unit-order.ts';

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
  span: Span;
}

const AFTER_CLEANINGS = ['cycles', 'air_removal_tests', 'leak_tests', 'service'] as const;

/**
 * Takes the records of some units from the history, joins them, and keeps what a review asks of them: unit by unit, so that no more than the records of one are held, beside the cleanings of
 * all, since a site has one cleaning log.
 */
export async function shareOfUnits(
  inputs: Inputs,
  { units, parts, history, period }: UnitsToShare,
): Promise<SharedUnits> {
  const { site } = inputs;
  const records = recordsOfUnits(parts, inputs, history);
  const cleaningsOf = new Map<string, Cleaning[]>();
  for (const unit of units) cleaningsOf.set(unit, (await records.take(unit, ['cleanings'])).cleanings);
  const logs = logsOfSites(site, { cleanings: [...cleaningsOf.values()].flat() }, period.until, units);
  const made: PartOfUnit[] = [];
  const joins: JoinCount[] = [];
  const spans: Span[] = [];
  let later_records = 0;
  for (const unit of unitOrder(site, units)) {
    const own = { ...(await records.take(unit, AFTER_CLEANINGS)), cleanings: cleaningsOf.get(unit)! };
    cleaningsOf.delete(unit);
    spans.push(spanOfRecords(site, own));
    const transformed = transformUnit(site, unit, own, period.until, logs);
    made.push(partOfUnit(site, transformed.histories[0], transformed.panel, period));
    joins.push(...transformed.joins);
    later_records += transformed.later_records;
  }
  const share = shareOfParts(site, NO_OTHERS, made, period);
  return {
    share: carried({ ...share, joins: sumOfJoins(joins), later_records }),
    settlement: records.settlement,
    span: spanOfSpans(spans),
  };
}

/** Records of no unit are taken once, for all. */
const NO_OTHERS = { inspections: [], water: [], actions: [] };
