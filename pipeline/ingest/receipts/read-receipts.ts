import type { Site } from '../../site/site.ts';
import { readerWithHistory } from '../history/read-once.ts';
import { type ReadFilesEffects, readFiles } from '../read-files.ts';
import { type InputSettings, openInputs, type ReadJob } from '../read-jobs.ts';
import type { Problem } from '../reading.ts';
import { type Receipt, receiptOf } from './receipt.ts';
import { openReceiptBook } from './receipt-book.ts';

/** Everything that was read, with the records left in the history. */
export interface Receipts {
  /** In order of source and file. */
  files: Receipt[];
  /** Problems of reading, in the same order; those found between rows of different files come later. */
  problems: Problem[];
}

/**
 * Reads all sources as `readExports` does, and leaves the records in the history, from which those of some units can be taken.
 *
 * @param history folder in which what was read is kept
 */
export async function readReceipts(
  site: Site,
  folder: string,
  history: string,
  effects: InputSettings & ReadFilesEffects<Receipt>,
): Promise<Receipts> {
  const inputs = await openInputs(site, folder, effects);
  const book = await openReceiptBook(inputs, history, effects);
  const once = readerWithHistory(inputs, history, effects);
  once.catch(() => undefined);
  const { readElsewhere, ...others } = effects;
  const read = readElsewhere ?? (async (job) => receiptOf(job, await (await once)(job)));
  const orKnown = async (job: ReadJob): Promise<Receipt> => book.known(job) ?? read(job);
  const files: Receipt[] = [];
  const problems: Problem[] = [];
  for await (const receipt of readFiles(
    inputs,
    readElsewhere ? { ...others, readElsewhere: orKnown } : others,
    orKnown,
    problems,
  )) {
    for (const problem of receipt.problems) problems.push(problem);
    files.push(receipt);
  }
  book.note(files);
  return { files, problems };
}
