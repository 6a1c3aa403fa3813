import { existsSync } from 'node:fs';
import { readdir, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** What stands behind a folder's name in that of the folder in which a run writes it; something of the run's own follows. */
export const UNFINISHED = '.unfinished-';
/** In it: what is being written, and what stood in its place before, for the moment between two renames. */
export const FRESH = 'new';
export const EARLIER = 'earlier';

/** A run writes for minutes; of one that wrote nothing for so long nothing more comes. */
const NOT_IN_USE_MS = 24 * 3_600_000;

/**
 * Takes away what runs left beside a folder that were ended by force: where nothing was written in it for a day, since a younger one may be of a run that
 * goes on, here or on another machine. What stood in the folder before is kept as long as the place is empty. What can't be taken away stays.
 */
export async function removeLeftovers(folder: string, now = Date.now()): Promise<void> {
  const place = dirname(folder);
  for (const name of await readdir(place)) {
    if (!name.startsWith(`${basename(folder)}${UNFINISHED}`)) continue;
    const leftover = join(place, name);
    if (existsSync(join(leftover, EARLIER)) && !existsSync(folder)) continue;
    // A run that goes on may end meanwhile.
    const last = await lastWritten(leftover).catch(() => now);
    if (now - last > NOT_IN_USE_MS)
      await rm(leftover, { recursive: true, force: true }).catch(() => undefined);
  }
}

async function lastWritten(folder: string): Promise<number> {
  let last = (await stat(folder)).mtimeMs;
  for (const entry of await readdir(folder, { withFileTypes: true, recursive: true }))
    last = Math.max(last, (await stat(join(entry.parentPath, entry.name))).mtimeMs);
  return last;
}
