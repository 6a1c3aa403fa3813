import { openInputs } from '../../ingest/read-jobs.ts';
import { type Receipts, readReceipts } from '../../ingest/receipts/read-receipts.ts';
import type { Values } from '../command.ts';
import { boundHeaps } from '../engine-settings.ts';
import { type FoundInputs, findInputs } from '../find-inputs.ts';
import { heapOfPart } from '../heap-needed.ts';
import { isLarge, requireRecords, withProgress } from '../read-inputs.ts';
import type { Terminal } from '../terminal.ts';
import { readingThreads, sharingThreads } from '../threads/pool.ts';
import { threadCount } from '../threads/thread-count.ts';
import { partsOfFleet } from './parts-of-fleet.ts';
import { type PeriodOf, type SharedFleet, shareOfFleet } from './share-of-fleet.ts';

/** Whether there is so much to read that it pays to take one unit after the other: which units there are must be declared. */
const isLargeFleet = async ({ site, task }: FoundInputs): Promise<boolean> =>
  site.unitIds !== undefined && (await isLarge(task.folder));

/** Whether it also pays to take one site after the other. */
export const hasManySites = async (found: FoundInputs): Promise<boolean> =>
  found.site.sites.size > 1 && (await isLargeFleet(found));

/** Whether the records are taken site by site, and in each unit by unit. Needs the history, in which what was read stands between. */
export const goesSiteBySite = async (found: FoundInputs): Promise<boolean> =>
  found.task.history !== undefined && (await isLargeFleet(found));

/** The same from the user's arguments, where what they name can be found. */
export const isSiteBySite = (values: Values): Promise<boolean> =>
  findInputs(values).then(goesSiteBySite, () => false);

/** Reads all exports into the history, in threads. */
export async function readIntoHistory(
  { site, task }: FoundInputs,
  values: Values,
  terminal: Terminal,
): Promise<Receipts> {
  const { folder, site: _, history, ...settings } = task;
  const threads = readingThreads(threadCount(values));
  try {
    const receipts = await readReceipts(site, folder, history!, {
      ...settings,
      ...withProgress(terminal),
      readElsewhere: threads.receiptReader(task),
    });
    terminal.progressDone();
    requireRecords(
      { ...receipts, files: receipts.files.map(({ read, count }) => ({ ...read, records: count })) },
      task,
    );
    return receipts;
  } finally {
    await threads.end();
  }
}

/**
 * Reads all exports into the history, and makes the share of each part of the fleet from it, in threads: no more than the records of a part are held by each.
 */
export async function readSiteBySite(
  found: FoundInputs,
  values: Values,
  terminal: Terminal,
  periodOf: PeriodOf,
): Promise<SharedFleet> {
  const { site, task } = found;
  const { folder, site: _, history, ...settings } = task;
  const count = threadCount(values);
  boundHeaps('joining');
  const receipts = await readIntoHistory(found, values, terminal);
  const parts = partsOfFleet(site, receipts);
  const threads = sharingThreads(
    count,
    heapOfPart(
      parts.reduce((most, { records }) => Math.max(most, records), 0),
      count,
    ),
  );
  try {
    return await shareOfFleet(
      await openInputs(site, folder, settings),
      receipts,
      history!,
      parts,
      periodOf,
      (of) => threads.share({ ...task, of }),
      (done, of) => terminal.progress(`Joining records, ${done} of ${of} parts`),
    );
  } finally {
    await threads.end();
    boundHeaps('fleet');
  }
}
