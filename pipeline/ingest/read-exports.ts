import type { Site } from '../site/site.ts';
import { RECORD_KINDS, type RecordKind } from '../site/vocabulary.ts';
import type { Draft } from './draft.ts';
import { type FileColumns, unpackDrafts } from './file-columns.ts';
import { FileTally } from './file-tally.ts';
import { finishRecords } from './finish-records.ts';
import { readerWithHistory } from './history/read-once.ts';
import { loneProblems } from './lone/lone-problems.ts';
import { endsOfRecords } from './lone/record-ends.ts';
import type { WatchRow } from './read-file.ts';
import { type ReadFilesEffects, type ReadHere, readFiles } from './read-files.ts';
import { type InputSettings, type Inputs, openInputs, readJob } from './read-jobs.ts';
import type { Problem, Reading } from './reading.ts';
import { PartTally, type Settlement, settleTallies } from './settlement.ts';
import { UnitSpellings } from './unit-spellings.ts';

/** What the caller may hand in. */
export interface ReadEffects extends InputSettings, ReadFilesEffects<FileColumns> {
  /** Sees the first rows of each table as they stand, before they are read. */
  watch?: WatchRow;
  /** Folder in which what was read is kept, so that a file is read once; left out: nothing is kept. */
  history?: string;
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
  const settlement: Settlement = { counts: [], contradictions: [] };
  const tallies: FileTally[] = [];
  const problems: Problem[] = [];
  const drafts = new Map<RecordKind, Draft[]>(RECORD_KINDS.map((kind) => [kind, []]));
  const spellings = new UnitSpellings(site);
  let sequence = 0;
  // Columns are let go as soon as their records are made: those of all files at once would take a third more memory.
  for await (const columns of readFiles(inputs, effects, readerHere(inputs, effects), problems)) {
    for (const problem of columns.problems) problems.push(problem);
    const list = drafts.get(columns.kind)!;
    const tally = new PartTally(columns.kind, tallies.length, settlement);
    for (const draft of unpackDrafts(spellings.respelled(columns), sequence, tally)) list.push(draft);
    sequence += columns.count;
    tallies.push(FileTally.goOn(columns.read, problems));
  }
  const records = finishRecords(drafts, site.declared.merge ?? []);
  records.water = spellings.served(records.water);
  settleTallies(tallies, [settlement]);
  problems.push(...loneProblems(inputs, endsOfRecords(site, records)));
  return { records, problems, files: tallies.map(({ read }) => read) };
}

/** Reads here, one file after the other, with the history where there is one. */
function readerHere(inputs: Inputs, effects: ReadEffects): ReadHere<FileColumns> {
  const { watch, open, history } = effects;
  const once =
    history !== undefined && !watch && !open ? readerWithHistory(inputs, history, effects) : undefined;
  return async (job, onPiece) =>
    once ? (await (await once)(job)).columns : readJob(inputs, job, { onPiece, ...(watch ? { watch } : {}) });
}
