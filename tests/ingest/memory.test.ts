import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { MOST_ALIKE } from '../../pipeline/ingest/reading.ts';
import { withFolder } from './read-folder.ts';

/** Reads in a process of its own with at most 96 MB of heap: one that needs more dies. */
const readBounded = (name: string, what: string, count: number): Promise<Record<string, number>> =>
  withFolder({ [name]: '' }, async (folder) => {
    const child = spawnSync(
      process.execPath,
      [
        '--max-old-space-size=96',
        '--import',
        'tsx',
        fileURLToPath(new URL('memory-child.ts', import.meta.url)),
        folder,
        what,
        String(count),
      ],
      { encoding: 'utf8', timeout: 100_000 },
    );
    expect(child.stderr).toBe('');
    expect([child.status, child.signal]).toEqual([0, null]);
    return JSON.parse(child.stdout);
  });

describe('memory', () => {
  it('half a million wrong rows: counted exactly, listed as far as anyone reads', async () => {
    const read = await readBounded('cycles.csv', 'wrong', 500_000);
    expect(read).toMatchObject({
      rows: 500_000,
      rejected: 500_000,
      records: 0,
      counted: 500_000,
      listed: MOST_ALIKE,
    });
    expect(read.rss).toBeLessThan(400);
  }, 120_000);

  it.each([
    ['cycles.csv', 'random', 32],
    ['cycles.csv', 'random-below-header', 8],
    ['cycles.xlsx', 'random', 32],
    ['cycles.csv.gz', 'random', 32],
  ])(
    'random bytes as %s (%s), %d MB',
    async (name, what, megabytes) => {
      const read = await readBounded(name, what, megabytes * 16);
      expect(read.rows).toBe(read.records! + read.duplicates! + read.rejected! + read.skipped!);
      expect(read.counted).toBe(read.rejected);
      expect(read.rss).toBeLessThan(400);
    },
    120_000,
  );
});
