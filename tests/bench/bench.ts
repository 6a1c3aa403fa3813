import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import { comparisonFamily } from '../../pipeline/findings/comparisons/comparison-family.ts';
import { countedUnit } from '../../pipeline/findings/comparisons/mostly-reactive.ts';
import { stratify } from '../../pipeline/findings/comparisons/strata.ts';
import { stratifiedRatio } from '../../pipeline/findings/comparisons/stratified-ratio.ts';
import { reviewPeriod, spanOfRecords } from '../../pipeline/findings/period.ts';
import { makeReview } from '../../pipeline/findings/review.ts';
import { EXPOSURES, OUTCOMES } from '../../pipeline/findings/review-schema.ts';
import { groupBy } from '../../pipeline/group-by.ts';
import { readExports } from '../../pipeline/ingest/read-exports.ts';
import { rowsOfUnits } from '../../pipeline/rows-of-units.ts';
import { readSiteFile } from '../../pipeline/site/read-site-file.ts';
import { circularShiftTest } from '../../pipeline/statistics/permutation/circular-shift-test.ts';
import { transform } from '../../pipeline/transform/transform.ts';
import { SCENARIOS } from '../calibration/scenarios.ts';
import { simulateFleet } from '../calibration/simulate-fleet.ts';

/**
 * Where the time goes, on the demo data and on a simulated fleet of 12 units and two years. Figures of one run are to be compared with each other only:
 * machines differ. Prints a table; fails on nothing.
 */
const folder = fileURLToPath(new URL('../../data-samples', import.meta.url));
const rows: [string, number, string][] = [];
async function timed<T>(
  what: string,
  work: () => T | Promise<T>,
  note: (result: T) => string = () => '',
): Promise<T> {
  const began = performance.now();
  const result = await work();
  rows.push([what, performance.now() - began, note(result)]);
  return result;
}

const site = readSiteFile(readFileSync(join(folder, 'site.yaml'), 'utf8'), 'site.yaml');
const reading = await timed(
  'read the demo exports',
  () => readExports(site, folder),
  (of) => `${of.files.reduce((sum, file) => sum + file.rows, 0)} rows`,
);
const csv = reading.files.filter((file) => file.sheet === null).map((file) => join(folder, file.file));
await timed(
  'the same CSV files through bare csv-parse',
  () =>
    csv.reduce(
      (sum, file) =>
        sum +
        parse(readFileSync(file), {
          bom: true,
          relax_column_count: true,
          delimiter: [',', ';'],
          relax_quotes: true,
        }).length,
      0,
    ),
  (of) => `${of} rows`,
);
const period = reviewPeriod(undefined, spanOfRecords(site, reading.records));
const transformed = await timed(
  'transform',
  () => transform(site, reading.records, period.until),
  (of) => `${of.panel.length} unit-days`,
);
const review = await timed(
  'findings',
  () => makeReview({ site, reading, transformed, period, version: '0' }),
  (of) => `${of.comparisons.length} comparisons`,
);
await timed(
  'report',
  async () => {
    const { writeReport } = await import('../../pipeline/report/report.ts');
    const dueOf = rowsOfUnits(transformed.histories.flatMap((history) => history.cleaning.due));
    return writeReport({ review, panel: transformed.panel, dueOf, problems: reading.problems });
  },
  (of) => `${of.length} files`,
);

const fleet = simulateFleet(SCENARIOS[0]!, 1);
const simulated = transform(fleet.site, fleet.records, fleet.until);
await timed(
  'all comparisons of 12 units and two years',
  () => comparisonFamily(simulated.panel, simulated.histories.map(countedUnit), fleet.site.rules),
  (of) => `${of.size} with a p`,
);
const { comparison } = fleet.site.rules;
const units = [...groupBy(simulated.panel, (row) => row.unit).values()];
const questions = EXPOSURES.flatMap((exposure) =>
  [...OUTCOMES, 'unrelated_abort' as const].flatMap((outcome) =>
    [simulated.panel, ...units].map((rows, at) => ({
      scope: at === 0 ? ('fleet' as const) : ('unit' as const),
      outcome,
      exposure,
      rows,
    })),
  ),
);
const stratified = await timed('  of these, sorting days into strata', () =>
  questions.map((of) => ({ ...of, strata: stratify(of.rows, of.exposure, of.outcome, 'site').strata })),
);
await timed('  ratios and exact intervals', () =>
  stratified.map((of) => stratifiedRatio(of.strata, of.outcome, of.scope, comparison.level)),
);
await timed('  circular shifts', () =>
  stratified.map((of) =>
    circularShiftTest(
      of.strata.map((stratum) => stratum.series),
      {
        design: of.outcome === 'failed_test' ? 'events-of-trials' : 'events-over-time',
        maxShifts: comparison.shifts,
        seed: comparison.seed,
      },
    ),
  ),
);

const scratch = mkdtempSync(join(tmpdir(), 'bench-'));
const bin = fileURLToPath(new URL('../../pipeline/commands/bin.mjs', import.meta.url));
const whole = await timed(
  'the whole demo review as a command, from cold',
  () =>
    spawnSync(
      process.execPath,
      [
        '-e',
        `process.on('exit',()=>console.error('peak',process.resourceUsage().maxRSS));process.argv=['node','${bin}','review','${folder}','--out','${scratch}'];await import('${bin}')`,
        '--input-type=module',
      ],
      { encoding: 'utf8' },
    ),
  (of) => `peak ${Math.round(Number(/peak (\d+)/.exec(of.stderr)?.[1]) / 1024)} MB`,
);
rmSync(scratch, { recursive: true, force: true });
if (whole.status !== 0) console.error(whole.stderr);
for (const [what, ms, note] of rows)
  console.log(`${what.padEnd(56)} ${ms.toFixed(0).padStart(7)} ms  ${note}`);
