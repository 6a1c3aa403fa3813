import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { UserError } from '../user-error.ts';

/** A file to write: its path below the target folder, and its content. */
export interface FileToWrite {
  path: string;
  content: string | Uint8Array | Iterable<string>;
}

/** A folder that is being written. What goes wrong is thrown as `not_writable`, and nothing is left of it. */
export interface FreshFolder {
  /** Files may be written side by side. */
  write(file: FileToWrite): Promise<void>;
  /** Files written so far. */
  readonly count: number;
  /** Puts the folder in its place. */
  finish(): Promise<void>;
  /** Takes away what was written; what is written afterwards is let go. */
  abandon(): Promise<void>;
}

/**
 * Begins to write a folder whole or not at all: everything goes to a folder beside it, which then takes its place. What the folder held before is gone,
 * so that pages of an earlier run don't stand among the new.
 *
 * @throws UserError `not_writable` where the place can't be written
 */
export async function freshFolder(folder: string): Promise<FreshFolder> {
  const fresh = `${folder}.new`;
  const old = `${folder}.old`;
  let count = 0;
  let isAbandoned = false;
  const abandon = () => {
    isAbandoned = true;
    return rm(fresh, { recursive: true, force: true }).catch(() => undefined);
  };
  const tried = async (step: () => Promise<void>): Promise<void> => {
    try {
      await step();
    } catch (error) {
      const { code, message } = error as NodeJS.ErrnoException;
      if (code === undefined) throw error;
      await abandon();
      throw new UserError(
        'not_writable',
        `${folder}: must be a place that can be written, found ${code} (${message})`,
      );
    }
  };
  await tried(async () => {
    await rm(fresh, { recursive: true, force: true });
    await mkdir(fresh, { recursive: true });
  });
  return {
    write: ({ path, content }) =>
      tried(async () => {
        if (isAbandoned) return;
        await mkdir(dirname(join(fresh, path)), { recursive: true });
        await writeFile(join(fresh, path), content);
        count++;
        // What was under way when the folder was taken away would leave it behind.
        if (isAbandoned) await abandon();
      }),
    get count() {
      return count;
    },
    finish: () =>
      tried(async () => {
        await rm(old, { recursive: true, force: true });
        await rename(folder, old).catch((error: NodeJS.ErrnoException) => {
          if (error.code !== 'ENOENT') throw error;
        });
        await rename(fresh, folder);
        await rm(old, { recursive: true, force: true });
      }),
    abandon,
  };
}

/** Writes a folder as {@link freshFolder} does. */
export async function writeFolder(folder: string, files: readonly FileToWrite[]): Promise<void> {
  const fresh = await freshFolder(folder);
  for (const file of files) await fresh.write(file);
  await fresh.finish();
}
