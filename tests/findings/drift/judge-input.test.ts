import { describe, expect, it } from 'vitest';
import type { AdjustedSeries } from '../../../pipeline/findings/drift/adjusted-series.ts';
import { judgeInput } from '../../../pipeline/findings/drift/judge-input.ts';
import { residuals } from '../../../pipeline/findings/drift/noise.ts';
import { rulesSchema } from '../../../pipeline/site/rules.ts';
import { dice } from '../../calibration/drift-simulate-site.ts';

/** What is made of a record in whole steps of 1, of values around a level with noise. */
function inputOf(level: number, noise: number) {
  const draw = dice(9);
  const values = Array.from({ length: 400 }, (_, day) => {
    const y = Math.round(level + noise * draw.normal());
    return { day, at: day, y, weight: 1, measured: y };
  });
  const found = residuals(values, 1 / Math.sqrt(12));
  const series = { of: { probe: 'exposure_spread' }, values, memory: 0, resolution: 1, noise: found };
  return judgeInput(
    series as unknown as AdjustedSeries,
    { spread: found.spread, autocorrelation: 0 },
    rulesSchema.parse({}).drift,
  );
}

describe('a record in steps', () => {
  // A value that goes to and fro between two steps has a standard deviation of half a step at most.
  it.each([
    ['stands still', 0, 0.1],
    ['goes to and fro between two', 0.5, 0.1],
  ])('asks for a change of more than a step where it %s', (_, level, noise) => {
    expect(inputOf(level, noise).leastChange).toBe(1.5);
  });

  // Rounding adds a twelfth of a squared step to the variance (Sheppard 1898): 0.85 steps.
  it('asks for none where the noise spans several', () => {
    expect(inputOf(0.3, 0.8).leastChange).toBe(0);
  });
});
