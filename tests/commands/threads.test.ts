import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { runProgram } from './terminal.ts';

const DEMO = fileURLToPath(new URL('../../data-samples', import.meta.url));
const out = mkdtempSync(join(tmpdir(), 'threads-'));
afterAll(() => rmSync(out, { recursive: true }));

async function reviewWith(threads: string): Promise<Map<string, string>> {
  const folder = join(out, threads);
  expect(await runProgram('review', DEMO, '--threads', threads, '--out', folder)).toMatchObject({ code: 0 });
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return new Map(
    files.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [path.slice(folder.length), readFileSync(path, 'latin1')];
    }),
  );
}

describe('threads', () => {
  it('give the same bytes however many they are', { timeout: 240_000 }, async () => {
    const one = await reviewWith('1');
    const three = await reviewWith('3');
    expect(one.size).toBeGreaterThan(30);
    expect([...three.keys()].sort()).toEqual([...one.keys()].sort());
    for (const [path, content] of one) expect(three.get(path) === content, path).toBe(true);
  });

  it.each(['0', 'many', '1.5', '65'])('are refused where they are "%s"', async (threads) => {
    const { code, err } = await runProgram('watch', DEMO, '--threads', threads);
    expect(code).toBe(2);
    expect(err).toContain(`--threads must be a whole number from 1 to 64, found "${threads}"`);
  });
});
