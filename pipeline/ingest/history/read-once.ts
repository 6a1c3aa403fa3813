import { createHash } from 'node:crypto';
import type { FileColumns } from '../file-columns.ts';
import { type InputSettings, type Inputs, type ReadJob, readJob } from '../read-jobs.ts';
import { historyPlace, keepHistory, readHistory } from './history-folder.ts';
import { readerVersion } from './reader-version.ts';

/** Parts of a site file on which no record depends. */
const NOT_FOR_READING = new Set(['organisation', 'cleaning', 'rules', 'interval', 'report', 'merge']);

/**
 * Reads a file as a source once: what it gave is kept in the history folder, and taken from there as long as the file's bytes, what the site file says of
 * reading, and the reader are the same. The answer is the same in both cases.
 *
 * A file that changes while it is read is not kept.
 */
export async function readOnce(
  inputs: Inputs,
  job: ReadJob,
  folder: string,
  settings: Pick<InputSettings, 'personKey' | 'notAfter'>,
): Promise<FileColumns> {
  const input = inputs.files.files.find(({ path }) => path === job.file);
  const hash = createHash('sha256');
  try {
    for await (const piece of input!.open()) hash.update(piece);
  } catch {
    // Reading finds the same fault and reports it.
    return readJob(inputs, job);
  }
  const content = hash.digest('hex');
  const { source } = inputs.readers[job.source]!;
  const declared = Object.entries(inputs.site.declared).filter(
    ([name]) => !NOT_FOR_READING.has(name) && name !== 'sources',
  );
  const key = settings.personKey && createHash('sha256').update(settings.personKey).digest('hex');
  const place = historyPlace(
    source.kind,
    [source.name, job.file, job.sheet ?? null],
    [content, source, declared, key ?? null, settings.notAfter ?? null, readerVersion()],
  );
  const known = await readHistory(folder, place);
  if (known) return known;
  const columns = await readJob(inputs, job);
  if (columns.read.sha256 === content) await keepHistory(folder, place, columns);
  return columns;
}
