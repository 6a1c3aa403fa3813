import type { MergeRule } from '../site/file-shapes.ts';
import type { Records } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import { RECORD_KINDS, type RecordKind } from '../site/vocabulary.ts';
import { Fault } from './cell.ts';
import type { Draft } from './draft.ts';
import { type FileColumns, unpackDrafts } from './file-columns.ts';
import { FileTally } from './file-tally.ts';
import { readerWithHistory } from './history/read-once.ts';
import { mergeSources } from './merge-sources.ts';
import type { WatchRow } from './read-file.ts';
import {
  type InputSettings,
  type Inputs,
  inputOf,
  openInputs,
  type ReadJob,
  readJob,
  readJobs,
  wantedBy,
} from './read-jobs.ts';
import type { Problem, Reading } from './reading.ts';
import { removeDuplicates } from './remove-duplicates.ts';
import { resolveRepeatedHour } from './resolve-repeated-hour.ts';

/** How far reading has come. */
export interface ReadProgress {
  source: string;
  file: string;
  /** Bytes read of all files so far. */
  bytes: number;
  /** Bytes of all files to be read; undefined where they aren't known, as of packed files. */
  all: number | undefined;
}

/** What the caller may hand in. */
export interface ReadEffects extends InputSettings {
  /** Called after each piece of a file that was read. */
  onProgress?: (progress: ReadProgress) => void;
  /** Sees the first rows of each table as they stand, before they are read. */
  watch?: WatchRow;
  /** Folder in which what was read is kept, so that a file is read once; left out: nothing is kept. */
  history?: string;
  /** Reads a file elsewhere, such as in another thread; default: here, one after the other. What is watched or opened in a way of its own is read here. */
  readElsewhere?: (job: ReadJob) => Promise<FileColumns>;
}

/**
 * Reads all sources of a site from the files below a folder into records, with everything that could not be read.
 *
 * For each file and source, rows = records + duplicates + rejected + skipped. The same files give the same answer, in the same order, on each
 * machine and in however many threads: no clock and no zone of the machine is asked.
 *
 * @param folder the input folder; file patterns are relative to it, and nothing outside it is read
 * @throws UserError where the site file asks for something that can't be read so (date pattern, measure, mapped words), or a folder can't be listed
 */
export async function readExports(site: Site, folder: string, effects: ReadEffects = {}): Promise<Reading> {
  const inputs = await openInputs(site, folder, effects);
  const problems = refusedArchives(inputs);
  const tallies: FileTally[] = [];
  const drafts = new Map<RecordKind, Draft[]>(RECORD_KINDS.map((kind) => [kind, []]));
  const jobs: ReadJob[][] = [];
  for (const source of inputs.readers.keys()) jobs.push(await readJobs(inputs, source));
  const read = readerOf(inputs, effects, jobs.flat());
  const bySource: { before: Problem[]; answers: Promise<FileColumns>[] }[] = [];
  for (const [source, own] of jobs.entries())
    bySource.push({ before: filesAmiss(inputs, source, own), answers: own.map(read) });
  let sequence = 0;
  for (const { before, answers } of bySource) {
    problems.push(...before);
    // Columns are let go as soon as their records are made: those of all files at once would take a third more memory.
    for (const at of answers.keys()) {
      const columns = await answers[at]!;
      delete answers[at];
      for (const problem of columns.problems) problems.push(problem);
      const unpacked = unpackDrafts(columns, sequence, problems);
      sequence += columns.count;
      tallies.push(unpacked.tally);
      const list = drafts.get(columns.kind)!;
      for (const draft of unpacked.drafts) list.push(draft);
    }
  }

  const records = Object.fromEntries(
    RECORD_KINDS.map((kind) => [kind, finish(kind, drafts.get(kind)!, site.declared.merge ?? [])]),
  ) as unknown as Records;
  for (const tally of tallies) tally.check();
  return { records, problems, files: tallies.map(({ read }) => read) };
}

/** Reads jobs elsewhere, or here one after the other. An answer that fails is thrown where it is awaited. */
function readerOf(
  inputs: Inputs,
  effects: ReadEffects,
  jobs: readonly ReadJob[],
): (job: ReadJob) => Promise<FileColumns> {
  const { readElsewhere, watch, open, history } = effects;
  const progress = progressOf(inputs, effects, jobs);
  const once =
    history !== undefined && !readElsewhere && !watch && !open
      ? readerWithHistory(inputs, history, effects)
      : undefined;
  const readHere = async (job: ReadJob): Promise<FileColumns> =>
    once
      ? (await once)(job)
      : readJob(inputs, job, { onPiece: (bytes) => progress.piece(job, bytes), ...(watch ? { watch } : {}) });
  let last: Promise<unknown> = Promise.resolve();
  return (job) => {
    const answer = (
      readElsewhere && !watch && !open ? readElsewhere(job) : last.then(() => readHere(job))
    ).then((columns) => {
      progress.done(job, columns.read.bytes);
      return columns;
    });
    last = answer;
    answer.catch(() => undefined);
    return answer;
  };
}

function progressOf(
  inputs: Inputs,
  { onProgress }: ReadEffects,
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

function finish(kind: RecordKind, drafts: Draft[], rules: readonly MergeRule[]): unknown[] {
  if (kind === 'cycles') resolveRepeatedHour(drafts);
  return removeDuplicates(kind, mergeSources(kind, drafts, rules)).map(({ record, tally }) => {
    tally.read.records++;
    return record;
  });
}
