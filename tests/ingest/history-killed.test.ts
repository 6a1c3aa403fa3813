import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { afterAll, expect, it } from 'vitest';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { readSite } from '../../pipeline/library/read.ts';
import { makeExports } from '../bench/make-exports.ts';

const folder = mkdtempSync(join(tmpdir(), 'killed-'));
const history = join(folder, 'history');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const RUNNER = fileURLToPath(new URL('../bench/read-large.mjs', import.meta.url));
const arrows = (): number => readdirSync(history).filter((name) => name.endsWith('.arrow')).length;

/** Runs a reading in a process of its own and ends it by force after so many ms; whether it was still at work then. */
function killedAfter(ms: number): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [RUNNER, 'read', folder, '1', history], { stdio: 'ignore' });
    const timer = setTimeout(() => child.kill('SIGKILL'), ms);
    child.once('exit', (_code, signal) => {
      clearTimeout(timer);
      resolve(signal === 'SIGKILL');
    });
  });
}

it('is whole after a run was ended by force at twenty points, and the reading is as if nothing had been', {
  timeout: 180_000,
}, async () => {
  makeExports(folder, 24_000, 40);
  const site = await readSite(join(folder, 'site.yaml'));
  const plain = await readExports(site, folder, { ignore: [join(folder, 'site.yaml'), history] });
  const random = xoroshiro128plus(11);
  let atWork = 0;
  for (let kill = 0; kill < 20; kill++) {
    rmSync(history, { recursive: true, force: true });
    if (await killedAfter(50 + ((random.next() >>> 0) % 1600))) atWork++;
    const kept = { ignore: [join(folder, 'site.yaml'), history], history };
    if (kill % 5 === 4) {
      expect(await readExports(site, folder, kept)).toEqual(plain);
      expect(readdirSync(history).filter((name) => !name.endsWith('.arrow'))).toEqual([]);
      expect(arrows()).toBe(plain.files.length);
    }
  }
  expect(atWork).toBeGreaterThan(0);
  expect(plain.records.cycles).toHaveLength(24_000);
});
