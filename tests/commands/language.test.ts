import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { runProgram } from './terminal.ts';

const scratch = mkdtempSync(join(tmpdir(), 'language-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const good = fileURLToPath(new URL('../runs/smallest-site-file/input', import.meta.url));

/** A run over a small site: what it printed, and the files by their path. */
async function run(name: string, report: string | undefined, ...argv: string[]) {
  const folder = join(scratch, name);
  await cp(good, folder, { recursive: true });
  if (report !== undefined) {
    const site = join(folder, 'site.yaml');
    await writeFile(site, `${await readFile(site, 'utf8')}\nreport: { ${report} }\n`);
  }
  const out = join(scratch, `${name}-out`);
  const result = await runProgram('review', folder, '--out', out, ...argv);
  const fileOf = (path: string): string => {
    const made = result.out.match(/Open (.*)[\\/]index\.html/)![1]!;
    return readFileSync(join(made, path), 'utf8');
  };
  return { ...result, fileOf };
}

describe('language of the review', () => {
  it('is English where nobody says anything', async () => {
    const { code, fileOf } = await run('plain', undefined);
    expect(code).toBe(0);
    expect(fileOf('index.html')).toContain('<html lang="en">');
  });

  it('is that of the site file, on each page and in the calendar file, and the data stay as they are', async () => {
    const english = await run('en', undefined);
    const german = await run('de', 'language: de');
    for (const page of ['index', 'meeting', 'comparisons', 'records', 'methods', 'interval'])
      expect(german.fileOf(`${page}.html`)).toContain('<html lang="de">');
    expect(german.fileOf('index.html')).toContain('Reinigung: erledigt und fällig');
    expect(german.fileOf('interval.ics')).toContain('//DE');
    const data = (text: string) => JSON.stringify(JSON.parse(text).comparisons);
    expect(data(german.fileOf('review.json'))).toBe(data(english.fileOf('review.json')));
  });

  it('is that of the option before that of the site file', async () => {
    const { fileOf } = await run('option', 'language: de', '--language', 'en');
    expect(fileOf('index.html')).toContain('<html lang="en">');
  });

  it('must be one that there is', async () => {
    const { code, err } = await runProgram('review', good, '--language', 'fr', '--out', scratch);
    expect(code).toBe(2);
    expect(err).toContain('--language must be en or de, found "fr"');
  });

  it('is that of the case for an interval too', async () => {
    const { code, out } = await runProgram('interval', good, '--language', 'de', '--out', scratch);
    expect(code).toBe(0);
    expect(out).toContain('DIE FRAGE');
  });
});
