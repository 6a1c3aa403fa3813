import { runFleet } from './run-fleet.ts';
import { SCENARIOS } from './scenarios.ts';

/** One process of the calibration: takes a scenario and seeds, gives one result a seed. */
process.on('message', ({ scenario, seed }: { scenario: number; seed: number }) => {
  process.send!({ scenario, seed, result: runFleet(SCENARIOS[scenario]!, seed) });
});
