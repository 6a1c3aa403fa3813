import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { reviewSchema } from '../../pipeline/findings/review-schema.ts';
import { runProgram } from '../commands/terminal.ts';

/**
 * Whole runs: a folder `input` is a case, the folder `expected` beside it the expectation. A missing expectation is written on a local run, to be read
 * before it is committed; where CI is set it is a failure.
 */
const root = fileURLToPath(new URL('.', import.meta.url));
const cases = readdirSync(root, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);
const scratch = mkdtempSync(join(tmpdir(), 'runs-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function expectFile(name: string, file: string, content: string): void {
  const path = join(root, name, 'expected', file);
  if (!existsSync(path) && !process.env.CI) {
    mkdirSync(join(root, name, 'expected'), { recursive: true });
    writeFileSync(path, content);
  }
  expect(content).toBe(readFileSync(path, 'utf8'));
}

describe.each(cases)('the whole run of %s', (name) => {
  const input = join(root, name, 'input');

  it('reads as expected', async () => {
    const { code, out, err } = await runProgram('check', input);
    expect([code, err]).toEqual([0, '']);
    expectFile(name, 'check.txt', out);
  });

  it('reviews as expected, the same bytes each time', async () => {
    const folders = ['first', 'second'].map((run) => join(scratch, name, run));
    for (const folder of folders) expect((await runProgram('review', input, '--out', folder)).code).toBe(0);
    const [first, second] = folders.map(filesBelow);
    expect(second).toEqual(first);
    const review = Object.entries(first!).find(([path]) => path.endsWith('/review.json'))![1];
    expect(reviewSchema.safeParse(JSON.parse(review)).error).toBeUndefined();
    // What the program says of itself changes with its version, not with the input.
    const {
      version,
      operating_characteristics: _,
      drift_operating_characteristics: __,
      ...rest
    } = JSON.parse(review);
    expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    expectFile(name, 'review.json', `${JSON.stringify(rest, null, 1)}\n`);
    expectFile(
      name,
      'problems.csv',
      Object.entries(first!).find(([path]) => path.endsWith('/problems.csv'))![1],
    );
  });
});

function filesBelow(folder: string): Record<string, string> {
  const files: Record<string, string> = {};
  for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    files[path.slice(folder.length)] = readFileSync(path, 'utf8');
  }
  return files;
}
