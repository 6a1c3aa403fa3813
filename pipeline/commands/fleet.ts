import { type Period, spanOfRecords } from '../findings/period.ts';
import { mergeShares } from '../findings/shares/merge-shares.ts';
import { type Share, shareOf } from '../findings/shares/share.ts';
import { unitCourse } from '../findings/shares/unit-course.ts';
import type { Records } from '../site/records.ts';
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
}

/** What may be begun beside the making of the share. */
export interface Beside {
  /** Told of the site file before anything is read. */
  onSite?(site: InputsTask['site']): void;
  /** Told of the panel and the courses of its units, in the order that the share will have; not where the records are taken site by site. */
  onJoined?(
    site: InputsTask['site'],
    joined: Pick<Share, 'units' | 'panel'>,
    records: Records,
    period: Period,
  ): void;
}

/**
 * Reads everything and makes the share of all units: of all records at once, or site by site where there are very many.
 *
 * @param periodOf period, from the first and last operating day of the records
 * @param beside told of what there is before the share is made
 */
export async function readFleet(
  values: Values,
  terminal: Terminal,
  periodOf: PeriodOf,
  beside: Beside = {},
): Promise<Fleet> {
  const found = await findInputs(values);
  const { site, task } = found;
  beside.onSite?.(task.site);
  if (await goesSiteBySite(found))
    return { site, ...(await readSiteBySite(found, values, terminal, periodOf)) };
  const reading = await readFound(found, values, terminal);
  const period = periodOf(spanOfRecords(site, reading.records));
  terminal.progress('Joining records');
  const transformed = transform(site, reading.records, period.until, period.since);
  terminal.progress('Looking at each unit');
  if (beside.onJoined) {
    const units = transformed.histories.map((history) => unitCourse(history, site, period.until));
    beside.onJoined(task.site, { units, panel: transformed.panel }, reading.records, period);
  }
  return {
    site,
    share: mergeShares(site, [shareOf(site, reading.records, transformed, period)]),
    reading,
    period,
  };
}
