import { readFile, stat } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { LEAST_KEY_BYTES } from '../ingest/codecs/value-codec.ts';
import { type ReadEffects, readExports } from '../ingest/read-exports.ts';
import type { Reading } from '../ingest/reading.ts';
import { readSiteFile } from '../site/read-site-file.ts';
import type { Site } from '../site/site.ts';
import { UserError } from '../user-error.ts';
import type { Values } from './command.ts';
import { bytesBelow } from './heap-needed.ts';
import { progressLine } from './progress-line.ts';
import type { Terminal } from './terminal.ts';
import { type ReadingThreads, readingThreads } from './threads/pool.ts';
import type { ReadTask } from './threads/thread.ts';
import { threadCount } from './threads/thread-count.ts';

/** Reads the site file and all exports, for the commands that start with them. */
export async function readInputs(
  values: Values,
  terminal: Terminal,
  watch?: ReadEffects['watch'],
): Promise<{ site: Site; reading: Reading }> {
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
    throw new UserError(
      'no_site_file',
      `${file}: must be a site file that can be read (${error.code})`,
      'The smallest one is: sites: [{ zone: Europe/Berlin }]',
    );
  });
  const site = readSiteFile(text, file);
  const key = await readPersonKey(site, dirname(file));
  const outputs = values.out === undefined ? [] : [String(values.out)];
  const history = historyFolder(values);
  const ignore = [file, ...outputs, ...(key ? [key.file] : []), ...(history ? [history] : [])];
  const kept = history === undefined || watch ? {} : { history };
  const personKey = key ? { personKey: key.bytes } : {};
  const count = threadCount(values);
  const threads =
    count > 1 && !watch && (await bytesBelow(folder, LARGE)) > LARGE ? readingThreads(count) : undefined;
  const began = performance.now();
  const reading = await readAll(
    { threads, task: { site: { text, file }, folder, ignore, ...personKey, ...kept } },
    (elsewhere) =>
      readExports(site, folder, {
        onProgress: (progress) =>
          terminal.progress(progressLine(progress, (performance.now() - began) / 1000)),
        ignore,
        ...personKey,
        ...kept,
        ...(watch ? { watch } : {}),
        ...elsewhere,
      }),
  );
  terminal.progressDone();
  if (reading.files.every((of) => of.records === 0)) {
    const found = reading.problems[0];
    const first = found ? `; the first problem: ${found.file || found.source}: ${found.expected}` : '';
    throw new UserError(
      'no_usable_file',
      `${folder}: must hold at least one file that a source of ${file} can read, found none${first}`,
      'The command check lists every file and problem.',
    );
  }
  return { site, reading };
}

/** The folder that the user names; else one in the output folder, where the command has one. */
function historyFolder({ history, out }: Values): string | undefined {
  if (history === 'none') return undefined;
  if (history !== undefined) return String(history);
  return out === undefined ? undefined : join(String(out), 'history');
}

/** Reads in threads, if there are any, and ends them. */
async function readAll(
  { threads, task }: { threads: ReadingThreads | undefined; task: Omit<ReadTask, 'job'> },
  read: (elsewhere: Pick<ReadEffects, 'readElsewhere'>) => Promise<Reading>,
): Promise<Reading> {
  if (!threads) return read({});
  try {
    return await read({ readElsewhere: (job) => threads.read({ ...task, job }) });
  } finally {
    await threads.end();
  }
}

/** Bytes of input from which it pays to read in threads: each has to start, and to warm up. */
const LARGE = 20_000_000;

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

const exists = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  );
