import { writeFileSync } from 'node:fs';
import { constants, setPriority } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import {
  type DriftOperatingCharacteristics,
  driftOperatingCharacteristicsSchema,
} from '../../pipeline/findings/drift/operating-characteristics.ts';
import { VERSION } from '../../pipeline/version.ts';
import { runLengths } from './drift-run-lengths.ts';
import type { SiteResult } from './drift-run-site.ts';
import { DRIFT_SCENARIOS } from './drift-scenarios.ts';
import { summariseDrift } from './drift-summarise.ts';
import { runInProcesses } from './run-in-processes.ts';

/**
 * Measures how good the drift watch is: simulates sites with and without drift, runs the watch every day, as a scheduler would, and counts. Seeds from 4001 on; the thresholds
 * (`EVIDENCE`, `VALUES_TO_STAND`) were set on seeds below 200, and those from 1001 on have served earlier versions. With --write the result is kept for the methods page of every review. About a minute a site of six units and core; after the given minutes no more sites are begun, and what there is counts.
 *
 * Usage: npm run calibrate:drift -- [--sites 20] [--scenario NAME] [--stride 1] [--minutes 600] [--write]
 */
const FIRST_SEED = 4001;
/** Scenarios that goals hang on: their sites come first. */
const GOALS: ReadonlySet<string> = new Set(['no drift', 'drift']);
const { values } = parseArgs({
  options: {
    sites: { type: 'string', default: '20' },
    scenario: { type: 'string' },
    stride: { type: 'string', default: '1' },
    minutes: { type: 'string', default: '600' },
    write: { type: 'boolean', default: false },
  },
});
const [sites, stride] = [Number(values.sites), Number(values.stride)];
const chosen = DRIFT_SCENARIOS.map((scenario, index) => ({ scenario, index })).filter(
  ({ scenario }) => values.scenario === undefined || scenario.name === values.scenario,
);
if (chosen.length === 0 || !(sites >= 1) || !(stride >= 1)) {
  const names = DRIFT_SCENARIOS.map((of) => of.name).join(', ');
  throw new Error(`sites and stride must be 1 or more, and the scenario one of: ${names}`);
}
setPriority(constants.priority.PRIORITY_BELOW_NORMAL);
// The other scenarios in proportion to their shares, so that a run that is bounded in time has some of each.
const jobs = Array.from({ length: sites }, (_, at) =>
  chosen
    .filter(({ scenario }) => at < Math.ceil(scenario.share * sites))
    .map(({ scenario, index }) => ({
      scenario: index,
      seed: FIRST_SEED + at,
      stride,
      turn: GOALS.has(scenario.name) ? 0 : (at + 1) / scenario.share,
    })),
)
  .flat()
  .sort((a, b) => a.turn - b.turn);
const results = DRIFT_SCENARIOS.map((): SiteResult[] => []);

const end = Date.now() + 60_000 * Number(values.minutes);
await runInProcesses<(typeof jobs)[number], { scenario: number; result: SiteResult }>({
  worker: new URL('./drift-worker.ts', import.meta.url),
  jobs,
  take: ({ scenario, result }) => results[scenario]!.push(result),
  what: 'sites',
  goOn: () => Date.now() < end,
});

const scenarios = chosen
  .filter(({ index }) => results[index]!.length > 0)
  .map(({ scenario, index }) => summariseDrift(scenario, results[index]!));
type Summary = (typeof scenarios)[number];
const percent = (of: Summary['found']) =>
  of === null
    ? '-'
    : `${of.count} of ${of.of}, ${((100 * of.count) / of.of).toFixed(1)} % (${(100 * of.low).toFixed(1)} to ${(100 * of.high).toFixed(1)})`;
const middle = (of: Summary['lead_days']) =>
  of === null ? '-' : `${of.median.toFixed(2)} (${of.low?.toFixed(2)} to ${of.high?.toFixed(2)})`;
for (const of of scenarios) {
  const { false_calls: calls } = of;
  console.log(`\n${of.scenario} (${of.sites} sites): ${of.says}`);
  console.log(
    `  false calls per unit-year:        ${calls.per_unit_year.toFixed(3)} (${calls.low.toFixed(3)} to ${calls.high.toFixed(3)}), ${calls.count} in ${of.unit_years.toFixed(0)}; ${JSON.stringify(of.false_by_probe)}`,
  );
  console.log(`  drifts found before the failure:  ${percent(of.found)}`);
  console.log(`  median lead, share of the drift:  ${middle(of.lead_share)}`);
  console.log(`  median first attention, share:    ${middle(of.attention_share)}`);
  console.log(`  median lead, days:                ${middle(of.lead_days)}`);
  console.log(`  steps called a movement:          ${percent(of.steps_called_slopes)}`);
  console.log(`  steps named as such:              ${percent(of.steps_named)}`);
  console.log(`  days to the limit, first call:    ${percent(of.first_intervals)}`);
  console.log(`  days to the limit, later:         ${percent(of.later_intervals)}`);
  console.log(`  saw-teeth named:                  ${percent(of.teeth_named)}`);
  console.log(`  saw-teeth where there are none:   ${percent(of.teeth_invented)}`);
}
const lengths = runLengths();
console.log('\nValues to a false signal of a chart');
for (const of of lengths)
  console.log(
    `  ${of.chart} ${of.noise}, autocorrelation ${of.autocorrelation}: ${of.mean} (${of.low} to ${of.high})`,
  );
if (values.write) {
  const kept: DriftOperatingCharacteristics = {
    version: VERSION,
    made: new Date().toISOString().slice(0, 10),
    first_seed: FIRST_SEED,
    stride,
    scenarios,
    run_lengths: lengths,
  };
  const file = new URL('../../pipeline/findings/drift/operating-characteristics.json', import.meta.url);
  writeFileSync(file, `${JSON.stringify(driftOperatingCharacteristicsSchema.parse(kept), null, 2)}\n`);
  console.log(`\nWritten to ${fileURLToPath(file)}`);
}
