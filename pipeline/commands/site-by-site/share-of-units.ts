import { type Period, type Span, spanOfSpans } from '../../findings/period.ts';
import { type CarriedShare, carried } from '../../findings/shares/carried-share.ts';
import { sumOfJoins } from '../../findings/shares/merge-shares.ts';
import { type PartOfUnit, partOfUnit } from '../../findings/shares/part-of-unit.ts';
import { shareOfParts } from '../../findings/shares/share.ts';
import type { Inputs } from '../../ingest/read-jobs.ts';
import type { Settlement } from '../../ingest/settlement.ts';
import type { JoinCount } from '../../transform/join-count.ts';
import { joinedUnits, type UnitsToJoin } from './joined-units.ts';

/** Units of whole sites whose share is to be made; plain data. */
export interface UnitsToShare extends Omit<UnitsToJoin, 'until'> {
  period: Period;
}

export interface SharedUnits {
  share: CarriedShare;
  settlement: Settlement;
  /** First and last operating day of their cycles and tests. */
  span: Span;
}

/** Records of no unit are taken once, for all. */
const NO_OTHERS = { inspections: [], water: [], actions: [] };

/** Joins some units, and keeps what a review asks of them. */
export async function shareOfUnits(inputs: Inputs, { period, ...of }: UnitsToShare): Promise<SharedUnits> {
  const { site } = inputs;
  const parts: PartOfUnit[] = [];
  const joins: JoinCount[] = [];
  const spans: Span[] = [];
  let later_records = 0;
  const { units, settlement } = joinedUnits(inputs, { ...of, until: period.until });
  for await (const { histories, panel, ...unit } of units) {
    parts.push(partOfUnit(site, histories[0], panel, period));
    joins.push(...unit.joins);
    spans.push(unit.span);
    later_records += unit.later_records;
  }
  const share = shareOfParts(site, NO_OTHERS, parts, period);
  return {
    share: carried({ ...share, joins: sumOfJoins(joins), later_records }),
    settlement,
    span: spanOfSpans(spans),
  };
}
