import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { listFiles } from './list-files.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const copy = mkdtempSync(join(tmpdir(), 'architecture-'));
afterAll(() => rmSync(copy, { recursive: true, force: true }));

interface Answer {
  modules: { source: string }[];
  summary: { violations: { rule: { name: string } }[] };
}

function cruise(folder: string): Answer {
  const cruiser = join(ROOT, 'node_modules/.bin/depcruise');
  try {
    const text = execFileSync(
      cruiser,
      ['--config', join(ROOT, 'tests/architecture.cjs'), '-T', 'json', 'pipeline'],
      {
        cwd: folder,
        encoding: 'utf8',
        maxBuffer: 1 << 28,
        stdio: ['ignore', 'pipe', 'pipe'],
      },
    );
    return JSON.parse(text);
  } catch (error) {
    // It ends with the number of violations.
    return JSON.parse((error as { stdout: string }).stdout);
  }
}

describe('the check of the architecture', () => {
  it('sees every TypeScript file of the pipeline and finds nothing', { timeout: 120_000 }, () => {
    const { modules, summary } = cruise(ROOT);
    const seen = new Set(modules.map(({ source }) => source));
    const files = listFiles(join(ROOT, 'pipeline'), '.ts');
    expect(files.length).toBeGreaterThan(300);
    expect(files.filter((file) => !seen.has(`pipeline/${file}`))).toEqual([]);
    expect(summary.violations).toEqual([]);
  });

  it('finds an import of a later stage, also of a type, and a cycle', { timeout: 60_000 }, () => {
    for (const stage of ['ingest', 'report']) mkdirSync(join(copy, 'pipeline', stage), { recursive: true });
    writeFileSync(join(copy, 'tsconfig.json'), '{}');
    symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
    writeFileSync(
      join(copy, 'pipeline/ingest/one.ts'),
      "import type { Two } from '../report/two.ts';\nexport type One = Two;\n",
    );
    writeFileSync(
      join(copy, 'pipeline/report/two.ts'),
      "import type { One } from '../ingest/one.ts';\nexport type Two = One | 1;\n",
    );
    const found = cruise(copy).summary.violations.map(({ rule }) => rule.name);
    expect(found).toContain('ingest-imports-no-later-stage');
    expect(found).toContain('no-cycles');
  });
});
