import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { bytesBelow, heapNeeded, heapOfPart } from '../../pipeline/commands/heap-needed.ts';

const GB = 2 ** 30;
const BIN = fileURLToPath(new URL('../../pipeline/commands/bin.mjs', import.meta.url));

it('asks for a larger heap only where the exports need it, and for no more than the machine has', () => {
  expect(heapNeeded(0.1 * GB, 4 * GB, 24 * GB)).toBeUndefined();
  expect(heapNeeded(0.5 * GB, 4 * GB, 24 * GB)).toBe(8192);
  expect(heapNeeded(5 * GB, 4 * GB, 24 * GB)).toBe(Math.floor(0.8 * 24 * 1024));
  expect(heapNeeded(5 * GB, 4 * GB, 4 * GB)).toBeUndefined();
});

it('asks for an eighth of it where records are taken site by site, since only those of a part are held', () => {
  expect(heapNeeded(0.5 * GB, 4 * GB, 24 * GB, true)).toBeUndefined();
  expect(heapNeeded(5 * GB, 4 * GB, 24 * GB, true)).toBe(10_240);
});

it('gives a thread a gigabyte, and more where one site has very many records', () => {
  expect(heapOfPart(1000, 1)).toBe(1024);
  expect(heapOfPart(400_000, 1)).toBe(1907);
  expect(heapOfPart(1e12, 1)).toBeLessThan(totalmem() / 2 ** 20);
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

/** Process numbers are looked up where Linux lists them. */
describe.skipIf(process.platform !== 'linux')('a program that was started anew', { timeout: 60_000 }, () => {
  /** Runs `check` over a hole of 900 MB, which takes seconds to read, and sends a signal as soon as the second process is there. */
  async function ended(signal: NodeJS.Signals, to: 'first' | 'second') {
    const folder = mkdtempSync(join(tmpdir(), 'heap-'));
    try {
      writeFileSync(join(folder, 'site.yaml'), 'sites: [{ zone: Europe/Berlin }]');
      writeFileSync(join(folder, 'cycles.csv'), 'unit,start,kind,outcome\n');
      truncateSync(join(folder, 'cycles.csv'), 900_000_000);
      const first = spawn(process.execPath, [BIN, 'check', folder], { stdio: ['ignore', 'pipe', 'pipe'] });
      let told = '';
      first.stderr.on('data', (text) => {
        told += text;
      });
      const closed = new Promise<[number | null, NodeJS.Signals | null]>((resolve) =>
        first.once('close', (...how) => resolve(how)),
      );
      let second: number | undefined;
      while (second === undefined && first.exitCode === null) {
        await new Promise((resolve) => setTimeout(resolve, 20));
        second = Number(readFileSync(`/proc/${first.pid}/task/${first.pid}/children`, 'utf8')) || undefined;
      }
      process.kill(to === 'first' ? first.pid! : second!, signal);
      const [code, by] = await closed;
      expect(() => process.kill(second!, 0)).toThrow('ESRCH');
      return { code, by, told };
    } finally {
      rmSync(folder, { recursive: true });
    }
  }

  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('ends with the first process by %s', async (signal) => {
    expect(await ended(signal, 'first')).toEqual({ code: null, by: signal, told: '' });
  });

  it('says that it was killed, with the exit code of that signal', async () => {
    expect(await ended('SIGKILL', 'second')).toEqual({
      code: 137,
      by: null,
      told: 'The program was ended by SIGKILL, perhaps for want of memory.\n',
    });
  });
});
