import { Fault } from './cell.ts';
import type { FileColumns } from './file-columns.ts';
import { FileTally } from './file-tally.ts';
import { type Inputs, inputOf, type ReadJob, readJobs, wantedBy } from './read-jobs.ts';
import type { Problem } from './reading.ts';

/** How far reading has come. */
export interface ReadProgress {
  source: string;
  file: string;
  /** Bytes read of all files so far. */
  bytes: number;
  /** Bytes of all files to be read; undefined where they aren't known, as of packed files. */
  all: number | undefined;
}

/** What a job answers at least. */
export type Answer = Pick<FileColumns, 'read' | 'problems'>;

/** What the caller of reading may hand in. */
export interface ReadFilesEffects<Of extends Answer> {
  /** Called after each piece of a file that was read. */
  onProgress?: (progress: ReadProgress) => void;
  /** Reads a file elsewhere, such as in another thread; left out: here, one after the other. */
  readElsewhere?: (job: ReadJob) => Promise<Of>;
}

/** Reads a file here; `onPiece` is called with the bytes read of it. */
export type ReadHere<Of extends Answer> = (job: ReadJob, onPiece: (bytes: number) => void) => Promise<Of>;

/**
 * Reads all files of all sources, each as one job, and answers in order of source and file, in however many threads.
 *
 * @param problems gets what is amiss with whole files and patterns, each before the first answer of its source
 */
export async function* readFiles<Of extends Answer>(
  inputs: Inputs,
  effects: ReadFilesEffects<Of>,
  readHere: ReadHere<Of>,
  problems: Problem[],
): AsyncGenerator<Of, void, undefined> {
  problems.push(...refusedArchives(inputs));
  const jobs: ReadJob[][] = [];
  for (const source of inputs.readers.keys()) jobs.push(await readJobs(inputs, source));
  const read = readerOf(inputs, effects, readHere, jobs.flat());
  const answers = jobs.map((own) => own.map(read));
  for (const [source, own] of jobs.entries()) {
    problems.push(...filesAmiss(inputs, source, own));
    const ofSource = answers[source]!;
    for (const at of ofSource.keys()) {
      const answer = await ofSource[at]!;
      delete ofSource[at];
      yield answer;
    }
  }
}

/** Reads jobs elsewhere, or here one after the other. An answer that fails is thrown where it is awaited. */
function readerOf<Of extends Answer>(
  inputs: Inputs,
  { readElsewhere, onProgress }: ReadFilesEffects<Of>,
  readHere: ReadHere<Of>,
  jobs: readonly ReadJob[],
): (job: ReadJob) => Promise<Of> {
  const progress = progressOf(inputs, onProgress, jobs);
  let last: Promise<unknown> = Promise.resolve();
  return (job) => {
    const answer = (
      readElsewhere
        ? readElsewhere(job)
        : last.then(() => readHere(job, (bytes) => progress.piece(job, bytes)))
    ).then((of) => {
      progress.done(job, of.read.bytes);
      return of;
    });
    last = answer;
    answer.catch(() => undefined);
    return answer;
  };
}

function progressOf(
  inputs: Inputs,
  onProgress: ((progress: ReadProgress) => void) | undefined,
  jobs: readonly ReadJob[],
): { piece(job: ReadJob, bytes: number): void; done(job: ReadJob, bytes: number): void } {
  const sizes = jobs.map((job) => inputOf(inputs, job).size);
  const all = sizes.includes(undefined) ? undefined : sizes.reduce<number>((sum, size) => sum + size!, 0);
  let read = 0;
  const say = ({ source, file }: ReadJob, bytes: number): void =>
    onProgress?.({ source: inputs.readers[source]!.source.name, file, bytes, all });
  return {
    piece: (job, bytes) => say(job, read + bytes),
    done(job, bytes) {
      read += bytes;
      say(job, read);
    },
  };
}

function refusedArchives({ files }: Inputs): Problem[] {
  const problems: Problem[] = [];
  for (const { path: file, expected, value } of files.refused)
    new FileTally({ source: 'archives', kind: '', file }, problems).fileProblem(
      'file',
      new Fault('unreadable_file', expected),
      { value },
    );
  return problems;
}

/** Files that a source asks for and that lie outside the folder, and patterns of the site file that match nothing. */
function filesAmiss({ site, readers, found }: Inputs, source: number, jobs: readonly ReadJob[]): Problem[] {
  const problems: Problem[] = [];
  const reader = readers[source]!;
  const { name, kind } = reader.source;
  const wanted = wantedBy(reader);
  for (const file of found.refused.filter((file) => wanted.some(({ test }) => test(file))))
    new FileTally({ source: name, kind, file }, problems).fileProblem(
      'file',
      new Fault('unreadable_file', 'a file inside the input folder; the link leads out of it or to nothing'),
    );
  if (site.declared.sources === undefined) return problems;
  for (const { pattern, test } of wanted)
    if (!jobs.some(({ file }) => test(file)) && !found.refused.some(test))
      new FileTally({ source: name, kind, file: '' }, problems).fileProblem(
        'file',
        new Fault('no_file', 'a file below the input folder'),
        { value: pattern },
      );
  return problems;
}
