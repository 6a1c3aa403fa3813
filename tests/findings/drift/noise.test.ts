import { describe, expect, it } from 'vitest';
import { residuals, slowAutocorrelation } from '../../../pipeline/findings/drift/noise.ts';
import { dice } from '../../calibration/drift-simulate-site.ts';

/** First-order autoregression of standard deviation 1 from its stationary state, as the values of days. */
function days(n: number, keep: number, seed: number, next: 'normal' | 'heavy' = 'normal') {
  const draw = dice(seed);
  let y = draw[next]();
  return Array.from({ length: n }, (_, day) => {
    if (day > 0) y = keep * y + Math.sqrt(1 - keep * keep) * draw[next]();
    return { day, at: day, y, weight: 1 };
  });
}
const seeds = Array.from({ length: 300 }, (_, i) => i + 1);
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('the noise of a series', () => {
  // The simulated values have standard deviation 1, of two estimates the larger is taken; the mean of 300 estimates from 60 values is known to about 0.01.
  it.each([
    ['normal', 0.97, 1.05],
    // Those far off are drawn in, which takes off a little. The median absolute deviation alone would say 0.83 (quartile of Student’s t, 5 degrees: 0.7267).
    ['heavy', 0.91, 1.03],
  ] as const)('is what it is, in %s noise', (noise, low, high) => {
    const found = mean(seeds.map((seed) => residuals(days(60, 0, seed, noise), 1e-9).spread));
    expect(found).toBeGreaterThan(low);
    expect(found).toBeLessThan(high);
  });

  // The autocorrelation of a first-order autoregression is the share that it keeps.
  it.each([0, 0.3, 0.5])('keeps from day to day what it keeps (%d), also in short series', (keep) => {
    const parts = seeds.map((seed) => residuals(days(60, keep, seed), 1e-9));
    expect(Math.abs(slowAutocorrelation(parts) - keep)).toBeLessThan(0.1);
  });

  it('is the floor where there is nothing', () => {
    expect(residuals([], 0.5)).toMatchObject({ spread: 0.5, values: 0, rest: [] });
    expect(residuals([], 0.5).products.every((value) => value === 0)).toBe(true);
  });
});
