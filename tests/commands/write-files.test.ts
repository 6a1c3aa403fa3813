import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { freshFolder, writeFolder } from '../../pipeline/commands/write-files.ts';

let place: string;
beforeEach(async () => {
  place = await mkdtemp(join(tmpdir(), 'write-'));
});
afterEach(() => rm(place, { recursive: true }));

describe('a folder of files', () => {
  it('takes the place of what stood there', async () => {
    const folder = join(place, 'out');
    await writeFolder(folder, [{ path: 'a.txt', content: 'old' }]);
    await writeFolder(folder, [{ path: 'b/c.txt', content: 'new' }]);
    expect(await readdir(place)).toEqual(['out']);
    expect(await readdir(folder)).toEqual(['b']);
    expect(await readFile(join(folder, 'b/c.txt'), 'utf8')).toBe('new');
  });

  it('stays as it was where a file can’t be written, and leaves nothing half done', async () => {
    const folder = join(place, 'out');
    await writeFolder(folder, [{ path: 'a.txt', content: 'old' }]);
    // A file can't stand below a file: the same way out as for a full disk.
    const files = [
      { path: 'x', content: '1' },
      { path: 'x/y', content: '2' },
    ];
    await expect(writeFolder(folder, files)).rejects.toMatchObject({ code: 'not_writable' });
    expect(await readdir(place)).toEqual(['out']);
    expect(await readFile(join(folder, 'a.txt'), 'utf8')).toBe('old');
  });

  it('is not there again where a file was still being written as it was abandoned', async () => {
    const fresh = await freshFolder(join(place, 'out'));
    const writes = Array.from({ length: 20 }, (_, at) =>
      fresh.write({ path: `deep/${at}/page.html`, content: 'x'.repeat(100_000) }),
    );
    await fresh.abandon();
    await Promise.allSettled(writes);
    await fresh.write({ path: 'late.html', content: 'late' });
    expect(await readdir(place)).toEqual([]);
  });
});
