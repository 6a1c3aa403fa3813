import { mkdir, mkdtemp, readdir, readFile, rm, stat, utimes } from 'node:fs/promises';
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

  it('is that of the run that finishes last, whole, where two write it at once', async () => {
    const folder = join(place, 'out');
    const files = (mark: string) =>
      Array.from({ length: 20 }, (_, at) => ({ path: `${mark}/${at}.txt`, content: mark }));
    const first = await freshFolder(folder);
    for (const file of files('first').slice(0, 13)) await first.write(file);
    const second = await freshFolder(folder);
    for (const file of files('second').slice(0, 7)) await second.write(file);
    for (const file of files('first').slice(13)) await first.write(file);
    await first.finish();
    expect((await readdir(join(folder, 'first'))).length).toBe(20);
    for (const file of files('second').slice(7)) await second.write(file);
    await second.finish();
    expect([first.count, second.count]).toEqual([20, 20]);
    expect(await readdir(folder)).toEqual(['second']);
    expect((await readdir(join(folder, 'second'))).length).toBe(20);
    expect(await readdir(place)).toEqual(['out']);
  });

  it('is of one run, whole, where many finish in the same moment', async () => {
    const folder = join(place, 'out');
    await writeFolder(folder, [{ path: 'earlier.txt', content: '' }]);
    const runs = await Promise.all(Array.from({ length: 8 }, () => freshFolder(folder)));
    for (const [run, fresh] of runs.entries())
      for (const name of ['a', 'b']) await fresh.write({ path: `${run}-${name}`, content: '' });
    await Promise.all(runs.map((fresh) => fresh.finish()));
    const [a = '', ...more] = (await readdir(folder)).sort();
    expect(more).toEqual([a.replace('a', 'b')]);
    expect(await readdir(place)).toEqual(['out']);
  });

  it('holds the earlier files again where the new can’t take their place', async () => {
    const folder = join(place, 'out');
    await writeFolder(folder, [{ path: 'a.txt', content: 'old' }]);
    const fresh = await freshFolder(folder);
    await fresh.write({ path: 'b.txt', content: 'new' });
    // Someone clears up what the run has written, the moment before it is renamed.
    const own = (await readdir(place)).find((name) => name !== 'out')!;
    await rm(join(place, own, 'new'), { recursive: true });
    await expect(fresh.finish()).rejects.toMatchObject({ code: 'not_writable' });
    expect(await readFile(join(folder, 'a.txt'), 'utf8')).toBe('old');
    expect(await readdir(place)).toEqual(['out']);
  });

  it('is not made of the rest where someone takes away what was written', async () => {
    const folder = join(place, 'out');
    const fresh = await freshFolder(folder);
    await fresh.write({ path: 'b.txt', content: 'new' });
    for (const name of await readdir(place)) await rm(join(place, name), { recursive: true });
    await expect(fresh.write({ path: 'c/d.txt', content: 'new' })).rejects.toMatchObject({
      code: 'not_writable',
    });
    expect(await readdir(place)).toEqual([]);
  });

  it('has the rights of any new folder, and stands where a name ends in a slash', async () => {
    await writeFolder(`${join(place, 'out')}/`, [{ path: 'a.txt', content: '' }]);
    await writeFolder(`${join(place, 'out')}/`, [{ path: 'b.txt', content: '' }]);
    await mkdir(join(place, 'other'));
    expect((await stat(join(place, 'out'))).mode).toBe((await stat(join(place, 'other'))).mode);
    expect(await readdir(join(place, 'out'))).toEqual(['b.txt']);
  });
});

describe('what a run left that was ended by force', () => {
  const DAY_S = 24 * 3600;
  /** As after a crash, the given time ago. */
  async function leave(folder: string, days: number, part: 'new' | 'earlier'): Promise<void> {
    await freshFolder(folder);
    const own = (await readdir(place)).find((name) => name.includes('.unfinished-'))!;
    await mkdir(join(place, own, part), { recursive: true });
    const then = Date.now() / 1000 - days * DAY_S;
    for (const path of [join(own, 'new'), join(own, part), own]) await utimes(join(place, path), then, then);
  }

  it('goes with a later run, after a day in which nothing was written', async () => {
    const folder = join(place, 'out');
    await leave(folder, 1.1, 'new');
    await writeFolder(folder, []);
    expect(await readdir(place)).toEqual(['out']);
  });

  it('stays where it may be of a run that goes on', async () => {
    const folder = join(place, 'out');
    await leave(folder, 0.9, 'new');
    await writeFolder(folder, []);
    expect((await readdir(place)).length).toBe(2);
  });

  it('stays where it holds the earlier review and none stands in its place yet', async () => {
    const folder = join(place, 'out');
    await leave(folder, 30, 'earlier');
    const fresh = await freshFolder(folder);
    expect((await readdir(place)).filter((name) => name.includes('.unfinished-')).length).toBe(2);
    await fresh.finish();
    await writeFolder(folder, []);
    expect(await readdir(place)).toEqual(['out']);
  });
});
