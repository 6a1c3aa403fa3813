import { type BigIntStats, statSync } from 'node:fs';
import path from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { unzipSync } from 'fflate';
import { byCodeUnit } from '../by-code-unit.ts';
import type { ArchiveLimits } from '../site/file-shapes.ts';
import { UserError } from '../user-error.ts';
import type { OpenFile } from './file-bytes.ts';
import { declaredChecks, isWhole } from './zip-checks.ts';

/** An archive, or a file in one, that is refused or can't be unpacked; the message says what was expected. */
export class ArchiveFault extends Error {
  override readonly name = 'ArchiveFault';
}

/** A file to read: on disk, or in an archive (`logs.zip/2025/cycles.csv`), or packed by itself (`cycles.csv.gz`). */
export interface InputFile {
  path: string;
  /** Bytes, as far as they are known before the file is opened. */
  size?: number | undefined;
  /** What the disk says of it; left out for files in archives. */
  stamp?: FileStamp | undefined;
  /** @throws ArchiveFault while its pieces are taken, where it can't be unpacked within the limits */
  open(): AsyncIterable<Uint8Array>;
}

/** Size, times of change and place of a file on disk, all of which are the same only where nobody wrote it anew, and the later of the times, ms. */
export interface FileStamp {
  of: string;
  newest: number;
}

/** The files below a folder with those in archives, and what of the archives is refused. */
export interface InputFiles {
  files: InputFile[];
  refused: { path: string; expected: string; value: string | undefined }[];
}

/** The name by which a packed file is known: without .gz. */
export const nameUnpacked = (file: string): string => file.replace(/\.gz$/i, '');

/**
 * Looks into archives: a .zip stands for a folder of its name, a .gz for the file in it. Nothing is written to disk, so a name in an archive can't lead
 * anywhere; names that climb or start at a root are refused all the same, since nobody packs exports so. Archives and files beyond the limits are
 * refused before they are unpacked (.zip) or as soon as it shows (.gz). A file in an archive whose check sum is another, or that is cut off, is refused whole.
 *
 * @param folder absolute path of the input folder
 * @param files files below it, relative, with forward slashes
 */
export async function openArchives(
  folder: string,
  files: readonly string[],
  open: OpenFile,
  limits: ArchiveLimits,
): Promise<InputFiles> {
  const found: InputFiles = { files: [], refused: [] };
  const settings: Settings = { limits, found, held: new Map() };
  for (const file of files) {
    const onDisk = (): AsyncIterable<Uint8Array> => open(path.join(folder, file));
    const found = statOf(path.join(folder, file));
    const known = found && { size: Number(found.size), stamp: stampOf(found) };
    await add({ path: file, ...known, open: onDisk }, settings, 0);
  }
  found.files.sort((a, b) => byCodeUnit(a.path, b.path));
  return found;
}

/** Undefined where the file is gone or can't be asked: opening it says why. The thread waits, which for many files takes a tenth of the time. */
function statOf(file: string): BigIntStats | undefined {
  try {
    return statSync(file, { bigint: true, throwIfNoEntry: false });
  } catch {
    return undefined;
  }
}

function stampOf({ size, mtimeNs, ctimeNs, ino }: BigIntStats): FileStamp {
  const newest = Number((mtimeNs > ctimeNs ? mtimeNs : ctimeNs) / NS_PER_MS);
  return { of: [size, mtimeNs, ctimeNs, ino].join(' '), newest };
}
const NS_PER_MS = 1_000_000n;

interface Settings {
  limits: ArchiveLimits;
  found: InputFiles;
  /** Bytes of the archives that were opened last, so that one with many files is read once and not once a file. */
  held: Map<string, Uint8Array>;
}
const HELD = 2;

async function add(file: InputFile, settings: Settings, depth: number): Promise<void> {
  const { limits, found } = settings;
  if (/\.gz$/i.test(file.path)) {
    found.files.push({ path: file.path, open: () => checkedGunzip(() => file.open(), limits) });
    return;
  }
  if (!/\.zip$/i.test(file.path)) {
    found.files.push(file);
    return;
  }
  const refuse = (expected: string, name = file.path, value?: string): void => {
    found.refused.push({ path: name, expected, value });
  };
  if (depth >= limits.depth) return refuse(`archives inside archives at most ${limits.depth} deep`);
  try {
    for (const entry of await entriesOf(file, settings, refuse)) await add(entry, settings, depth + 1);
  } catch (error) {
    const { code } = error as { code?: string };
    if (error instanceof UserError) throw error;
    if (error instanceof ArchiveFault) refuse(error.message);
    else if (code !== undefined) refuse('an archive that can be read', file.path, code);
    else throw error;
  }
}

/** The files of a .zip, each to be unpacked when it is opened. */
async function entriesOf(
  archive: InputFile,
  settings: Settings,
  refuse: (expected: string, name?: string, value?: string) => void,
): Promise<InputFile[]> {
  const { limits } = settings;
  const entries: InputFile[] = [];
  const names = new Set<string>();
  let total = 0;
  let count = 0;
  unzip(await bytesOf(archive, settings), ({ name, size, originalSize, compression }) => {
    const at = count++;
    const unpacked = compression === 0 ? Math.max(size, originalSize) : originalSize;
    total += unpacked;
    if (count > limits.entries) throw new ArchiveFault(`at most ${limits.entries} files in an archive`);
    if (total > limits.unpacked_bytes)
      throw new ArchiveFault(`an archive of at most ${limits.unpacked_bytes} bytes unpacked`);
    if (isNoExport(name)) return false;
    const safe = safeName(name);
    const full = `${archive.path}/${safe ?? name.replaceAll('\0', '')}`;
    if (safe === undefined)
      refuse('a name inside the archive that does not climb or start at a root', archive.path, name);
    else if (names.has(safe)) refuse('one file of this name in the archive', full);
    else if (unpacked > limits.entry_bytes) refuse(`a file of at most ${limits.entry_bytes} bytes`, full);
    else if (unpacked > 1_000_000 && unpacked > size * limits.ratio)
      refuse(`a file at most ${limits.ratio} times as large as it is packed`, full);
    else {
      names.add(safe);
      entries.push({ path: full, size: unpacked, open: () => unpackEntry(archive, at, settings) });
    }
    return false;
  });
  return entries;
}

type Entry = { name: string; size: number; originalSize: number; compression: number };

function unzip(bytes: Uint8Array, filter: (entry: Entry) => boolean): Record<string, Uint8Array> {
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) throw new ArchiveFault('an archive in the ZIP format');
  try {
    return unzipSync(bytes, { filter });
  } catch (error) {
    if (error instanceof ArchiveFault) throw error;
    throw new ArchiveFault('an archive in the ZIP format that is whole and not encrypted');
  }
}

async function* unpackEntry(archive: InputFile, at: number, settings: Settings): AsyncGenerator<Uint8Array> {
  const packed = await bytesOf(archive, settings);
  let count = 0;
  const unpacked = unzip(packed, () => count++ === at);
  const [bytes] = Object.values(unpacked);
  if (bytes && !isWhole(bytes, declaredChecks(packed)?.[at]))
    throw new ArchiveFault('a file in the archive that is whole; its check sum is another');
  if (bytes && bytes.length > 0) yield bytes;
}

/** Folders, and what operating systems and spreadsheet programs put beside the files. */
const isNoExport = (name: string): boolean =>
  /[\\/]$/.test(name) ||
  /(?:^|[\\/])__MACOSX[\\/]/.test(name) ||
  /(?:^|[\\/])(?:~\$|\.(?!\.))[^\\/]*$/.test(name);

/** A relative path with forward slashes; undefined where the name would lead out of a folder. */
function safeName(name: string): string | undefined {
  const parts = name
    .replaceAll('\\', '/')
    .replace(/^(?:\.\/)+/, '')
    .split('/');
  const climbs = parts.some((part) => part === '..' || part === '' || part.includes('\0'));
  return climbs || /^[a-z]:/i.test(name) ? undefined : parts.join('/');
}

async function bytesOf(archive: InputFile, { held, limits }: Settings): Promise<Uint8Array> {
  const known = held.get(archive.path);
  if (known) return known;
  const bytes = await collect(archive.open(), limits.file_bytes);
  if (held.size >= HELD) held.delete(held.keys().next().value!);
  held.set(archive.path, bytes);
  return bytes;
}

async function collect(pieces: AsyncIterable<Uint8Array>, most: number): Promise<Uint8Array> {
  const held: Uint8Array[] = [];
  let size = 0;
  for await (const piece of pieces) {
    size += piece.byteLength;
    if (size > most) throw new ArchiveFault(`an archive of at most ${most} bytes`);
    held.push(piece);
  }
  return Buffer.concat(held);
}

/** Unpacks once to see whether it is whole (the check sum stands at its end), and only then hands it on: rows of a damaged file are no data. */
async function* checkedGunzip(
  open: () => AsyncIterable<Uint8Array>,
  limits: ArchiveLimits,
): AsyncGenerator<Uint8Array> {
  for await (const _ of gunzip(open(), limits));
  yield* gunzip(open(), limits);
}

async function* gunzip(pieces: AsyncIterable<Uint8Array>, limits: ArchiveLimits): AsyncGenerator<Uint8Array> {
  let packed = 0;
  const counted = async function* (): AsyncGenerator<Uint8Array> {
    for await (const piece of pieces) {
      packed += piece.byteLength;
      yield piece;
    }
  };
  const unpacking = createGunzip();
  const piped = pipeline(Readable.from(counted()), unpacking);
  piped.catch(() => undefined);
  let unpacked = 0;
  try {
    for await (const piece of unpacking as AsyncIterable<Uint8Array>) {
      unpacked += piece.byteLength;
      if (unpacked > limits.unpacked_bytes)
        throw new ArchiveFault(`a file of at most ${limits.unpacked_bytes} bytes unpacked`);
      if (unpacked > 1_000_000 && unpacked > packed * limits.ratio)
        throw new ArchiveFault(`a file at most ${limits.ratio} times as large as it is packed`);
      yield piece;
    }
  } catch (error) {
    if (String((error as { code?: string }).code).startsWith('Z_'))
      throw new ArchiveFault('a .gz file that can be unpacked to its end and whose check sum is right');
    throw error;
  }
}
