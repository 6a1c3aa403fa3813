import { createHash } from 'node:crypto';
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { UserError } from '../user-error.ts';

/** Opens a file as pieces of bytes. */
export type OpenFile = (path: string) => AsyncIterable<Uint8Array>;

/** Most bytes of a piece. */
const PIECE = 1 << 18;

/** From disk. The thread waits for the bytes, since it has nothing else to do: for many small files that takes a third of the time of a stream. */
export const openFile: OpenFile = async function* (path) {
  const file = openSync(path, 'r');
  try {
    const { size } = fstatSync(file);
    for (let left = size; ; ) {
      // A byte more than is left shows the end of the file, or that it grows.
      const piece = new Uint8Array(left < 0 ? PIECE : Math.min(PIECE, left + 1));
      const bytes = readSync(file, piece);
      if (bytes === 0) return;
      left -= bytes;
      yield piece.subarray(0, bytes);
    }
  } finally {
    closeSync(file);
  }
};

/** Faults of the machine and not of the file: to go on would count the file as one that can't be read. */
const OF_MACHINE: Readonly<Record<string, string>> = {
  EMFILE: 'too many files are open in this program',
  ENFILE: 'too many files are open on this machine',
  ENOMEM: 'the machine has no memory left',
};

/** Opens files so that a fault of the machine ends the reading, and is none of the file. */
export const endingOnMachineFaults = (open: OpenFile): OpenFile =>
  async function* (path) {
    try {
      yield* open(path);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      const fault = code === undefined ? undefined : OF_MACHINE[code];
      if (fault === undefined) throw error;
      throw new UserError(
        'machine',
        `${path}: must be opened, and ${fault} (${code}); nothing was counted`,
        'Close other programs and run the command again.',
      );
    }
  };

/** The bytes of a file on their way to the reader, counted and hashed as they pass: the file is read once. */
export class FileBytes {
  readonly #pieces: AsyncIterable<Uint8Array>;
  readonly #hash = createHash('sha256');
  readonly #onPiece: (bytes: number) => void;
  bytes = 0;

  constructor(pieces: AsyncIterable<Uint8Array>, onPiece: (bytes: number) => void = () => {}) {
    this.#pieces = pieces;
    this.#onPiece = onPiece;
  }

  async *pieces(): AsyncGenerator<Uint8Array> {
    for await (const piece of this.#pieces) {
      this.bytes += piece.byteLength;
      this.#hash.update(piece);
      this.#onPiece(this.bytes);
      yield piece;
    }
  }

  /** SHA-256 of the bytes that passed, hexadecimal. To be asked once. */
  sha256(): string {
    return this.#hash.digest('hex');
  }
}
