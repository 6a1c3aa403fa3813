import { Tinypool } from 'tinypool';
import type { Values } from '../../pipeline/commands/command.ts';
import { findInputs } from '../../pipeline/commands/find-inputs.ts';
import { partsOfFleet, spanOfReceipts } from '../../pipeline/commands/site-by-site/parts-of-fleet.ts';
import { readIntoHistory } from '../../pipeline/commands/site-by-site/read-site-by-site.ts';
import type { Terminal } from '../../pipeline/commands/terminal.ts';
import { reviewPeriod } from '../../pipeline/findings/period.ts';
import { partsOf } from '../../pipeline/ingest/receipts/records-of-parts.ts';
import type { PackedRows } from '../../pipeline/packed-rows.ts';

/**
 * Reads all exports into the history and joins them site by site, in threads, as the program does before it looks at each unit.
 *
 * @param thread file of the thread that joins
 * @returns rows read, and rows of the panel
 */
export async function joinLarge(
  values: Values & { threads: string },
  terminal: Terminal,
  thread: string,
): Promise<{ read: number; panel: number }> {
  const found = await findInputs(values);
  const { task, site } = found;
  const receipts = await readIntoHistory(found, values, terminal);
  const { until } = reviewPeriod(undefined, spanOfReceipts(site, receipts));
  const count = Number(values.threads);
  const pool = new Tinypool({
    filename: thread,
    runtime: 'worker_threads',
    minThreads: count,
    maxThreads: count,
  });
  const panels = await Promise.all(
    partsOfFleet(site, receipts).map(
      ({ units }): Promise<PackedRows<object>[]> =>
        pool.run({
          site: task.site,
          folder: task.folder,
          of: {
            units,
            parts: partsOf(receipts, new Set(units)),
            history: task.history,
            until,
          },
        }),
    ),
  );
  await pool.destroy();
  return {
    read: receipts.files.reduce((sum, { count }) => sum + count, 0),
    panel: panels.flat().reduce((sum, { count }) => sum + count, 0),
  };
}
