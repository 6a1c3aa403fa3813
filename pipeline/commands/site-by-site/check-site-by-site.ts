import { loneProblems } from '../../ingest/lone/lone-problems.ts';
import { endsOfRecords, mergeEnds, type RecordEnds } from '../../ingest/lone/record-ends.ts';
import { readFiles } from '../../ingest/read-files.ts';
import { openInputs, readJob } from '../../ingest/read-jobs.ts';
import type { Problem, Reading } from '../../ingest/reading.ts';
import { type Receipt, receiptOf } from '../../ingest/receipts/receipt.ts';
import { partsOf, recordsOfParts, settleReceipts } from '../../ingest/receipts/records-of-parts.ts';
import type { Settlement } from '../../ingest/settlement.ts';
import type { Site } from '../../site/site.ts';
import { boundHeaps } from '../engine-settings.ts';
import type { FoundInputs } from '../find-inputs.ts';
import type { FirstRows } from '../first-rows.ts';
import { requireRecords, withProgress } from '../read-inputs.ts';
import type { Terminal } from '../terminal.ts';
import { partsOfFleet } from './parts-of-fleet.ts';

/** No history is kept or asked for. */
const NO_HISTORY = '';

/**
 * Reads all exports, and settles them site by site, as the records of all at once would be; none is kept. A file of one site is read a second time when its site is settled, which takes
 * time in place of memory and disk; what was read of a file of several sites is held as columns.
 *
 * @throws UserError where a file has changed between its two readings
 */
export async function checkSiteBySite(
  { site, task }: FoundInputs,
  terminal: Terminal,
  first: Pick<FirstRows, 'watch' | 'see'>,
): Promise<Pick<Reading, 'files' | 'problems'>> {
  boundHeaps('fleet');
  const { folder, site: _, history: __, ...settings } = task;
  const inputs = await openInputs(site, folder, settings);
  const problems: Problem[] = [];
  const files: Receipt[] = [];
  const isOfOneSite = oneSite(site);
  for await (const receipt of readFiles(
    inputs,
    withProgress(terminal),
    async (job, onPiece) => {
      const columns = await readJob(inputs, job, { onPiece, watch: first.watch });
      const read = receiptOf(job, { columns });
      return isOfOneSite(read) ? { ...read, columns: undefined } : read;
    },
    problems,
  )) {
    for (const problem of receipt.problems) problems.push(problem);
    files.push(receipt);
  }
  const receipts = { files, problems };
  const parts = partsOfFleet(site, receipts);
  const settlements: Settlement[] = [];
  const ends: RecordEnds[] = [];
  for (const [at, units] of [...parts.map((part) => new Set(part.units)), undefined].entries()) {
    terminal.progress(`Looking for duplicates, part ${at + 1} of ${parts.length + 1}`);
    const { records, settlement } = await recordsOfParts(partsOf(receipts, units), inputs, NO_HISTORY, units);
    first.see(records);
    settlements.push(settlement);
    ends.push(endsOfRecords(site, records));
  }
  const settled = settleReceipts(receipts, settlements);
  settled.problems.push(...loneProblems(inputs, mergeEnds(ends)));
  terminal.progressDone();
  requireRecords(settled, task);
  return settled;
}

/** Whether all records of a file are of units of one site. */
function oneSite(site: Site): (receipt: Receipt) => boolean {
  const siteOf = new Map(site.declared.units?.map((unit) => [unit.id, unit.site]));
  return ({ units }) => units.length > 0 && new Set(units.map(({ unit }) => siteOf.get(unit))).size === 1;
}
