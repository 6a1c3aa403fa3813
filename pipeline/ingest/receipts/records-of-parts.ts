import type { MergeRule } from '../../site/file-shapes.ts';
import type { Records } from '../../site/records.ts';
import type { RecordKind } from '../../site/vocabulary.ts';
import { UserError } from '../../user-error.ts';
import type { Draft } from '../draft.ts';
import { type FileColumns, unpackDrafts } from '../file-columns.ts';
import { FileTally } from '../file-tally.ts';
import { finishRecords } from '../finish-records.ts';
import { readKept } from '../history/history-folder.ts';
import { type Inputs, readJob } from '../read-jobs.ts';
import type { FileRead, Problem } from '../reading.ts';
import { PartTally, type Settlement, settleTallies } from '../settlement.ts';
import type { Receipts } from './read-receipts.ts';
import { KINDS_OF_UNITS, type Receipt } from './receipt.ts';

/** A file whose records are wanted, and where they stand among those of all files; plain data. */
export interface Part extends Pick<Receipt, 'job' | 'kind' | 'kept' | 'columns'> {
  /** Which of the wanted units it holds. */
  units: readonly string[];
  part: number;
  sequence: number;
  sha256: string;
}

/** The files that hold records of some units; with none named, those of kinds that are of no units. */
export function partsOf({ files }: Receipts, units?: ReadonlySet<string>): Part[] {
  let sequence = 0;
  return files.flatMap(({ job, kind, kept, columns, count, read, units: spans }, part): Part[] => {
    const from = sequence;
    sequence += count;
    const own = spans.map(({ unit }) => unit).filter((unit) => units?.has(unit));
    const wanted = units ? own.length > 0 : !KINDS_OF_UNITS.has(kind);
    return wanted
      ? [{ part, sequence: from, job, kind, kept, columns, sha256: read.sha256, units: own }]
      : [];
  });
}

/**
 * The records of some units from the history, as `readExports` gives them.
 *
 * @param units left out: the records of all
 * @throws UserError where a file must be read again, since its part of the history is gone, and has changed
 */
export async function recordsOfParts(
  parts: readonly Part[],
  inputs: Inputs,
  history: string,
  units?: ReadonlySet<string>,
): Promise<{ records: Records; settlement: Settlement }> {
  const settlement: Settlement = { counts: [], contradictions: [] };
  const drafts = new Map<RecordKind, Draft[]>();
  const rules: readonly MergeRule[] = inputs.site.declared.merge ?? [];
  for (const part of parts) {
    const tally = new PartTally(part.kind, part.part, settlement);
    const list = drafts.get(part.kind) ?? [];
    drafts.set(part.kind, list);
    for (const draft of unpackDrafts(await columnsOf(part, inputs, history), part.sequence, tally, units))
      list.push(draft);
  }
  return { records: finishRecords(drafts, rules), settlement };
}

/** @throws UserError where the file must be read again, since its part of the history is gone, and has changed */
export async function columnsOf(
  { kept, columns, job, sha256 }: Part,
  inputs: Inputs,
  history: string,
): Promise<FileColumns> {
  if (columns) return columns;
  const known = kept === undefined ? undefined : readKept(history, kept);
  if (known) return known;
  const again = await readJob(inputs, job);
  if (again.read.sha256 !== sha256)
    throw new UserError(
      'file_changed',
      `${job.file}: must stay as it is while it is read, found other content at a second look`,
    );
  return again;
}

/** The files with their counts, and all problems, once the records of all units are settled. */
export function settleReceipts(
  { files, problems: ofReading }: Receipts,
  settlements: readonly Settlement[],
): { files: FileRead[]; problems: Problem[] } {
  const problems = [...ofReading];
  const tallies = files.map(({ read }) => FileTally.goOn(read, problems));
  settleTallies(tallies, settlements);
  return { files: tallies.map(({ read }) => read), problems };
}
