import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { UserError } from '../user-error.ts';
import { EARLIER, FRESH, removeLeftovers, UNFINISHED } from './leftovers.ts';

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
 * Begins to write a folder whole or not at all: everything goes to a folder of this run's own beside it, which then takes its place. What the folder held
 * before is gone, so that pages of an earlier run don't stand among the new; where it can't be replaced, it is put back. Of two runs at once, the folder
 * is that of the one that finishes last.
 *
 * @throws UserError `not_writable` where the place can't be written
 */
export async function freshFolder(folder: string): Promise<FreshFolder> {
  const target = resolve(folder);
  let own: string | undefined;
  let count = 0;
  let isAbandoned = false;
  const abandon = async () => {
    isAbandoned = true;
    if (own === undefined) return;
    await rm(join(own, FRESH), { recursive: true, force: true }).catch(() => undefined);
    // Not where it holds what stood in the place before and couldn't be put back.
    await rmdir(own).catch(() => undefined);
  };
  const tried = async <T>(step: () => Promise<T>): Promise<T> => {
    try {
      return await step();
    } catch (error) {
      const { code, message } = error as NodeJS.ErrnoException;
      if (code === undefined) throw error;
      await abandon();
      throw new UserError(
        'not_writable',
        `${folder}: must be a place that can be written, found ${code} (${message})`,
        own !== undefined && existsSync(join(own, EARLIER))
          ? `What stood there is in ${join(own, EARLIER)}.`
          : undefined,
      );
    }
  };
  const fresh = await tried(async () => {
    await mkdir(dirname(target), { recursive: true });
    await removeLeftovers(target);
    own = await mkdtemp(`${target}${UNFINISHED}`);
    // Its own rights would be for this user alone.
    await mkdir(join(own, FRESH));
    return join(own, FRESH);
  });
  const makeFolder = folderMaker(fresh);
  return {
    write: ({ path, content }) =>
      tried(async () => {
        if (isAbandoned) return;
        try {
          await makeFolder(dirname(join(fresh, path)));
          await writeFile(join(fresh, path), content);
        } catch (error) {
          if (!isAbandoned) throw error;
        }
        // What was under way when the folder was taken away would leave it behind.
        if (isAbandoned) await abandon();
        else count++;
      }),
    get count() {
      return count;
    },
    finish: () =>
      tried(async () => {
        await replace(target, fresh, join(dirname(fresh), EARLIER));
        await abandon();
      }),
    abandon,
  };
}

/** Makes folders below one that is there, each once; never that one itself, which would hold only a part if someone took it away. */
function folderMaker(base: string): (folder: string) => Promise<unknown> {
  const made = new Map<string, Promise<unknown>>([[base, Promise.resolve()]]);
  const make = (folder: string): Promise<unknown> => {
    const known = made.get(folder);
    if (known) return known;
    const making = make(dirname(folder)).then(() => mkdir(folder));
    made.set(folder, making);
    return making;
  };
  return make;
}

/** Other runs that may take the place between two renames of this one. */
const MOST_TURNS = 100;

/** Puts a folder in the place of another, which goes aside, and comes back where that fails. */
async function replace(target: string, fresh: string, aside: string): Promise<void> {
  for (let turn = 1; ; turn++) {
    const isAside = await movedAside(target, aside);
    const error = await rename(fresh, target).catch((error: NodeJS.ErrnoException) => error);
    // Another run has put its own there meanwhile, which goes aside in turn: both are newer than what went aside first.
    const isTaken = error !== undefined && (error.code === 'ENOTEMPTY' || existsSync(target));
    if (isAside && error && !isTaken) await rename(aside, target).catch(() => undefined);
    else if (isAside) await rm(aside, { recursive: true, force: true });
    if (!error) return;
    if (!isTaken || turn === MOST_TURNS) throw error;
  }
}

/** Whether something stood there. */
async function movedAside(target: string, aside: string): Promise<boolean> {
  try {
    await rename(target, aside);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return false;
    throw error;
  }
}

/** Writes a folder as {@link freshFolder} does. */
export async function writeFolder(folder: string, files: readonly FileToWrite[]): Promise<void> {
  const fresh = await freshFolder(folder);
  for (const file of files) await fresh.write(file);
  await fresh.finish();
}
