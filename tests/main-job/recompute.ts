import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/**
 * Runs recompute.R on both fleets and flushes.R on its own where R is present, and says whether its results are those that are kept. They are written over those.
 *
 * Usage: npx tsx tests/main-job/recompute.ts
 */
const folder = fileURLToPath(new URL('.', import.meta.url));
const WORK = [
  { script: 'recompute.R', fleet: 'fleet-a', results: ['expected.json', 'expected-days.csv'] },
  { script: 'recompute.R', fleet: 'fleet-b', results: ['expected.json', 'expected-days.csv'] },
  { script: 'flushes.R', fleet: 'flushes', results: ['expected-tasks.csv', 'expected-missed.csv'] },
];

/** Numbers of another R or another machine differ in their last digits where a fit is iterated. */
const NEAR = 1e-11;

const r = spawnSync(
  'Rscript',
  ['-e', 'cat(R.version.string, "survival", format(packageVersion("survival")))'],
  {
    encoding: 'utf8',
  },
);
if (r.error) {
  console.log(
    'Rscript is not installed, so nothing was recomputed. On Debian: apt-get install r-base-core r-cran-survival',
  );
  process.exit(0);
}
if (r.status !== 0) {
  console.error(`Rscript is there, but R or its package survival is not in order:\n${r.stderr}`);
  process.exit(1);
}
console.log(r.stdout);
let changed = false;
for (const { script, fleet, results } of WORK) {
  const files = results.map((name) => new URL(`./${fleet}/${name}`, import.meta.url));
  const before = files.map(textOf);
  run('Rscript', [script, fleet]);
  for (const [index, file] of files.entries()) {
    const same = before[index] !== undefined && sameResult(before[index], textOf(file)!);
    // What is as kept keeps its form and its last digits.
    if (same) writeFileSync(file, before[index]!);
    changed ||= !same;
    console.log(
      `${fleet}/${results[index]}: ${same ? 'as kept' : 'differs from what was kept; written anew'}`,
    );
  }
}
process.exitCode = changed ? 1 : 0;

/** Whether two results say the same, whatever their form. */
function sameResult(a: string, b: string): boolean {
  return a === b || (a.startsWith('{') && sameValue(JSON.parse(a), JSON.parse(b)));
}

function sameValue(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= NEAR * Math.max(Math.abs(a), Math.abs(b));
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [left, right] = [Object.entries(a), new Map(Object.entries(b))];
  return left.length === right.size && left.every(([name, of]) => sameValue(of, right.get(name)));
}

function textOf(file: URL): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
}

function run(command: string, args: string[]): void {
  const { status, error } = spawnSync(command, args, {
    cwd: folder,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (error || status !== 0) throw new Error(`${command} ${args.join(' ')} failed`, { cause: error });
}
