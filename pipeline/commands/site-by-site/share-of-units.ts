import type { Period } from '../../findings/period.ts';
import { type CarriedShare, carried } from '../../findings/shares/carried-share.ts';
import { sumOfJoins } from '../../findings/shares/merge-shares.ts';
import { type PartOfUnit, partOfUnit } from '../../findings/shares/part-of-unit.ts';
import { shareOfParts } from '../../findings/shares/share.ts';
import { mergeEnds, type RecordEnds } from '../../ingest/lone/record-ends.ts';
import type { Inputs } from '../../ingest/read-jobs.ts';
import type { Settlement } from '../../ingest/settlement.ts';
import type { JoinCount } from '../../transform/join-count.ts';
import { joinedUnits, type UnitsToJoin } from './joined-units.ts';

/** Units of whole sites whose share is to be made; plain data. */
export interface UnitsToShare extends Omit<UnitsToJoin, keyof Period> {
  period: Period;
}

export interface SharedUnits {
  share: CarriedShare;
  settlement: Settlement;
  /** The ends of their cycles and tests, of whatever period. */
  ends: RecordEnds;
}

/** Records of no unit are taken once, for all. */
const NO_OTHERS = { inspections: [], water: [], actions: [] };

/** Joins some units, and keeps what a review asks of them. */
export async function shareOfUnits(inputs: Inputs, { period, ...of }: UnitsToShare): Promise<SharedUnits> {
  const { site } = inputs;
  const parts: PartOfUnit[] = [];
  const joins: JoinCount[] = [];
  const ends: RecordEnds[] = [];
  let later_records = 0;
  const { units, settlement } = joinedUnits(inputs, { ...of, ...period });
  for await (const { histories, panel, ...unit } of units) {
    parts.push(partOfUnit(site, histories[0], panel, period));
    joins.push(...unit.joins);
    ends.push(unit.ends);
    later_records += unit.later_records;
  }
  const share = shareOfParts(site, NO_OTHERS, parts, period);
  return {
    share: carried({ ...share, joins: sumOfJoins(joins), later_records }),
    settlement,
    ends: mergeEnds(ends),
  };
}
