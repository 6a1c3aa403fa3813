import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import type { Reading } from '../../pipeline/ingest/reading.ts';
import { parseDay } from '../../pipeline/site/day.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import type { Site } from '../../pipeline/site/site.ts';
import { type Transformed, transform } from '../../pipeline/transform/transform.ts';

export const FLEETS = ['fleet-a', 'fleet-b'] as const;

export const folderOf = (fleet: string): URL => new URL(`./${fleet}/`, import.meta.url);

/** A fleet from its exports to the panel, as a review does it. */
export async function readFleet(
  fleet: string,
  until: string,
): Promise<{ site: Site; reading: Reading; transformed: Transformed }> {
  const folder = folderOf(fleet);
  const site = readSiteFile(readFileSync(new URL('site.yaml', folder), 'utf8'), 'site.yaml');
  const reading = await readExports(site, fileURLToPath(folder));
  return { site, reading, transformed: transform(site, reading.records, parseDay(until)!) };
}
