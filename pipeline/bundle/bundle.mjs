// Bundles the program into dist/, so that it starts in a tenth of the time that hundreds of source files take. Run by npm after an install.
import { readdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { build } from 'esbuild';
import { dist, settings } from './settings.mjs';

// Parts of an earlier bundle go; types, which are made only for a package, stay.
for (const name of await readdir(dist).catch(() => [])) if (name !== 'types') await rm(path.join(dist, name));
await build(settings);
