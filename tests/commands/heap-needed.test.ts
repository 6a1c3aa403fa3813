import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { bytesBelow, heapNeeded } from '../../pipeline/commands/heap-needed.ts';

const GB = 2 ** 30;
const BIN = fileURLToPath(new URL('../../pipeline/commands/bin.mjs', import.meta.url));

it('asks for a larger heap only where the exports need it, and for no more than the machine has', () => {
  expect(heapNeeded(0.1 * GB, 4 * GB, 24 * GB)).toBeUndefined();
  expect(heapNeeded(0.5 * GB, 4 * GB, 24 * GB)).toBe(8192);
  expect(heapNeeded(5 * GB, 4 * GB, 24 * GB)).toBe(Math.floor(0.8 * 24 * 1024));
  expect(heapNeeded(5 * GB, 4 * GB, 4 * GB)).toBeUndefined();
});

it('starts the program anew with it, and hands on what it prints and how it ends', {
  timeout: 60_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'heap-'));
  try {
    // A hole of 900 MB takes no room on disk.
    writeFileSync(join(folder, 'not-an-export.bin'), '');
    truncateSync(join(folder, 'not-an-export.bin'), 900_000_000);
    expect(await bytesBelow(folder)).toBe(900_000_000);
    const { status, stderr } = spawnSync(process.execPath, [BIN, 'check', folder], { encoding: 'utf8' });
    expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringContaining('site.yaml') });
  } finally {
    rmSync(folder, { recursive: true });
  }
});
