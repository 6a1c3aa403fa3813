import { describe, expect, it } from 'vitest';
import {
  CUSUM_ALLOWANCE,
  chartLimits,
  EWMA_LAMBDA,
  IN_CONTROL_RUN_LENGTH,
} from '../../../pipeline/findings/drift/chart-limits.ts';
import { cusumRunLength } from '../../../pipeline/statistics/run-length/cusum-run-length.ts';
import { ewmaRunLength } from '../../../pipeline/statistics/run-length/ewma-run-length.ts';
import { simulateRunLength } from '../../../pipeline/statistics/run-length/simulate-run-length.ts';
import { computedOrFail } from '../../statistics/computed-or-fail.ts';

describe('limits of the charts', () => {
  it.each([0, 0.4, 0.8])('give the stated run length at autocorrelation %f', (autocorrelation) => {
    const limits = chartLimits(autocorrelation);
    expect(limits.autocorrelation).toBe(autocorrelation);
    const ewma = ewmaRunLength({ lambda: EWMA_LAMBDA, limit: limits.ewma, autocorrelation });
    expect(computedOrFail(ewma).average / IN_CONTROL_RUN_LENGTH).toBeCloseTo(1, 2);
    const cusum = cusumRunLength({ allowance: CUSUM_ALLOWANCE, decision: limits.cusum, autocorrelation });
    expect(computedOrFail(cusum).average / IN_CONTROL_RUN_LENGTH).toBeCloseTo(1, 2);
  });

  // Not by the method that gave the limits: by simulation of autocorrelated values, four standard errors.
  it.each([0.3, 0.6])('hold in simulation at autocorrelation %f', (autocorrelation) => {
    const limits = chartLimits(autocorrelation);
    for (const [chart, limit] of [
      [{ kind: 'ewma', lambda: EWMA_LAMBDA } as const, limits.ewma],
      [{ kind: 'cusum', allowance: CUSUM_ALLOWANCE } as const, limits.cusum],
    ] as const) {
      const { average, standardError } = computedOrFail(
        simulateRunLength({ chart, limit, autocorrelation, runs: 1500, seed: 5 }),
      );
      expect(Math.abs(average - IN_CONTROL_RUN_LENGTH)).toBeLessThan(4 * standardError);
    }
  });

  it('are read at the next tenth above, 0.8 at most', () => {
    expect(chartLimits(0.31).autocorrelation).toBe(0.4);
    expect(chartLimits(0.95).autocorrelation).toBe(0.8);
    expect(chartLimits(-0.2).autocorrelation).toBe(0);
  });
});
