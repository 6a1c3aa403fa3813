import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { readingOf } from '../history/read-once.ts';
import { isOfMachine, takeAway, writeWhole } from '../history/whole-file.ts';
import { type InputSettings, type Inputs, inputOf, type ReadJob } from '../read-jobs.ts';
import type { Receipt } from './receipt.ts';

/** Receipts of an earlier run, so that a file that stands on disk as it did then need not be opened to know what it holds. */
export interface ReceiptBook {
  /** The receipt of a file; undefined where its bytes must be asked. */
  known(job: ReadJob): Receipt | undefined;
  /** Notes the receipts for the next run, instead of those that were noted before. Where that can't be, nothing is lost: the next run asks the bytes. */
  note(receipts: readonly Receipt[]): void;
}

/** What is noted of a file: its receipt, and what the disk said of it before it was read. */
interface Entry extends Omit<Receipt, 'job' | 'columns'> {
  kept: string;
  /** Of the source's reading, the file and the sheet. */
  key: string;
  stamp: string;
}

const FILE = 'receipts.json';

/**
 * A file that was changed in the same moment as it was read may bear the same times as before. So what was changed less than this before the book was written is not believed, ms: the times of
 * the coarsest file systems are two seconds apart.
 */
const MOMENT = 10_000;

/**
 * Opens the book of a history folder. What it says is believed of files whose size, time of change and place on disk are the same, and whose columns still stand in the history; these are asked for
 * their own sum when they are read.
 */
export async function openReceiptBook(
  inputs: Inputs,
  folder: string,
  settings: Pick<InputSettings, 'personKey'>,
): Promise<ReceiptBook> {
  const { entries, written } = readBook(path.join(folder, FILE));
  const listed = new Set(await readdir(folder).catch(() => []));
  const reading = readingOf(inputs, settings);
  const keyOf = ({ source, file, sheet }: ReadJob): string =>
    JSON.stringify([reading[source], file, sheet ?? null]);
  let believed = 0;
  return {
    known(job) {
      const stamp = inputOf(inputs, job).stamp;
      const entry = entries.get(keyOf(job));
      if (!stamp || entry?.stamp !== stamp.of || stamp.newest >= written - MOMENT || !listed.has(entry.kept))
        return undefined;
      believed++;
      const { key: _, stamp: __, ...receipt } = entry;
      return { ...receipt, job, columns: undefined };
    },
    note(receipts) {
      if (believed === receipts.length && believed === entries.size) return;
      const all = receipts.flatMap(({ job, columns: _, kept, ...receipt }): Entry[] => {
        const stamp = inputOf(inputs, job).stamp;
        return kept === undefined || !stamp ? [] : [{ ...receipt, kept, key: keyOf(job), stamp: stamp.of }];
      });
      const body = JSON.stringify(all);
      writeWhole(folder, FILE, `${sumOf(body)}\n${body}`);
      // What a run left that was ended by force.
      for (const name of listed) if (name.startsWith(`${FILE}.`)) takeAway(path.join(folder, name));
    },
  };
}

/** The entries by key, and when they were written, ms; none where there is no book, or it is damaged. */
function readBook(file: string): { entries: ReadonlyMap<string, Entry>; written: number } {
  try {
    const text = readFileSync(file, 'utf8');
    const end = text.indexOf('\n');
    const body = text.slice(end + 1);
    if (text.slice(0, end) === sumOf(body)) {
      const entries = JSON.parse(body) as Entry[];
      return {
        entries: new Map(entries.map((entry) => [entry.key, entry])),
        written: statSync(file).mtimeMs,
      };
    }
  } catch (error) {
    if (!isOfMachine(error)) throw error;
  }
  return { entries: new Map(), written: 0 };
}

/** Sum over what was noted, by which a damaged book is known for what it is. */
const sumOf = (body: string): string => createHash('sha256').update(body).digest('hex');
