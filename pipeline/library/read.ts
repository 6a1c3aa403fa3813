import { readFile } from 'node:fs/promises';
import { readExports } from '../ingest/read-exports.ts';
import type { Reading } from '../ingest/reading.ts';
import { readSiteFile } from '../site/read-site-file.ts';
import type { Site } from '../site/site.ts';
import { UserError } from '../user-error.ts';

/**
 * Reads a site file.
 *
 * @param file path of the YAML file
 * @throws UserError where it can't be read, with one line for each fault
 * @example const site = await readSite('data-samples/site.yaml');
 */
export async function readSite(file: string): Promise<Site> {
  const text = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    throw new UserError('no_site_file', `${file}: must be a site file that can be read (${error.code})`);
  });
  return readSiteFile(text, file);
}

/**
 * Reads all exports of a site: records, and every row that did not become one, with its reason.
 *
 * @param folder folder of the exports; left out: `.`
 * @throws UserError where the folder can't be listed
 * @example const reading = await readRecords(site, 'data-samples');
 */
export async function readRecords(site: Site, folder = '.'): Promise<Reading> {
  return readExports(site, folder);
}
