import { describe, expect, it } from 'vitest';
import { runIntervalFleet } from '../../calibration/interval-run.ts';
import { INTERVAL_SCENARIOS } from '../../calibration/interval-scenarios.ts';
import { trueBest } from '../../calibration/interval-simulate.ts';

const scenario = (name: string) => INTERVAL_SCENARIOS.find((of) => of.name === name)!;

/** A few fleets of each kind; `npm run calibrate:interval` measures on many. */
describe('simulated fleets', () => {
  it.each(['shape 1', 'shape 1, bad spells', 'shape 1, partly reactive'])('%s: not supported', (name) => {
    for (const seed of [1, 2])
      expect(runIntervalFleet(scenario(name), seed).answer, `seed ${seed}`).toBe('not_supported');
  });

  it.each(['shape 2', 'shape 2, one site'])('%s: supported, the true best interval in the range', (name) => {
    for (const seed of [1, 2]) {
      const result = runIntervalFleet(scenario(name), seed);
      expect(result.answer, `seed ${seed}`).toBe('supported');
      expect(result.inRange, `seed ${seed}`).toBe(true);
      expect(result.rangeWidth).toBeLessThan(30);
    }
  });

  it('have the true best interval of Barlow and Hunter', () => {
    // T^2 = cp / (cf rate) with rate 0.5 / 28^2 and cf = 4 cp: 28 / sqrt(2).
    expect(trueBest(scenario('shape 2'))).toBeCloseTo(28 / Math.sqrt(2), 10);
    expect(trueBest(scenario('shape 1'))).toBe(42);
  });
});
