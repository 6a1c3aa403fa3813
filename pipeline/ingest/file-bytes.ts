import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';

/** Opens a file as pieces of bytes. */
export type OpenFile = (path: string) => AsyncIterable<Uint8Array>;

export const openFile: OpenFile = (path) => createReadStream(path, { highWaterMark: 1 << 18 });

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
