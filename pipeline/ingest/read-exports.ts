import path from 'node:path';
import { archiveLimitsSchema, type MergeRule } from '../site/file-shapes.ts';
import type { Records } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import { RECORD_KINDS, type RecordKind } from '../site/vocabulary.ts';
import { nameUnpacked, openArchives } from './archives.ts';
import { Fault } from './cell.ts';
import type { Draft } from './draft.ts';
import { type OpenFile, openFile } from './file-bytes.ts';
import { filePattern } from './file-pattern.ts';
import { FileTally } from './file-tally.ts';
import { findFiles } from './find-files.ts';
import { mergeSources } from './merge-sources.ts';
import { sourceReader } from './read-fields.ts';
import { readFile, sheetsToRead, type WatchRow } from './read-file.ts';
import type { Problem, Reading } from './reading.ts';
import { removeDuplicates } from './remove-duplicates.ts';
import { resolveRepeatedHour } from './resolve-repeated-hour.ts';

/** What the caller may hand in. */
export interface ReadEffects {
  /** Called after each piece of a file that was read, with a line such as "cycles: log-2025.csv, 12.3 MB". */
  onProgress?: (line: string) => void;
  /** Opens a file; default: from disk. */
  open?: OpenFile;
  /** Files and folders that are no inputs though they may stand below the folder: the site file, the output folder. */
  ignore?: readonly string[];
  /** Sees the first rows of each table as they stand, before they are read. */
  watch?: WatchRow;
  /** Key of the hash of names, where the site asks for people. */
  personKey?: Uint8Array;
  /** Latest instant that a record may have, ms: later ones are those of a wrong clock. Left out: none. */
  notAfter?: number;
}

/**
 * Reads all sources of a site from the files below a folder into records, with everything that could not be read.
 *
 * For each file and source, rows = records + duplicates + rejected + skipped. The same files give the same answer, in the same order, on each
 * machine: no clock and no zone of the machine is asked.
 *
 * @param folder the input folder; file patterns are relative to it, and nothing outside it is read
 * @throws UserError where the site file asks for something that can't be read so (date pattern, measure, mapped words), or a folder can't be listed
 */
export async function readExports(site: Site, folder: string, effects: ReadEffects = {}): Promise<Reading> {
  const readers = site.sources.map((source) =>
    sourceReader(site, source, effects.notAfter, effects.personKey),
  );
  const found = await findFiles(folder, effects.ignore);
  const problems: Problem[] = [];
  const inputs = await openArchives(
    path.resolve(folder),
    found.files,
    effects.open ?? openFile,
    archiveLimitsSchema.parse(site.declared.archives ?? {}),
  );
  for (const { path: file, expected, value } of inputs.refused)
    new FileTally({ source: 'archives', kind: '', file }, problems).fileProblem(
      'file',
      new Fault('unreadable_file', expected),
      { value },
    );
  const tallies: FileTally[] = [];
  const drafts = new Map<RecordKind, Draft[]>(RECORD_KINDS.map((kind) => [kind, []]));
  let sequence = 0;

  for (const reader of readers) {
    const { name, kind, files: declared } = reader.source;
    const patterns = typeof declared === 'string' ? [declared] : declared;
    const tests = patterns.map(filePattern);
    const isWanted = (file: string): boolean => tests.some((test) => test(file));
    const refused = found.refused.filter(isWanted);
    for (const file of refused) {
      new FileTally({ source: name, kind, file }, problems).fileProblem(
        'file',
        new Fault(
          'unreadable_file',
          'a file inside the input folder; the link leads out of it or to nothing',
        ),
      );
    }
    const files = inputs.files.filter((file) => isWanted(file.path) || isWanted(nameUnpacked(file.path)));
    if (site.declared.sources !== undefined) {
      for (const [index, pattern] of patterns.entries()) {
        const test = tests[index]!;
        if (
          !files.some((file) => test(file.path) || test(nameUnpacked(file.path))) &&
          !found.refused.some(test)
        )
          new FileTally({ source: name, kind, file: '' }, problems).fileProblem(
            'file',
            new Fault('no_file', 'a file below the input folder'),
            { value: pattern },
          );
      }
    }
    for (const file of files) {
      for (const sheet of await sheetsToRead(reader.source, file)) {
        const tally = new FileTally({ source: name, kind, file: file.path }, problems);
        tally.read.sheet = sheet ?? null;
        tallies.push(tally);
        const ofSheet = sheet === undefined ? reader : { ...reader, source: { ...reader.source, sheet } };
        await readFile(ofSheet, tally, {
          site,
          input: file,
          onPiece: (bytes) => effects.onProgress?.(`${name}: ${file.path}, ${(bytes / 1e6).toFixed(1)} MB`),
          emit: (draft) => drafts.get(kind)!.push(draft),
          nextSequence: () => sequence++,
          ...(effects.watch ? { watch: effects.watch } : {}),
        });
      }
    }
  }

  const records = Object.fromEntries(
    RECORD_KINDS.map((kind) => [kind, finish(kind, drafts.get(kind)!, site.declared.merge ?? [])]),
  ) as unknown as Records;
  for (const tally of tallies) tally.check();
  return { records, problems, files: tallies.map(({ read }) => read) };
}

function finish(kind: RecordKind, drafts: Draft[], rules: readonly MergeRule[]): unknown[] {
  if (kind === 'cycles') resolveRepeatedHour(drafts);
  return removeDuplicates(kind, mergeSources(kind, drafts, rules)).map(({ record, tally }) => {
    tally.read.records++;
    return record;
  });
}
