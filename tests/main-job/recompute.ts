import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/**
 * Runs recompute.R on both fleets where R is present, and says whether its results are those that are kept. They are written over those.
 *
 * Usage: npx tsx tests/main-job/recompute.ts
 */
const folder = fileURLToPath(new URL('.', import.meta.url));
const FLEETS = ['fleet-a', 'fleet-b'];
const RESULTS = ['expected.json', 'expected-days.csv'];

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
for (const fleet of FLEETS) {
  const files = RESULTS.map((name) => new URL(`./${fleet}/${name}`, import.meta.url));
  const before = files.map(textOf);
  run('Rscript', ['recompute.R', fleet]);
  run('npx', ['biome', 'format', '--write', '--log-level=error', `${fleet}/expected.json`]);
  for (const [index, file] of files.entries()) {
    const same = before[index] === textOf(file);
    changed ||= !same;
    console.log(
      `${fleet}/${RESULTS[index]}: ${same ? 'as kept' : 'differs from what was kept; written anew'}`,
    );
  }
}
process.exitCode = changed ? 1 : 0;

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
