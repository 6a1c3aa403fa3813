import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { settings } from '../../pipeline/bundle/settings.mjs';
import { VERSION } from '../../pipeline/version.ts';
import { makeExports } from './make-exports.ts';

/**
 * How fast made exports of any size (cycles, and about a quarter as many tests and cleanings) are read, beside bare csv-parse and, where they are at hand, pandas and DuckDB on the same
 * files, each in a process of its own. Prints rows and megabytes a second, peak memory, and the ratio to bare csv-parse: only ratios of one run are worth comparing. With --keep the
 * ratios are added to tests/bench/ratios.csv.
 *
 * PYTHON names another Python; DuckDB is at hand after `npm install --no-save @duckdb/node-api`.
 *
 * Usage: npm run bench:large -- [--cycles 200000] [--units 12] [--threads 2] [--keep]
 */
const { values } = parseArgs({
  options: {
    cycles: { type: 'string', default: '200000' },
    units: { type: 'string', default: '12' },
    threads: { type: 'string', default: '2' },
    keep: { type: 'boolean', default: false },
  },
});
const [cycles, units, threads] = [Number(values.cycles), Number(values.units), Number(values.threads)];
if (![cycles, units, threads].every((number) => Number.isInteger(number) && number >= 1))
  throw new Error('cycles, units and threads must be whole numbers from 1');
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
const history = join(folder, 'history');
// Measured as users run it: bundled.
await build(settings);
await build({
  ...settings,
  entryPoints: {
    reading: 'pipeline/commands/read-inputs.ts',
    inputs: 'pipeline/commands/find-inputs.ts',
    engine: 'pipeline/commands/engine-settings.ts',
    'join-large': 'tests/bench/join-large.ts',
    'join-thread': 'tests/bench/join-thread.ts',
    receipts: 'pipeline/commands/site-by-site/read-site-by-site.ts',
  },
  splitting: false,
});
const began = performance.now();
makeExports(folder, cycles, units);
const FILES = readdirSync(folder)
  .filter((name) => name.endsWith('.csv'))
  .map((name) => join(folder, name));
const bytes = FILES.reduce((sum, file) => sum + statSync(file).size, 0);
console.log(
  `${cycles} cycles of ${units} units, ${(bytes / 1e6).toFixed(1)} MB, made in ${((performance.now() - began) / 1000).toFixed(1)} s`,
);

const RUNNER = fileURLToPath(new URL('./read-large.mjs', import.meta.url));
const LIST = join(folder, 'list.txt');
writeFileSync(LIST, FILES.join('\n'));
const PANDAS = `import pandas as pd, resource
dates = lambda f: ["start", "end"] if "/log-" in f else ["time"]
n = sum(len(pd.read_csv(f, parse_dates=dates(f))) for f in open("${LIST}").read().split("\\n"))
print(n, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)`;
const runs: [string, string, string[]][] = [
  ['bare csv-parse, streaming', process.execPath, [RUNNER, 'parse', LIST]],
  ['read and validated, one thread', process.execPath, [RUNNER, 'read', folder, '1', 'none']],
  [
    `read and validated, ${threads} threads`,
    process.execPath,
    [RUNNER, 'read', folder, String(threads), 'none'],
  ],
  [
    `read, validated and joined, ${threads} threads`,
    process.execPath,
    [RUNNER, 'join', folder, String(threads), `${history}-3`],
  ],
  ['read and kept as columns too', process.execPath, [RUNNER, 'read', folder, String(threads), history]],
  ['the next time, nothing new', process.execPath, [RUNNER, 'read', folder, String(threads), history]],
  [
    'into the history alone, site by site',
    process.execPath,
    [RUNNER, 'keep', folder, String(threads), `${history}-2`],
  ],
  ['pandas read_csv, with its dates', process.env.PYTHON ?? 'python3', ['-c', PANDAS]],
  [`DuckDB read_csv, ${threads} threads`, process.execPath, [RUNNER, 'duckdb', folder, String(threads)]],
];
let all: number | undefined;
const measured: { what: string; seconds: number; memory: number | null }[] = [];
for (const [what, command, args] of runs) {
  const start = performance.now();
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  const seconds = (performance.now() - start) / 1000;
  if (error || status !== 0) {
    const absent = error || stderr.includes('ERR_MODULE_NOT_FOUND');
    const reason = absent ? 'not at hand' : (stderr.trim().split('\n').at(-1) ?? '');
    console.log(`${what.padEnd(36)} ${reason}`);
    continue;
  }
  const [rows, kilobytes] = stdout.trim().split(/\s+/).map(Number);
  all ??= rows;
  if (rows === undefined || rows < cycles || rows !== all)
    throw new Error(`${what}: ${rows} rows, expected ${all}`);
  measured.push({ what, seconds, memory: kilobytes === undefined ? null : kilobytes / 1024 });
}
const base = measured[0]!.seconds;
for (const { what, seconds, memory } of measured)
  console.log(
    `${what.padEnd(36)} ${seconds.toFixed(2).padStart(8)} s ${Math.round(all! / seconds)
      .toString()
      .padStart(
        9,
      )} rows/s ${(bytes / 1e6 / seconds).toFixed(1).padStart(7)} MB/s  ${memory === null ? '' : `${Math.round(memory)} MB  `}${(seconds / base).toFixed(2)} x`,
  );
rmSync(folder, { recursive: true, force: true });

if (values.keep) {
  const kept = fileURLToPath(new URL('./ratios.csv', import.meta.url));
  if (!existsSync(kept) || readFileSync(kept, 'utf8') === '')
    writeFileSync(kept, 'version,cycles,threads,what,seconds_over_bare_csv_parse,peak_mb\n');
  for (const { what, seconds, memory } of measured)
    appendFileSync(
      kept,
      `${VERSION},${cycles},${threads},"${what}",${(seconds / base).toFixed(3)},${memory === null ? '' : Math.round(memory)}\n`,
    );
}
