import { createHash } from 'node:crypto';
import type { FileColumns } from '../file-columns.ts';
import { isReadingFault } from '../read-file.ts';
import { type InputSettings, type Inputs, inputOf, type ReadJob, readJob } from '../read-jobs.ts';
import { type HistoryPlace, historyPlace, openHistory } from './history-folder.ts';
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
 * A file that changes while it is read is not kept. A file that has changed is gone through twice, since only its bytes say that it has; one of which nothing is kept, once.
 */
export async function readerWithHistory(
  inputs: Inputs,
  folder: string,
  settings: Pick<InputSettings, 'personKey' | 'notAfter'>,
): Promise<(job: ReadJob) => Promise<FileColumns>> {
  const history = await openHistory(folder);
  const reading = readingOf(inputs, settings);
  const placeOf = (job: ReadJob, content: string): HistoryPlace => {
    const { source } = inputs.readers[job.source]!;
    return historyPlace(
      source.kind,
      [source.name, job.file, job.sheet ?? null],
      [content, reading[job.source]],
    );
  };
  return async (job) => {
    if (!history.holdsAnyOf(placeOf(job, ''))) {
      const columns = await readJob(inputs, job);
      if (isReadToItsEnd(columns, inputOf(inputs, job).size))
        await history.keep(placeOf(job, columns.read.sha256), columns);
      return columns;
    }
    const content = await contentOf(inputs, job);
    if (content === undefined) return readJob(inputs, job);
    const place = placeOf(job, content);
    const known = await history.read(place);
    if (known) return known;
    const columns = await readJob(inputs, job);
    if (columns.read.sha256 === content) await history.keep(place, columns);
    return columns;
  };
}

/** Whether the sum of the bytes that were read is that of the file. */
const isReadToItsEnd = ({ read, problems }: FileColumns, size: number | undefined): boolean =>
  (size === undefined || size === read.bytes) && !problems.some(({ code }) => code === 'unreadable_file');

/** What else than the file its records depend on, for each source: SHA-256, hexadecimal. */
function readingOf(
  { site, readers }: Inputs,
  { personKey, notAfter }: Pick<InputSettings, 'personKey' | 'notAfter'>,
): string[] {
  const declared = Object.entries(site.declared).filter(([name]) => !NOT_FOR_READING.has(name));
  const key = personKey ? sha256(personKey) : null;
  const common = sha256(JSON.stringify([declared, key, notAfter ?? null, readerVersion()]));
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
