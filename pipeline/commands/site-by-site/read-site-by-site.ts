import { openInputs } from '../../ingest/read-jobs.ts';
import { readReceipts } from '../../ingest/receipts/read-receipts.ts';
import type { Values } from '../command.ts';
import type { FoundInputs } from '../find-inputs.ts';
import { isLarge, requireRecords, withProgress } from '../read-inputs.ts';
import type { Terminal } from '../terminal.ts';
import { readingThreads } from '../threads/pool.ts';
import { threadCount } from '../threads/thread-count.ts';
import { type SharedFleet, shareOfFleet } from './share-of-fleet.ts';

/** Whether the exports are taken site by site: where there are several sites, and so much to read that it pays. Needs the history, in which what was read stands between. */
export async function goesSiteBySite({ site, task }: FoundInputs): Promise<boolean> {
  return (
    task.history !== undefined &&
    site.unitIds !== undefined &&
    site.sites.size > 1 &&
    (await isLarge(task.folder))
  );
}

/**
 * Reads all exports into the history, and makes the share of each part of the fleet from it, in threads: no more than the records of a part are held by each.
 *
 * @param month asked for
 */
export async function readSiteBySite(
  { site, task }: FoundInputs,
  month: string | undefined,
  values: Values,
  terminal: Terminal,
): Promise<SharedFleet> {
  const { folder, site: _, history, ...settings } = task;
  const threads = readingThreads(threadCount(values));
  try {
    const receipts = await readReceipts(site, folder, history!, {
      ...settings,
      ...withProgress(terminal),
      readElsewhere: (job) => threads.readReceipt({ ...task, job }),
    });
    terminal.progressDone();
    const shared = await shareOfFleet(
      await openInputs(site, folder, settings),
      receipts,
      history!,
      month,
      (of) => threads.share({ ...task, of }),
      (done, of) => terminal.progress(`Joining records, ${done} of ${of} parts`),
    );
    requireRecords(shared.reading, task);
    return shared;
  } finally {
    await threads.end();
  }
}
