import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { UserError } from '../user-error.ts';

/** A file to write: its path below the target folder, and its content. */
export interface FileToWrite {
  path: string;
  content: string | Uint8Array | Iterable<string>;
}

/**
 * Writes a folder whole or not at all: everything goes to a folder beside it, which then takes its place. What the folder held before is gone,
 * so that pages of an earlier run don't stand among the new.
 *
 * @throws UserError `not_writable` where the place can't be written
 */
export async function writeFolder(folder: string, files: readonly FileToWrite[]): Promise<void> {
  const fresh = `${folder}.new`;
  const old = `${folder}.old`;
  try {
    await rm(fresh, { recursive: true, force: true });
    for (const { path, content } of files) {
      await mkdir(dirname(join(fresh, path)), { recursive: true });
      await writeFile(join(fresh, path), content);
    }
    await rm(old, { recursive: true, force: true });
    await rename(folder, old).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOENT') throw error;
    });
    await rename(fresh, folder);
    await rm(old, { recursive: true, force: true });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    await rm(fresh, { recursive: true, force: true }).catch(() => undefined);
    throw new UserError(
      'not_writable',
      `${folder}: must be a place that can be written, found ${code} (${message})`,
    );
  }
}
