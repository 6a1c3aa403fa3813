import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type Measured, measuredSchema } from '../../pipeline/findings/interval/measured.ts';
import { clopperPearsonInterval } from '../../pipeline/statistics/intervals/clopper-pearson-interval.ts';
import { VERSION } from '../../pipeline/version.ts';
import { runIntervalFleet } from './interval-run.ts';
import { INTERVAL_SCENARIOS } from './interval-scenarios.ts';
import { trueBest } from './interval-simulate.ts';

/**
 * Measures how often the case for a cleaning interval is right: simulates fleets of known shape, scale and costs and puts the code of the case to them. With --write
 * the result is kept for the page of the case.
 *
 * Usage: npm run calibrate:interval -- [--fleets 60] [--scenario NAME] [--write]
 */
const { values } = parseArgs({
  options: {
    fleets: { type: 'string', default: '60' },
    scenario: { type: 'string' },
    write: { type: 'boolean', default: false },
  },
});
const fleets = Number(values.fleets);
const share = (count: number, of: number): string => {
  const interval = clopperPearsonInterval(count, of);
  if (!interval.computable) return '-';
  const percent = (value: number) => (100 * value).toFixed(0);
  return `${percent(count / of)} % (${percent(interval.interval.low)} to ${percent(interval.interval.high)})`;
};
/** A share as it is kept, with its exact interval. */
const kept = (count: number, of: number): Measured['scenarios'][number]['supported'] => {
  const found = clopperPearsonInterval(count, of);
  return {
    count,
    of,
    low: found.computable ? found.interval.low : null,
    high: found.computable ? found.interval.high : null,
  };
};
const scenarios: Measured['scenarios'] = [];
const mean = (list: number[]): string =>
  list.length === 0 ? '-' : (list.reduce((sum, value) => sum + value, 0) / list.length).toFixed(2);

for (const scenario of INTERVAL_SCENARIOS) {
  if (values.scenario !== undefined && scenario.name !== values.scenario) continue;
  const results = Array.from({ length: fleets }, (_, index) => runIntervalFleet(scenario, index + 1));
  const count = (holds: (of: (typeof results)[number]) => boolean | null) =>
    results.filter((of) => holds(of) === true).length;
  const known = results.filter((of) => of.best !== null);
  console.log(`\n${scenario.name} (${fleets} fleets): ${scenario.says}`);
  console.log(
    `  supported ${share(
      count((of) => of.answer === 'supported'),
      fleets,
    )}; not supported ${share(
      count((of) => of.answer === 'not_supported'),
      fleets,
    )}; cannot tell ${share(
      count((of) => of.answer === 'cannot_tell'),
      fleets,
    )}`,
  );
  console.log(
    `  failures ${mean(results.map((of) => of.failures))}, shape ${mean(results.flatMap((of) => of.shape ?? []))} (true ${scenario.shape}), its interval holds the truth ${share(
      count((of) => of.shapeCovered),
      results.filter((of) => of.shapeCovered !== null).length,
    )}`,
  );
  console.log(
    `  true best ${trueBest(scenario).toFixed(1)}, found ${mean(known.map((of) => of.best!))}; in the printed range ${share(
      count((of) => of.inRange),
      known.length,
    )}, width ${mean(known.map((of) => of.rangeWidth!))}; in the range within 5 % alone ${share(
      count((of) => of.inNearRange),
      known.length,
    )}`,
  );
  scenarios.push({
    scenario: scenario.name,
    says: scenario.says,
    shape: scenario.shape,
    failures: results.reduce((sum, of) => sum + of.failures, 0) / fleets,
    supported: kept(
      count((of) => of.answer === 'supported'),
      fleets,
    ),
    shape_held: kept(
      count((of) => of.shapeCovered),
      results.filter((of) => of.shapeCovered !== null).length,
    ),
    range_held: kept(
      count((of) => of.inRange),
      known.length,
    ),
  });
}

if (values.write) {
  const file = new URL('../../pipeline/findings/interval/measured.json', import.meta.url);
  const made = new Date().toISOString().slice(0, 10);
  writeFileSync(
    file,
    `${JSON.stringify(measuredSchema.parse({ version: VERSION, made, scenarios }), null, 2)}\n`,
  );
  console.log(`\nWritten to ${fileURLToPath(file)}`);
}
