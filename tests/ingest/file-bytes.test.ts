import { appendFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { openFile } from '../../pipeline/ingest/file-bytes.ts';
import { withFolder } from './read-folder.ts';

async function piecesOf(file: string, onPiece: (at: number) => void = () => {}): Promise<Uint8Array[]> {
  const pieces: Uint8Array[] = [];
  for await (const piece of openFile(file)) {
    onPiece(pieces.length);
    pieces.push(piece);
  }
  return pieces;
}

describe('a file as pieces', () => {
  const bytes = (length: number): Buffer => Buffer.from(Array.from({ length }, (_, at) => at % 251));

  it.each([0, 1, 5, 262_143, 262_144, 262_145, 1_000_000])('gives its %i bytes', (length) =>
    withFolder({ file: bytes(length) }, async (folder) => {
      const pieces = await piecesOf(path.join(folder, 'file'));
      expect(Buffer.concat(pieces)).toEqual(bytes(length));
    }),
  );

  it('gives what is added while it is read, and not byte by byte', () =>
    withFolder({ file: '' }, async (folder) => {
      const file = path.join(folder, 'file');
      writeFileSync(file, bytes(10));
      const pieces = await piecesOf(file, (at) => {
        if (at === 0) appendFileSync(file, bytes(1_000_000));
      });
      expect(Buffer.concat(pieces)).toEqual(Buffer.concat([bytes(10), bytes(1_000_000)]));
      expect(pieces.length).toBeLessThan(10);
    }));

  it('says that a file is not there', async () => {
    await expect(piecesOf('/nowhere/at/all')).rejects.toThrow('ENOENT');
  });
});
