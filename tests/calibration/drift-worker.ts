import { runSite } from './drift-run-site.ts';
import { DRIFT_SCENARIOS } from './drift-scenarios.ts';

/** One process of the calibration of the drift watch: takes a scenario and seeds, gives one result a seed. */
process.on('message', ({ scenario, seed, stride }: { scenario: number; seed: number; stride: number }) => {
  process.send!({ scenario, seed, result: runSite(DRIFT_SCENARIOS[scenario]!, seed, stride) });
});
