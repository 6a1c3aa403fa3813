import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { boundHeaps, tuneEngine } from '../../pipeline/commands/engine-settings.ts';

const BIN = fileURLToPath(new URL('../../pipeline/commands/bin.mjs', import.meta.url));

describe('settings of the engine', () => {
  it('leaves engines alone for which nothing was measured', () => {
    expect(tuneEngine('12.4.254.21-node.33')).toBe(false);
    expect(boundHeaps('fleet', '14.1.146.11-node.1')).toBe(false);
  });

  it('is not complained of by the engine that runs', async () => {
    const { stdout, stderr } = await promisify(execFile)(process.execPath, [BIN, '--version']);
    expect(stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
    expect(stderr).toBe('');
  });

  it('has a word for how far a heap may grow', async () => {
    const { stdout } = await promisify(execFile)(process.execPath, ['--v8-options']);
    expect(stdout).toContain('--heap-growing-percent (specifies heap growing factor as');
  });
});
