import { readFile, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { LEAST_KEY_BYTES } from '../ingest/codecs/value-codec.ts';
import { readSiteFile } from '../site/read-site-file.ts';
import type { Site } from '../site/site.ts';
import { UserError } from '../user-error.ts';
import type { Values } from './command.ts';
import type { InputsTask } from './threads/thread.ts';

/** The site file, read, and where its exports are; the task says the same to other threads. */
export interface FoundInputs {
  site: Site;
  task: InputsTask;
}

/**
 * Finds what the user's arguments name: the folder of exports, the site file, the key of the hash of names.
 *
 * @throws UserError where one of them is not there, or the site file has faults
 */
export async function findInputs(values: Values): Promise<FoundInputs> {
  const folder = String(values.folder);
  const file = values.site === undefined ? join(folder, 'site.yaml') : String(values.site);
  const isFolder = await stat(folder).then(
    (found) => found.isDirectory(),
    () => false,
  );
  if (!isFolder)
    throw new UserError(
      'no_folder',
      `${folder}: must be a folder with exports, found ${(await exists(folder)) ? 'a file' : 'nothing'}`,
    );
  const text = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT' && values.site === undefined)
      throw new UserError(
        'no_site_file',
        `${folder}: holds no site.yaml yet`,
        `Run first: cleaning-evidence learn ${quoted(folder)}`,
      );
    throw new UserError('no_site_file', `${file}: must be a site file that can be read (${error.code})`);
  });
  const site = readSiteFile(text, file);
  const key = await readPersonKey(site, dirname(file));
  const outputs = values.out === undefined ? [] : [String(values.out)];
  const history = historyFolder(values);
  const ignore = [file, ...outputs, ...(key ? [key.file] : []), ...(history ? [history] : [])];
  return {
    site,
    task: {
      site: { text, file },
      folder,
      ignore,
      ...(key ? { personKey: key.bytes } : {}),
      ...(history === undefined ? {} : { history }),
    },
  };
}

/** The folder that the user names; else one in the output folder, where the command has one. */
function historyFolder({ history, out }: Values): string | undefined {
  if (history === 'none') return undefined;
  if (history !== undefined) return String(history);
  return out === undefined ? undefined : join(String(out), 'history');
}

/** The key of the hash of names, where the site file names one. */
async function readPersonKey(
  site: Site,
  folder: string,
): Promise<{ file: string; bytes: Uint8Array } | undefined> {
  const { people } = site.declared;
  if (people === undefined) return undefined;
  const file = resolve(folder, people.key_file);
  const bytes = await readFile(file).catch((error: NodeJS.ErrnoException) => {
    throw new UserError(
      'person_key',
      `${file}: must be a file with the key of the hash of names (${error.code})`,
    );
  });
  if (bytes.length < LEAST_KEY_BYTES)
    throw new UserError(
      'person_key',
      `${file}: must hold at least ${LEAST_KEY_BYTES} bytes, found ${bytes.length}`,
    );
  return { file, bytes };
}

/** A path as it is typed after a command. */
export const quoted = (path: string): string => (/\s/.test(path) ? `"${path}"` : path);

const exists = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  );
