import { readdir, stat } from 'node:fs/promises';
import { totalmem } from 'node:os';
import { join } from 'node:path';
import { getHeapStatistics } from 'node:v8';

/** Bytes of heap that a byte of exports takes at most: a cycle of 120 bytes becomes a record, a classed cycle and its part of a day (measured on made exports). */
const HEAP_OF_INPUT = 16;
/** The same where records are taken site by site: what is held of the day of a unit while all units are compared. */
const HEAP_SITE_BY_SITE = 2;
/** Bytes of heap that a thread may take for a record of its part while it is joined, many times what made exports take, and the least that a thread gets, MB. */
const HEAP_OF_RECORD = 5000;
const LEAST_HEAP = 1024;
/** Share of the machine's memory that the program may ask for. */
const SHARE_OF_MACHINE = 0.8;
const MEGABYTE = 2 ** 20;

/**
 * The heap to ask for, in MB, where the one that Node gives by default would be too small for the exports; undefined where it will do, or the machine has no more.
 *
 * @param input bytes of the exports
 * @param limit bytes of the heap as it is
 * @param machine bytes of the machine's memory
 * @param siteBySite whether records are taken site by site
 */
export function heapNeeded(
  input: number,
  limit: number,
  machine: number,
  siteBySite = false,
): number | undefined {
  const ofInput = siteBySite ? HEAP_SITE_BY_SITE : HEAP_OF_INPUT;
  const wanted = Math.min(input * ofInput, machine * SHARE_OF_MACHINE);
  return wanted > limit ? Math.floor(wanted / MEGABYTE) : undefined;
}

/**
 * The same for a folder, on this machine.
 *
 * @param isSiteBySite asked only where the exports are large
 */
export async function heapFor(
  folder: string,
  isSiteBySite: () => Promise<boolean>,
): Promise<number | undefined> {
  const input = await bytesBelow(folder);
  const needed = (siteBySite: boolean): number | undefined =>
    heapNeeded(input, getHeapStatistics().heap_size_limit, totalmem(), siteBySite);
  const atOnce = needed(false);
  return atOnce !== undefined && (await isSiteBySite()) ? needed(true) : atOnce;
}

/**
 * The heap, in MB, of each of the threads in which parts of a fleet are joined, on this machine.
 *
 * @param records of the largest part
 */
export function heapOfPart(records: number, threads: number): number {
  const most = (totalmem() * SHARE_OF_MACHINE) / threads / MEGABYTE;
  return Math.floor(Math.min(most, Math.max(LEAST_HEAP, (records * HEAP_OF_RECORD) / MEGABYTE)));
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
