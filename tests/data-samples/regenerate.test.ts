import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildDemoData } from '../../data-samples/generator/build.ts';

const folder = fileURLToPath(new URL('../../data-samples', import.meta.url));
const zone = process.env.TZ;
let files: Map<string, Uint8Array>;

beforeAll(async () => {
  files = await buildDemoData();
});
afterAll(() => {
  process.env.TZ = zone;
});

test('the generator gives the bytes of each committed file', async () => {
  for (const [name, bytes] of files) {
    const committed = await readFile(path.join(folder, name));
    expect(committed.equals(bytes), name).toBe(true);
  }
});

test('no file stands among the exports that the generator did not write', async () => {
  const found = await readdir(path.join(folder, 'exports'), { recursive: true, withFileTypes: true });
  const names = found
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)).replaceAll('\\', '/'));
  expect(names.sort()).toEqual([...files.keys()].filter((name) => name.startsWith('exports/')).sort());
});

test('the zone and clock of the machine move no byte of the workbook', async () => {
  process.env.TZ = 'Asia/Kolkata';
  expect(new Date(2026, 0, 1).getTimezoneOffset()).toBe(-330);
  const again = await buildDemoData();
  for (const [name, bytes] of again) expect(Buffer.from(bytes).equals(files.get(name)!), name).toBe(true);
});

test('all files together stay under 10 MB', () => {
  const total = [...files.values()].reduce((sum, bytes) => sum + bytes.length, 0);
  expect(total).toBeLessThan(10_000_000);
});
