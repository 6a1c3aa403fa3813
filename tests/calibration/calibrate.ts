import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { VERSION } from '../../pipeline/version.ts';
import type { FleetResult } from './run-fleet.ts';
import { runInProcesses } from './run-in-processes.ts';
import { SCENARIOS } from './scenarios.ts';
import { type Share, summarise } from './summarise.ts';

/**
 * Measures how often the tool is wrong: simulates fleets of each scenario, runs the code of the review on them and counts. With --write the result is
 * kept for the methods section of every review, and the first fleet of each scenario for the test that holds later versions to it.
 *
 * Usage: npm run calibrate -- [--fleets 300] [--scenario NAME] [--write]
 */
const { values } = parseArgs({
  options: {
    fleets: { type: 'string', default: '300' },
    scenario: { type: 'string' },
    write: { type: 'boolean', default: false },
  },
});
const fleets = Number(values.fleets);
const chosen = SCENARIOS.map((scenario, index) => ({ scenario, index })).filter(
  ({ scenario }) => values.scenario === undefined || scenario.name === values.scenario,
);
const jobs = chosen.flatMap(({ index }) =>
  Array.from({ length: fleets }, (_, at) => ({ scenario: index, seed: at + 1 })),
);
const results = SCENARIOS.map((): FleetResult[] => []);

await runInProcesses<(typeof jobs)[number], { scenario: number; seed: number; result: FleetResult }>({
  worker: new URL('./worker.ts', import.meta.url),
  jobs,
  take: ({ scenario, seed, result }) => {
    results[scenario]![seed - 1] = result;
  },
  what: 'fleets',
});

const summaries = chosen.map(({ scenario, index }) => summarise(scenario, results[index]!));
const percent = (share: Share | null) =>
  share === null
    ? '-'
    : `${(100 * share.share).toFixed(1)} % (${(100 * share.low).toFixed(1)} to ${(100 * share.high).toFixed(1)})`;
for (const of of summaries) {
  console.log(`\n${of.scenario} (${of.fleets} fleets): ${of.says}`);
  console.log(`  fleets with a false "shown":            ${percent(of.false_shown)}`);
  console.log(`  ... or a false "suggested":             ${percent(of.false_shown_or_suggested)}`);
  console.log(`  affected units shown:                   ${percent(of.units_shown)}`);
  console.log(`  affected units shown or suggested:      ${percent(of.units_shown_or_suggested)}`);
  console.log(`  fleet comparison shown:                 ${percent(of.fleet_shown)}`);
  console.log(`  wrong exposure shown:                   ${percent(of.wrong_exposure_shown)}`);
  console.log(`  95 % intervals of units, exact:         ${percent(of.coverage)}`);
  console.log(`  95 % intervals of the fleet:            ${percent(of.fleet_coverage)}`);
  console.log(
    `  verdicts: ${Object.entries(of.verdicts)
      .map(([name, part]) => `${name} ${(100 * part).toFixed(1)} %`)
      .join(', ')}`,
  );
}
if (values.write) {
  const file = new URL('../../pipeline/findings/operating-characteristics.json', import.meta.url);
  const made = new Date().toISOString().slice(0, 10);
  writeFileSync(
    file,
    `${JSON.stringify({ version: VERSION, made, fleets, scenarios: summaries }, null, 2)}\n`,
  );
  const first = chosen.map(({ scenario, index }) => [scenario.name, results[index]![0]]);
  writeFileSync(
    new URL('./first-fleets.json', import.meta.url),
    `${JSON.stringify(Object.fromEntries(first), null, 2)}\n`,
  );
  console.log(`\nWritten to ${fileURLToPath(file)}`);
}
