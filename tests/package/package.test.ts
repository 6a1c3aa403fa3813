import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const project = mkdtempSync(join(tmpdir(), 'package-'));
const run = (command: string, ...args: string[]): string =>
  execFileSync(command, args, { cwd: project, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
let packed: { filename: string; files: { path: string }[] };

/** Packs a copy of the project, since other tests use the bundle meanwhile, and installs the packed file in an empty one. */
beforeAll(() => {
  const copy = join(project, 'copy');
  for (const name of ['pipeline', 'package.json', 'tsconfig.json', 'README.md'])
    cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
  const answer = execFileSync('npm', ['pack', '--json', '--pack-destination', project], {
    cwd: copy,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  packed = JSON.parse(answer.slice(answer.indexOf('[\n')))[0];
  writeFileSync(join(project, 'package.json'), '{ "name": "empty", "private": true, "type": "module" }');
  run('npm', 'install', '--no-audit', '--no-fund', '--prefer-offline', packed.filename);
}, 240_000);
afterAll(() => rmSync(project, { recursive: true, force: true }));

describe('the packed project', () => {
  it('holds what it needs and no tests, demo data or reports', () => {
    const paths = packed.files.map(({ path }) => path);
    expect(paths).toEqual(
      expect.arrayContaining(['dist/index.js', 'dist/main.js', 'dist/types/index.d.ts', 'README.md']),
    );
    expect(paths.filter((path) => /^(?:tests|data-samples|notebooks|reports)\//.test(path))).toEqual([]);
  });

  it('runs what is bundled, at whatever times its files were unpacked', { timeout: 60_000 }, () => {
    const later = new Date(Date.now() + 3_600_000);
    const source = join(project, 'node_modules/cleaning-evidence/pipeline/version.ts');
    utimesSync(source, later, later);
    expect(run('npx', 'cleaning-evidence', '--version').trim()).toMatch(/^\d+\.\d+\.\d+$/);
  });

  it('runs as a command', { timeout: 120_000 }, () => {
    const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    expect(run('npx', 'cleaning-evidence', '--version').trim()).toBe(version);
    const answer = JSON.parse(run('npx', 'cleaning-evidence', 'check', join(ROOT, 'data-samples'), '--json'));
    expect(answer.totals.rows).toBe(
      answer.totals.records + answer.totals.duplicates + answer.totals.rejected + answer.totals.skipped,
    );
    expect(answer.totals.records).toBeGreaterThan(49_000);
  });

  it('runs as a library, with types', { timeout: 120_000 }, () => {
    const program = `import { compare, panel, readRecords, readSite, type Comparison } from 'cleaning-evidence';
const folder: string = process.argv[2]!;
const site = await readSite(folder + '/site.yaml');
const joined = panel(site, await readRecords(site, folder), { month: '2026-09' });
const shown: Comparison[] = compare(joined).comparisons.filter(({ verdict }) => verdict === 'shown');
console.log(JSON.stringify(shown.map(({ id }) => id)));
`;
    writeFileSync(join(project, 'use.ts'), program);
    const options =
      '--module nodenext --target es2023 --strict --noUncheckedIndexedAccess --skipLibCheck false --types node';
    run(
      join(ROOT, 'node_modules/.bin/tsc'),
      ...options.split(' '),
      '--typeRoots',
      join(ROOT, 'node_modules/@types'),
      'use.ts',
    );
    expect(JSON.parse(run('node', 'use.js', join(ROOT, 'data-samples')))).toContain(
      'Q2/chamber_overdue/failed_test',
    );
  });
});
