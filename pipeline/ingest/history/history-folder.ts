import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import type { RecordKind } from '../../site/vocabulary.ts';
import type { FileColumns } from '../file-columns.ts';
import { fromArrow, toArrow } from './arrow-columns.ts';
import { isOfMachine, takeAway, writeWhole } from './whole-file.ts';

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
  return {
    holdsAnyOf: (owner) => namesOf(listed, owner).length > 0,
    async read(place) {
      const start = nameOf(place, '').replace('.arrow', '');
      const name = namesOf(listed, place).find((file) => file.startsWith(start) && file.endsWith('.arrow'));
      if (name === undefined) return undefined;
      const columns = readKept(folder, name);
      return columns && { columns, name };
    },
    async keep(place, columns) {
      const bytes = toArrow(columns);
      if (bytes.length > MOST_BYTES) return undefined;
      const name = nameOf(place, sha(bytes));
      if (!writeWhole(folder, name, bytes)) return undefined;
      for (const file of namesOf(listed, place)) if (file !== name) takeAway(path.join(folder, file));
      return name;
    },
  };
}

/** Columns by the name of their file; undefined where it is no longer there, or damaged (then it is taken away). */
export function readKept(folder: string, name: string): FileColumns | undefined {
  const bytes = bytesOf(folder, name);
  if (bytes === undefined) return undefined;
  if (name.endsWith(`-${sha(bytes)}.arrow`)) return fromArrow(bytes);
  takeAway(path.join(folder, name));
  return undefined;
}

/** Undefined where the file is gone or can't be read. */
function bytesOf(folder: string, name: string): Uint8Array | undefined {
  try {
    return readFileSync(path.join(folder, name));
  } catch (error) {
    if (!isOfMachine(error)) throw error;
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
