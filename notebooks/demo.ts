/**
 * The records that the notebooks look at: the demo data, up to the end of September 2026. To look at your own, name your folder and month here, and your
 * units in the notebooks.
 */
import { fileURLToPath } from 'node:url';
import { panel, readRecords, readSite } from '../pipeline/index.ts';

export const FOLDER = fileURLToPath(new URL('../data-samples', import.meta.url));
export const MONTH = '2026-09';

export const site = await readSite(`${FOLDER}/site.yaml`);
export const reading = await readRecords(site, FOLDER);
export const joined = panel(site, reading, { month: MONTH });
