import { sourceDays } from '../../findings/next-month/missing-data.ts';
import { type Period, type Span, spanOfEnds } from '../../findings/period.ts';
import { recordsUntil } from '../../findings/record-quality/records-until.ts';
import { received } from '../../findings/shares/carried-share.ts';
import { mergeShares } from '../../findings/shares/merge-shares.ts';
import type { Share } from '../../findings/shares/share.ts';
import { loneProblems } from '../../ingest/lone/lone-problems.ts';
import { mergeEnds } from '../../ingest/lone/record-ends.ts';
import type { Inputs } from '../../ingest/read-jobs.ts';
import type { Reading } from '../../ingest/reading.ts';
import type { Receipts } from '../../ingest/receipts/read-receipts.ts';
import { partsOf, recordsOfParts, settleReceipts } from '../../ingest/receipts/records-of-parts.ts';
import { type PartOfFleet, spanOfReceipts } from './parts-of-fleet.ts';
import type { SharedUnits, UnitsToShare } from './share-of-units.ts';

/** The period that is asked for, from the first and last operating day of the records; null where there are none. */
export type PeriodOf = (span: Span) => Period;

/** The share of all units, and what was read but for the records it was made of. */
export interface SharedFleet {
  share: Share;
  reading: Pick<Reading, 'files' | 'problems'> & {
    records: Pick<Reading['records'], 'inspections' | 'water' | 'actions'>;
  };
  period: Period;
}

/**
 * Makes the share of a whole fleet from its parts, so that the records of a part are held at once and no more; the same as from all records.
 *
 * @param periodOf asked again where the records turn out to have other days at their ends
 * @param shareElsewhere makes the share of a part, such as in another thread
 */
export async function shareOfFleet(
  inputs: Inputs,
  receipts: Receipts,
  history: string,
  parts: readonly PartOfFleet[],
  periodOf: PeriodOf,
  shareElsewhere: (of: UnitsToShare) => Promise<SharedUnits>,
  onPart: (done: number, of: number) => void,
): Promise<SharedFleet> {
  const { site } = inputs;
  let period = periodOf(spanOfReceipts(site, receipts));
  for (;;) {
    let done = 0;
    const shared = await Promise.all(
      parts.map(async ({ units }) => {
        const of = { units, parts: partsOf(receipts, new Set(units)), history, period };
        const { share, ...rest } = await shareElsewhere(of);
        onPart(++done, parts.length);
        return { ...rest, share: received(share, site) };
      }),
    );
    const ends = mergeEnds(shared.map((of) => of.ends));
    const exact = periodOf(spanOfEnds(ends));
    if (exact.until !== period.until || exact.from !== period.from || exact.since !== period.since) {
      // Rows at the end of a month turned out to be those of other rows: the month is another one.
      period = exact;
      continue;
    }
    const rest = await recordsOfParts(partsOf(receipts), inputs, history);
    const share = mergeShares(
      site,
      shared.map((of) => of.share),
    );
    share.missing.source_days.push(...sourceDays(site, recordsUntil(site, rest.records, period.until)));
    const settlements = [...shared.map((of) => of.settlement), rest.settlement];
    const { files, problems } = settleReceipts(receipts, settlements);
    problems.push(...loneProblems(inputs, ends));
    return { share, reading: { files, problems, records: rest.records }, period };
  }
}
