import { mkdir, symlink } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { findFiles } from '../../pipeline/ingest/find-files.ts';
import { withFolder } from './read-folder.ts';

describe('files below a folder', () => {
  it('are listed in order of their code units, with forward slashes', async () => {
    await withFolder(
      { 'b.csv': '', 'B.csv': '', 'a/ä.csv': '', 'a/z.csv': '', '~$b.xlsx': '' },
      async (folder) => {
        expect((await findFiles(folder)).files).toEqual(['B.csv', 'a/z.csv', 'a/ä.csv', 'b.csv']);
      },
    );
  });

  it('leave out what is no input', async () => {
    await withFolder({ 'site.yaml': '', 'out/cycles.csv': '', 'in/cycles.csv': '' }, async (folder) => {
      const ignore = [path.join(folder, 'site.yaml'), path.join(folder, 'out'), path.join(folder, 'gone')];
      expect((await findFiles(folder, ignore)).files).toEqual(['in/cycles.csv']);
    });
  });

  it('are not guessed where a folder can’t be listed', async () => {
    await withFolder({ 'a.csv': '' }, async (folder) => {
      for (const name of ['a.csv', 'gone'])
        await expect(findFiles(path.join(folder, name))).rejects.toMatchObject({ code: 'unreadable_folder' });
    });
  });

  it('follow links inside the folder and refuse those that leave it', async () => {
    await withFolder({ 'secret.csv': '', 'in/a.csv': '', 'in/sub/b.csv': '' }, async (outside) => {
      const folder = path.join(outside, 'in');
      await symlink(path.join(folder, 'a.csv'), path.join(folder, 'link.csv'));
      await symlink('../secret.csv', path.join(folder, 'out.csv'));
      await symlink('nowhere.csv', path.join(folder, 'dangling.csv'));
      await symlink(outside, path.join(folder, 'up'));
      await symlink(folder, path.join(folder, 'sub', 'loop'));
      await symlink(path.join(folder, 'sub'), path.join(folder, 'again'));
      await mkdir(path.join(outside, 'in-2'));
      await symlink(path.join(outside, 'in-2'), path.join(folder, 'sibling'));
      const found = await findFiles(folder);
      expect(found.files).toEqual(['a.csv', 'again/b.csv', 'link.csv', 'sub/b.csv']);
      expect(found.refused).toEqual(['dangling.csv', 'out.csv', 'sibling', 'up']);
    });
  });
});
