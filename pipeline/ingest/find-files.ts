import { readdir, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { byCodeUnit } from '../by-code-unit.ts';
import { UserError } from '../user-error.ts';

/** The files below a folder, as relative paths with forward slashes in order of their code units. */
export interface FoundFiles {
  files: string[];
  /** Symbolic links that lead out of the folder or to nothing: never read. */
  refused: string[];
}

/**
 * Lists the files below a folder. Links are followed where they stay inside the folder (and don't lead into a folder that holds them); names that
 * start with `~$` (lock files of spreadsheet programs) are left out.
 *
 * @param ignore files and folders that are no inputs, such as the site file and the output folder
 * @throws UserError `unreadable_folder` where the folder or one below it can't be listed: reading on would leave files out unseen
 */
export async function findFiles(folder: string, ignore: readonly string[] = []): Promise<FoundFiles> {
  const root = await realOrSame(folder);
  const ignored = new Set(await Promise.all(ignore.map(realOrSame)));
  const found: FoundFiles = { files: [], refused: [] };

  const visit = async (directory: string, relative: string, above: readonly string[]): Promise<void> => {
    const entries = await readdir(directory, { withFileTypes: true }).catch(
      (error: NodeJS.ErrnoException) => {
        throw new UserError(
          'unreadable_folder',
          `${directory}: must be a folder that can be listed (${error.code})`,
        );
      },
    );
    for (const entry of entries) {
      if (entry.name.startsWith('~$')) continue;
      const name = relative === '' ? entry.name : `${relative}/${entry.name}`;
      const place = path.join(directory, entry.name);
      // The folder is a real one, and so is what is no link in it.
      const real = entry.isSymbolicLink() ? await realOrSame(place) : place;
      if (ignored.has(real)) continue;
      let kind: { isFile(): boolean; isDirectory(): boolean } = entry;
      if (entry.isSymbolicLink()) {
        const target = await stat(real).catch(() => undefined);
        if (!target || !isInside(root, real)) {
          found.refused.push(name);
          continue;
        }
        kind = target;
      }
      if (kind.isFile()) found.files.push(name);
      else if (kind.isDirectory() && !above.includes(real)) await visit(real, name, [...above, real]);
    }
  };
  await visit(root, '', [root]);
  return { files: found.files.sort(byCodeUnit), refused: found.refused.sort(byCodeUnit) };
}

const realOrSame = (name: string): Promise<string> => realpath(name).catch(() => path.resolve(name));

function isInside(root: string, real: string): boolean {
  const relative = path.relative(root, real);
  return relative !== '..' && !relative.startsWith(`..${path.sep}`) && !path.isAbsolute(relative);
}
