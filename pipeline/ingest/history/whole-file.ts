import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { threadId } from 'node:worker_threads';

/**
 * Writes a file that others see whole or not at all: under another name, and then renamed. The thread waits: it has nothing else to do, and for many small files that is faster.
 *
 * @param folder made where it is not there
 * @returns whether it was written; not where the machine says no (no space, no right)
 */
export function writeWhole(folder: string, name: string, content: string | Uint8Array): boolean {
  const unfinished = path.join(folder, `${name}.${process.pid}-${threadId}.unfinished`);
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(unfinished, content);
    renameSync(unfinished, path.join(folder, name));
    return true;
  } catch (error) {
    if (!isOfMachine(error)) throw error;
    takeAway(unfinished);
    return false;
  }
}

/** Removes a file, where the machine lets it. */
export function takeAway(file: string): void {
  try {
    rmSync(file, { force: true });
  } catch (error) {
    if (!isOfMachine(error)) throw error;
  }
}

/** Whether an error comes from the machine, and not from a fault of the program. */
export const isOfMachine = (error: unknown): boolean => (error as NodeJS.ErrnoException).code !== undefined;
