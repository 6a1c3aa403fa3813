import { describe, expect, it } from 'vitest';
import firstFleets from '../../calibration/first-fleets.json' with { type: 'json' };
import { runFleet } from '../../calibration/run-fleet.ts';
import { SCENARIOS } from '../../calibration/scenarios.ts';

/**
 * What the methods page says of the measurement of an earlier version: the first fleet of each kind gives the same verdicts. The kept results were made by the version
 * that was measured (`npm run calibrate -- --write` keeps them anew).
 */
describe('verdicts on simulated fleets', () => {
  it.each(SCENARIOS.map((scenario) => [scenario.name, scenario] as const))(
    '%s: the first fleet has the verdicts of the version that was measured',
    (name, scenario) => {
      expect(runFleet(scenario, 1)).toEqual((firstFleets as Record<string, unknown>)[name]);
    },
  );
});
