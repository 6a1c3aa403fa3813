import { createHash } from 'node:crypto';
import type { FileColumns } from '../file-columns.ts';
import { isReadingFault } from '../read-file.ts';
import { type InputSettings, type Inputs, inputOf, type ReadJob, readJob } from '../read-jobs.ts';
import { type HistoryPlace, historyOwner, historyPlace, openHistory } from './history-folder.ts';
import { readerVersion } from './reader-version.ts';

/** Parts of a site file on which no record depends; what it says of sources is taken source by source. */
const NOT_FOR_READING = new Set([
  'organisation',
  'cleaning',
  'rules',
  'interval',
  'report',
  'merge',
  'sources',
]);

/**
 * A reader that reads each file as a source once: what it gave is kept in the history folder, and taken from there as long as the file's bytes, what the site
 * file says of reading, and the reader are the same. The answer is the same in both cases.
 *
 * What is kept stands under the sum of the bytes that were read, and only where those are the whole file: one that grows meanwhile is not kept. A file that has changed is gone through
 * twice, since only its bytes say that it has; one of which nothing is kept, once.
 */
export async function readerWithHistory(
  inputs: Inputs,
  folder: string,
  settings: Pick<InputSettings, 'personKey'>,
): Promise<(job: ReadJob) => Promise<ReadOnce>> {
  const history = await openHistory(folder);
  const reading = readingOf(inputs, settings);
  return async (job) => {
    const { source } = inputs.readers[job.source]!;
    const of = historyOwner(source.kind, [source.name, job.file, job.sheet ?? null]);
    const placeOf = (content: string): HistoryPlace => historyPlace(of, [content, reading[job.source]]);
    if (history.holdsAnyOf(of)) {
      const content = await contentOf(inputs, job);
      const known = content === undefined ? undefined : await history.read(placeOf(content));
      if (known) return known;
    }
    const columns = await readJob(inputs, job);
    if (!isReadToItsEnd(columns, inputOf(inputs, job).size)) return { columns };
    const name = await history.keep(placeOf(columns.read.sha256), columns);
    return name === undefined ? { columns } : { columns, name };
  };
}

/** What was read of a file; the name is that of its file in the history, where it stands there now. */
export interface ReadOnce {
  columns: FileColumns;
  name?: string;
}

/** Whether the sum of the bytes that were read is that of the file. */
const isReadToItsEnd = ({ read, problems }: FileColumns, size: number | undefined): boolean =>
  (size === undefined || size === read.bytes) && !problems.some(({ code }) => code === 'unreadable_file');

/** What else than the file its records depend on, for each source: SHA-256, hexadecimal. */
export function readingOf(
  { site, readers }: Inputs,
  { personKey }: Pick<InputSettings, 'personKey'>,
): string[] {
  const declared = Object.entries(site.declared).filter(([name]) => !NOT_FOR_READING.has(name));
  const key = personKey ? sha256(personKey) : null;
  const common = sha256(JSON.stringify([declared, key, readerVersion()]));
  return readers.map(({ source }) => sha256(JSON.stringify([common, source])));
}

/** SHA-256 of a file's bytes; undefined where it can't be read to its end, which reading finds too and reports. */
async function contentOf(inputs: Inputs, job: ReadJob): Promise<string | undefined> {
  const hash = createHash('sha256');
  try {
    for await (const piece of inputOf(inputs, job).open()) hash.update(piece);
  } catch (error) {
    if (isReadingFault(error)) return undefined;
    throw error;
  }
  return hash.digest('hex');
}

const sha256 = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
