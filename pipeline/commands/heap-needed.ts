import { readdir, stat } from 'node:fs/promises';
import { totalmem } from 'node:os';
import { join } from 'node:path';
import { getHeapStatistics } from 'node:v8';

/** Bytes of heap that a byte of exports takes at most: a cycle of 120 bytes becomes a record, a classed cycle and its part of a day (measured on made exports). */
const HEAP_OF_INPUT = 16;
/** Share of the machine's memory that the program may ask for. */
const SHARE_OF_MACHINE = 0.8;
const MEGABYTE = 2 ** 20;

/**
 * The heap to ask for, in MB, where the one that Node gives by default would be too small for the exports; undefined where it will do, or the machine has no more.
 *
 * @param input bytes of the exports
 * @param limit bytes of the heap as it is
 * @param machine bytes of the machine's memory
 */
export function heapNeeded(input: number, limit: number, machine: number): number | undefined {
  const wanted = Math.min(input * HEAP_OF_INPUT, machine * SHARE_OF_MACHINE);
  return wanted > limit ? Math.floor(wanted / MEGABYTE) : undefined;
}

/** The same for a folder, on this machine. */
export async function heapFor(folder: string): Promise<number | undefined> {
  return heapNeeded(await bytesBelow(folder), getHeapStatistics().heap_size_limit, totalmem());
}

/**
 * Bytes of all files below a folder; a folder that can't be listed counts nothing, since reading it says so.
 *
 * @param enough the count may end where there are more
 */
export async function bytesBelow(folder: string, enough = Number.POSITIVE_INFINITY): Promise<number> {
  let bytes = 0;
  for (const entry of await readdir(folder, { withFileTypes: true, recursive: true }).catch(() => [])) {
    if (!entry.isFile()) continue;
    bytes += await stat(join(entry.parentPath, entry.name)).then(
      ({ size }) => size,
      () => 0,
    );
    if (bytes > enough) break;
  }
  return bytes;
}
