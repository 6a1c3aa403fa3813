import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';

describe('what is printed', () => {
  it('may be cut short by who reads it, without a word', () => {
    const { stdout, stderr } = spawnSync(
      'sh',
      ['-c', 'node pipeline/commands/bin.mjs check data-samples --json | head -c 20'],
      { encoding: 'utf8' },
    );
    expect(stdout).toHaveLength(20);
    expect(stderr).toBe('');
  });
});
