import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

// For its output only: times differ from machine to machine and decide nothing here.
describe('the benchmark of reading', () => {
  it('reads as many rows as it made, each way', { timeout: 120_000 }, () => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['--import', 'tsx', 'tests/bench/large.ts', '--cycles', '3000', '--units', '3'],
      { cwd: ROOT, encoding: 'utf8' },
    );
    expect(status, stderr).toBe(0);
    expect(stdout).toMatch(/^3000 cycles of 3 units, 0\.4 MB/);
    for (const what of [
      'bare csv-parse',
      'one thread',
      'validated, 2 threads',
      'and joined',
      'kept as columns',
      'the next time',
      'into the history',
    ])
      expect(stdout.split('\n').filter((line) => line.includes(what) && /rows\/s/.test(line))).toHaveLength(
        1,
      );
    expect(stdout).toMatch(/csv-parse, streaming .* 1\.00 x$/m);
  });
});
