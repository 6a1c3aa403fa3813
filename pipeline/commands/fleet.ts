import { spanOfRecords } from '../findings/period.ts';
import { mergeShares } from '../findings/shares/merge-shares.ts';
import { shareOf } from '../findings/shares/share.ts';
import type { Site } from '../site/site.ts';
import { transform } from '../transform/transform.ts';
import type { Values } from './command.ts';
import { findInputs } from './find-inputs.ts';
import { readFound } from './read-inputs.ts';
import { goesSiteBySite, readSiteBySite } from './site-by-site/read-site-by-site.ts';
import type { PeriodOf, SharedFleet } from './site-by-site/share-of-fleet.ts';
import type { Terminal } from './terminal.ts';
import type { InputsTask } from './threads/thread.ts';

/** What commands that ask something of all units are given. */
export interface Fleet extends SharedFleet {
  site: Site;
  /** The site file, as other threads are told of it. */
  siteFile: InputsTask['site'];
}

/**
 * Reads everything and makes the share of all units: of all records at once, or site by site where there are very many.
 *
 * @param periodOf period, from the first and last operating day of the records
 * @param onSite told of the site file before anything is read
 */
export async function readFleet(
  values: Values,
  terminal: Terminal,
  periodOf: PeriodOf,
  onSite?: (site: InputsTask['site']) => void,
): Promise<Fleet> {
  const found = await findInputs(values);
  const { site, task } = found;
  const siteFile = task.site;
  onSite?.(siteFile);
  if (await goesSiteBySite(found))
    return { site, siteFile, ...(await readSiteBySite(found, values, terminal, periodOf)) };
  const reading = await readFound(found, values, terminal);
  const period = periodOf(spanOfRecords(site, reading.records));
  terminal.progress('Joining records');
  const transformed = transform(site, reading.records, period.until);
  terminal.progress('Looking at each unit');
  return {
    site,
    siteFile,
    share: mergeShares(site, [shareOf(site, reading.records, transformed, period)]),
    reading,
    period,
  };
}
