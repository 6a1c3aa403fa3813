import { describe, expect, it } from 'vitest';
import { cusumLimitForRunLength } from '../../../pipeline/statistics/run-length/cusum-limit.ts';
import { cusumRunLength } from '../../../pipeline/statistics/run-length/cusum-run-length.ts';
import { ewmaLimitForRunLength } from '../../../pipeline/statistics/run-length/ewma-limit.ts';
import { ewmaRunLength } from '../../../pipeline/statistics/run-length/ewma-run-length.ts';
import { limitForFalseAlarms } from '../../../pipeline/statistics/run-length/limit-for-false-alarms.ts';
import { simulateRunLength } from '../../../pipeline/statistics/run-length/simulate-run-length.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

describe('EWMA limit for a run length', () => {
  // Lucas and Saccucci, Technometrics 32 (1990) 1-12: designs with run length 500, L to three decimals.
  it.each([
    [0.5, 3.071],
    [0.25, 2.998],
    [0.1, 2.814],
    [0.05, 2.615],
    [0.03, 2.437],
  ])('lambda %f has the published L %f', (lambda, published) => {
    const limit = computedOrFail(
      ewmaLimitForRunLength({ lambda, runLength: 500, limits: 'asymptotic' }),
    ).limit;
    expect(Math.abs(limit - published)).toBeLessThan(0.001);
  });

  it('gives back the run length asked for, under autocorrelation too', () => {
    for (const autocorrelation of [-0.4, 0, 0.5, 0.8]) {
      const found = computedOrFail(ewmaLimitForRunLength({ lambda: 0.2, runLength: 365, autocorrelation }));
      const back = computedOrFail(ewmaRunLength({ lambda: 0.2, limit: found.limit, autocorrelation }));
      expect(back.average / 365).toBeCloseTo(1, 5);
      expect(found.median).toBe(back.median);
    }
  });

  it('holds its promise in simulation (four standard errors)', () => {
    const { limit } = computedOrFail(
      ewmaLimitForRunLength({ lambda: 0.2, runLength: 200, autocorrelation: 0.4 }),
    );
    const simulated = computedOrFail(
      simulateRunLength({
        chart: { kind: 'ewma', lambda: 0.2 },
        limit,
        autocorrelation: 0.4,
        runs: 10_000,
        seed: 8,
      }),
    );
    expect(Math.abs(simulated.average - 200)).toBeLessThan(4 * simulated.standardError);
  });

  it('refuses a run length out of reach', () => {
    expect(() => ewmaLimitForRunLength({ lambda: 0.2, runLength: 5 })).toThrow(RangeError);
    expect(() => cusumLimitForRunLength({ allowance: 0.5, runLength: 2e6 })).toThrow(RangeError);
  });
});

describe('CUSUM limit for a run length', () => {
  it('gives back the run length asked for', () => {
    for (const autocorrelation of [0, 0.5]) {
      const { limit } = computedOrFail(
        cusumLimitForRunLength({ allowance: 0.5, runLength: 500, autocorrelation }),
      );
      const back = computedOrFail(cusumRunLength({ allowance: 0.5, decision: limit, autocorrelation }));
      expect(back.average / 500).toBeCloseTo(1, 5);
    }
  });

  // reference/run-lengths.R, R 4.2.2, spc 0.6.7: xcusum.crit(0.5, 500, sided = "two").
  it('has the h of the R package spc', () => {
    const { limit } = computedOrFail(cusumLimitForRunLength({ allowance: 0.5, runLength: 500 }));
    expect(limit).toBeCloseTo(5.0707, 4);
  });
});

describe('limit for a probability of false alarm', () => {
  it('is the exact limit for one value (a normal quantile inside its interval)', () => {
    const found = computedOrFail(
      limitForFalseAlarms({
        chart: { kind: 'ewma', lambda: 1 },
        values: 1,
        probability: 0.05,
        runs: 20_000,
        seed: 4,
      }),
    );
    expect(found.interval.low).toBeLessThan(1.959964);
    expect(found.interval.high).toBeGreaterThan(1.959964);
  });

  it('agrees with the run length where centre and sigma are known: about 1 - exp(-values/average)', () => {
    const known = computedOrFail(
      ewmaLimitForRunLength({ lambda: 0.2, runLength: 500, autocorrelation: 0.3 }),
    );
    const found = computedOrFail(
      limitForFalseAlarms({
        chart: { kind: 'ewma', lambda: 0.2 },
        values: known.median,
        probability: 0.5,
        autocorrelation: 0.3,
        seed: 6,
      }),
    );
    expect(found.interval.low).toBeLessThan(known.limit);
    expect(found.interval.high).toBeGreaterThan(known.limit);
  });

  it('widens for a short baseline, and the more so the shorter it is', () => {
    const limit = (baselineValues?: number) =>
      computedOrFail(
        limitForFalseAlarms({
          chart: { kind: 'cusum', allowance: 0.5 },
          values: 180,
          probability: 0.1,
          autocorrelation: 0.3,
          ...(baselineValues === undefined ? {} : { baselineValues }),
          runs: 2000,
          seed: 9,
        }),
      ).limit;
    expect(limit(30)).toBeGreaterThan(limit(120));
    expect(limit(120)).toBeGreaterThan(limit());
  });

  it('asks for more runs where the tail is too thin, and is the same for the same seed', () => {
    const input = {
      chart: { kind: 'ewma', lambda: 0.2 },
      values: 10,
      probability: 0.001,
      runs: 1000,
      seed: 1,
    } as const;
    expect(reasonOrFail(limitForFalseAlarms(input))).toMatch(/fewer than 10 runs/);
    const settled = { ...input, probability: 0.1 };
    expect(limitForFalseAlarms(settled)).toEqual(limitForFalseAlarms(settled));
  });
});

describe('simulated run length', () => {
  it('says when too many runs end without a signal', () => {
    const outcome = simulateRunLength({
      chart: { kind: 'ewma', lambda: 0.2 },
      limit: 6,
      runs: 50,
      seed: 1,
      longest: 100,
    });
    expect(reasonOrFail(outcome)).toMatch(/50 of 50 runs/);
  });

  it('shortens the median when centre and sigma come from a short baseline', () => {
    const input = {
      chart: { kind: 'ewma', lambda: 0.2 },
      limit: 2.8945,
      autocorrelation: 0.3,
      runs: 2000,
      seed: 3,
    } as const;
    const known = computedOrFail(simulateRunLength(input));
    const estimated = computedOrFail(simulateRunLength({ ...input, baselineValues: 60, longest: 20_000 }));
    expect(known.median).toBeGreaterThan(300);
    expect(estimated.median).toBeLessThan(250);
  });
});
