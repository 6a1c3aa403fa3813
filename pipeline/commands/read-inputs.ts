import { type ReadEffects, readExports } from '../ingest/read-exports.ts';
import type { Answer, ReadFilesEffects } from '../ingest/read-files.ts';
import type { FileRead, Problem, Reading } from '../ingest/reading.ts';
import { UserError } from '../user-error.ts';
import type { Values } from './command.ts';
import type { FoundInputs } from './find-inputs.ts';
import { bytesBelow } from './heap-needed.ts';
import { progressLine } from './progress-line.ts';
import type { Terminal } from './terminal.ts';
import { readingThreads } from './threads/pool.ts';
import { threadCount } from './threads/thread-count.ts';

/** Reads all exports at once. */
export async function readFound(
  { site, task }: FoundInputs,
  values: Values,
  terminal: Terminal,
  watch?: ReadEffects['watch'],
): Promise<Reading> {
  const { folder, site: _, history, ...settings } = task;
  const count = threadCount(values);
  const threads = count > 1 && !watch && (await isLarge(folder)) ? readingThreads(count) : undefined;
  try {
    const reading = await readExports(site, folder, {
      ...settings,
      ...withProgress(terminal),
      ...(watch || history === undefined ? {} : { history }),
      ...(watch ? { watch } : {}),
      ...(threads ? { readElsewhere: (job) => threads.read({ ...task, job }) } : {}),
    });
    terminal.progressDone();
    requireRecords(reading, task);
    return reading;
  } finally {
    await threads?.end();
  }
}

/** Bytes of input from which it pays to read in threads: each has to start, and to warm up. */
const LARGE = 20_000_000;

export const isLarge = async (folder: string): Promise<boolean> => (await bytesBelow(folder, LARGE)) > LARGE;

/** Bytes of input from which it pays to start one thread beside the program's own at once: it is ready to draw when there is something to be drawn. */
const MIDDLING = 1_000_000;

export async function isMiddling(folder: string): Promise<boolean> {
  const bytes = await bytesBelow(folder, LARGE);
  return bytes > MIDDLING && bytes <= LARGE;
}

/** Shows how far reading has come. */
export function withProgress(terminal: Terminal): Pick<ReadFilesEffects<Answer>, 'onProgress'> {
  const began = performance.now();
  return {
    onProgress: (progress) => terminal.progress(progressLine(progress, (performance.now() - began) / 1000)),
  };
}

/** @throws UserError where no file gave a record */
export function requireRecords(
  { files, problems }: { files: readonly FileRead[]; problems: readonly Problem[] },
  { folder, site }: FoundInputs['task'],
): void {
  if (files.some((of) => of.records > 0)) return;
  const found = problems[0];
  const first = found ? `; the first problem: ${found.file || found.source}: ${found.expected}` : '';
  throw new UserError(
    'no_usable_file',
    `${folder}: must hold at least one file that a source of ${site.file} can read, found none${first}`,
    'The command check lists every file and problem.',
  );
}
