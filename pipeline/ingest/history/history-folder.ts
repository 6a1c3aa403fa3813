import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { readdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { threadId } from 'node:worker_threads';
import type { RecordKind } from '../../site/vocabulary.ts';
import type { FileColumns } from '../file-columns.ts';
import { fromArrow, toArrow } from './arrow-columns.ts';

/** Where a file's columns stand: of which kind, of which file and source, and of which content and reading. The last two are SHA-256, hexadecimal. */
export interface HistoryPlace {
  kind: RecordKind;
  of: string;
  content: string;
}

/** What was read before: `<kind>-<of>-<content>-<sum of the bytes>.arrow`, so that a file whose bytes have changed is known for what it is. */
const nameOf = ({ kind, of, content }: HistoryPlace, sum: string): string =>
  `${kind}-${of}-${content}-${sum}.arrow`;

/** Node reads no more at once. An export of over two gigabytes is read anew each time. */
const MOST_BYTES = 2 ** 31 - 1;

/** Digits of each SHA-256 in a name. */
const DIGITS = 24;
const sha = (bytes: string | Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex').slice(0, DIGITS);

/** A file and source, of whatever content. */
export type HistoryOwner = Pick<HistoryPlace, 'kind' | 'of'>;

export const historyOwner = (kind: RecordKind, of: readonly unknown[]): HistoryOwner => ({
  kind,
  of: sha(JSON.stringify(of)),
});

/** The place of a file's columns, from everything else on which they depend. */
export const historyPlace = (owner: HistoryOwner, content: readonly unknown[]): HistoryPlace => ({
  ...owner,
  content: sha(JSON.stringify(content)),
});

/** A history folder, as it was when it was opened: it is listed once, however many files are looked for. */
export interface History {
  /** Whether anything is kept of a file and source. */
  holdsAnyOf(owner: HistoryOwner): boolean;
  /** The columns that stand at a place; undefined where there are none, or they are damaged (then they are taken away). */
  read(place: HistoryPlace): Promise<Kept | undefined>;
  /**
   * Keeps columns, and takes away those of an earlier content of the same file and what a run left that was ended by force. Another run never sees half a
   * file: it is written under another name and then renamed. Where it can't be written (no space, no right) nothing is kept and nothing is lost: the
   * next run reads the export again.
   *
   * @returns name of the file; undefined where nothing is kept
   */
  keep(place: HistoryPlace, columns: FileColumns): Promise<string | undefined>;
}

/** Columns, and the name of the file of the history in which they stand. */
export interface Kept {
  columns: FileColumns;
  name: string;
}

export async function openHistory(folder: string): Promise<History> {
  const listed = groupNames(await readdir(folder).catch(() => []));
  let isThere = false;
  return {
    holdsAnyOf: (owner) => namesOf(listed, owner).length > 0,
    async read(place) {
      const start = nameOf(place, '').replace('.arrow', '');
      const name = namesOf(listed, place).find((file) => file.startsWith(start) && file.endsWith('.arrow'));
      if (name === undefined) return undefined;
      const bytes = bytesOf(folder, name);
      if (bytes === undefined) return undefined;
      if (name === nameOf(place, sha(bytes))) return { columns: fromArrow(bytes), name };
      await rm(path.join(folder, name), { force: true }).catch(() => undefined);
      return undefined;
    },
    async keep(place, columns) {
      const bytes = toArrow(columns);
      if (bytes.length > MOST_BYTES) return undefined;
      const name = nameOf(place, sha(bytes));
      const unfinished = path.join(folder, `${name}.${process.pid}-${threadId}.unfinished`);
      try {
        // The thread waits: it has nothing else to do, and for many small files that is faster.
        if (!isThere) mkdirSync(folder, { recursive: true });
        isThere = true;
        writeFileSync(unfinished, bytes);
        renameSync(unfinished, path.join(folder, name));
        for (const file of namesOf(listed, place))
          if (file !== name) rmSync(path.join(folder, file), { force: true });
        return name;
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === undefined) throw error;
        await rm(unfinished, { force: true }).catch(() => undefined);
        isThere = false;
        return undefined;
      }
    },
  };
}

/** Columns that this run has read or kept before, by the name of their file; undefined where it is no longer there. The sum is not asked for again. */
export function readKept(folder: string, name: string): FileColumns | undefined {
  const bytes = bytesOf(folder, name);
  return bytes && fromArrow(bytes);
}

/** Undefined where the file is gone or can't be read. */
function bytesOf(folder: string, name: string): Uint8Array | undefined {
  try {
    return readFileSync(path.join(folder, name));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === undefined) throw error;
    return undefined;
  }
}

const ownerOf = ({ kind, of }: HistoryOwner): string => `${kind}-${of}`;

/** Names by the file and source that they are of. */
function groupNames(names: readonly string[]): Map<string, string[]> {
  const listed = new Map<string, string[]>();
  for (const name of names) {
    const [kind = '', of = ''] = name.split('-');
    const owner = `${kind}-${of}`;
    const list = listed.get(owner);
    if (list) list.push(name);
    else listed.set(owner, [name]);
  }
  return listed;
}

const namesOf = (listed: ReadonlyMap<string, string[]>, owner: HistoryOwner): readonly string[] =>
  listed.get(ownerOf(owner)) ?? [];
