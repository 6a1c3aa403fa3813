import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Truth } from '../../data-samples/generator/truth.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';

/** The committed demo data, as the tests of this folder need it. */
export const FOLDER = fileURLToPath(new URL('../../data-samples', import.meta.url));

export const readTruth = (): Truth =>
  JSON.parse(readFileSync(`${FOLDER}/generator/truth.json`, 'utf8')) as Truth;

export const readDemoSite = () => readSiteFile(readFileSync(`${FOLDER}/site.yaml`, 'utf8'), 'site.yaml');
