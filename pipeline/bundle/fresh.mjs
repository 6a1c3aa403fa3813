// Whether dist/ was bundled from the sources as they stand: nothing below pipeline/ is newer than it, or this is an installed package, where times say
// nothing (files get the time at which they were unpacked) and the sources can't be run.
import { existsSync, readdirSync, statSync } from 'node:fs';

const SOURCES = new URL('../', import.meta.url);
const BUNDLE = new URL('../../dist/', import.meta.url);
/** Stands in a checkout and not in the package. */
const OF_CHECKOUT = new URL('../../tsconfig.json', import.meta.url);

/**
 * Address of a bundled module; undefined where there is none or a source has changed since.
 *
 * @param {string} name name of the module, such as `main.js`
 * @returns {string | undefined}
 */
export function bundled(name) {
  const module = new URL(name, BUNDLE);
  const made = statSync(module, { throwIfNoEntry: false })?.mtimeMs;
  if (made === undefined) return undefined;
  return existsSync(OF_CHECKOUT) && hasNewer(SOURCES, made) ? undefined : module.href;
}

function hasNewer(folder, made) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const url = new URL(entry.isDirectory() ? `${entry.name}/` : entry.name, folder);
    if (entry.isDirectory() ? hasNewer(url, made) : statSync(url).mtimeMs > made) return true;
  }
  return false;
}
