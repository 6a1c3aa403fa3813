import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mantelHaenszelOddsRatio } from '../../../pipeline/statistics/stratified/mantel-haenszel-odds-ratio.ts';
import { mantelHaenszelRateRatio } from '../../../pipeline/statistics/stratified/mantel-haenszel-rate-ratio.ts';
import { oddsRatioHomogeneity } from '../../../pipeline/statistics/stratified/odds-ratio-homogeneity.ts';
import { rateRatioHomogeneity } from '../../../pipeline/statistics/stratified/rate-ratio-homogeneity.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';
import { cells, doctors, penicillin, tolbutamide } from './examples.ts';

describe('mantelHaenszelOddsRatio', () => {
  it('tolbutamide: printed 1.4031 (0.8411, 2.3409) at 90 %, chi-square 1.1914, p 0.2750', () => {
    // Print: metafor's test file for Rothman et al. (2008) Table 15-1; ten digits R 4.2.2 and statsmodels
    // 0.13.5.
    const at90 = value(mantelHaenszelOddsRatio(tolbutamide, { level: 0.9 }));
    expect(at90.estimate).toBeCloseTo(1.4031, 4);
    expect(at90.interval!.low).toBeCloseTo(0.8411, 4);
    expect(at90.interval!.high).toBeCloseTo(2.3409, 4);
    expectNear(at90.estimate, 1.403148543, 1e-9);
    expectNear(at90.logStandardError!, 0.3111544671, 1e-9);
    expectNear(at90.interval!.low, 0.8410662199, 1e-9);
    expectNear(at90.interval!.high, 2.340868993, 1e-9);
    expectNear(at90.chiSquare, 1.191400187, 1e-8);
    expectNear(at90.pValue, 0.2750473038, 1e-8);
    const at95 = value(mantelHaenszelOddsRatio(tolbutamide));
    expectNear(at95.interval!.low, 0.7625151681, 1e-9);
    expectNear(at95.interval!.high, 2.582015306, 1e-9);
    const corrected = value(mantelHaenszelOddsRatio(tolbutamide, { continuityCorrection: 'half' }));
    expectNear(corrected.chiSquare, 0.8796663488, 1e-8);
    expectNear(corrected.pValue, 0.3482930801, 1e-8);
  });
  it('penicillin: two strata say nothing, nothing is divided by zero', () => {
    // R 4.2.2 help page of mantelhaen.test; Agresti (1990) prints 0.047 for the corrected test.
    const result = value(mantelHaenszelOddsRatio(penicillin));
    expectNear(result.estimate, 7, 1e-12);
    expectNear(result.interval!.low, 1.026712688, 1e-9);
    expectNear(result.interval!.high, 47.72513338, 1e-9);
    expectNear(result.chiSquare, 5.657142857, 1e-9);
    expectNear(result.pValue, 0.01738442035, 1e-8);
    expect(result).toMatchObject({ strataUsed: 3, strataGiven: 5 });
    const corrected = value(mantelHaenszelOddsRatio(penicillin, { continuityCorrection: 'half' }));
    expectNear(corrected.chiSquare, 3.928571429, 1e-9);
    expectNear(corrected.pValue, 0.04747225514, 1e-8);
  });
  it('by hand, one table: ad / bc and Woolf variance', () => {
    // With one table the Robins-Breslow-Greenland variance is 1/a + 1/b + 1/c + 1/d.
    const { estimate, logStandardError } = value(mantelHaenszelOddsRatio([cells([12, 30, 5, 41])]));
    expectNear(estimate, (12 * 41) / (30 * 5), 1e-13);
    expectNear(logStandardError!, Math.sqrt(1 / 12 + 1 / 30 + 1 / 5 + 1 / 41), 1e-12);
  });
});

describe('mantelHaenszelRateRatio', () => {
  it('British doctors: printed 1.4247 (1.1944, 1.6994) at 90 %, chi-square 11.0162', () => {
    // Print: metafor's test file for Rothman et al. (2008) Table 15-2; 95 % interval as in Stata's manual;
    // ten digits R 4.2.2.
    const at90 = value(mantelHaenszelRateRatio(doctors, { level: 0.9 }));
    expect(at90.estimate).toBeCloseTo(1.4247, 4);
    expect(at90.chiSquare).toBeCloseTo(11.0162, 4);
    expectNear(at90.estimate, 1.424682017, 1e-9);
    expectNear(at90.logStandardError!, 0.107198596, 1e-9);
    expectNear(at90.interval!.low, 1.194374531, 1e-9);
    expectNear(at90.interval!.high, 1.699398971, 1e-9);
    expectNear(at90.chiSquare, 11.01619475, 1e-9);
    expectNear(at90.pValue, 0.000903192922, 1e-8);
    const at95 = value(mantelHaenszelRateRatio(doctors));
    expect(at95.interval!.low).toBeCloseTo(1.154703, 6);
    expect(at95.interval!.high).toBeCloseTo(1.757784, 6);
    const corrected = value(mantelHaenszelRateRatio(doctors, { continuityCorrection: 'half' }));
    expect(corrected.chiSquare).toBeCloseTo(10.7021, 4);
    expectNear(corrected.chiSquare, 10.70214941, 1e-9);
    expectNear(corrected.pValue, 0.001070111385, 1e-8);
  });
});

describe('homogeneity', () => {
  it('odds ratios: tolbutamide', () => {
    // metafor 3.8-1, rma.mh(measure = "OR"): BD 0.348957041376, TA 0.348944866330, p 0.554711024171.
    const result = value(oddsRatioHomogeneity(tolbutamide));
    expectNear(result.uncorrected, 0.348957041376, 1e-10);
    expectNear(result.chiSquare, 0.34894486633, 1e-10);
    expectNear(result.pValue, 0.554711024171, 1e-10);
    expect(result.degreesOfFreedom).toBe(1);
  });
  it('rate ratios: British doctors, printed 10.41 on 4 degrees of freedom, p 0.0340', () => {
    const result = value(rateRatioHomogeneity(doctors));
    expect(result.chiSquare).toBeCloseTo(10.41, 2);
    expectNear(result.chiSquare, 10.4116594, 1e-8);
    expectNear(result.pValue, 0.0340359, 1e-5);
    expect(result.degreesOfFreedom).toBe(4);
  });
  it('equal strata give 0, strata apart give much', () => {
    const one = cells([10, 90, 5, 95]);
    expect(value(oddsRatioHomogeneity([one, one])).chiSquare).toBeCloseTo(0, 12);
    expect(value(oddsRatioHomogeneity([cells([30, 70, 5, 95]), cells([5, 95, 30, 70])])).pValue).toBeLessThan(
      1e-6,
    );
    for (const statistic of ['inverse-variance', 'score'] as const) {
      expect(value(rateRatioHomogeneity([doctors[0]!, doctors[0]!], { statistic })).chiSquare).toBeCloseTo(
        0,
        12,
      );
    }
  });
  it('the score form uses strata without events in one group, the other leaves them out', () => {
    const withZero = [
      ...doctors,
      { exposedEvents: 3, exposedTime: 900, unexposedEvents: 0, unexposedTime: 700 },
    ];
    expect(value(rateRatioHomogeneity(withZero)).strataUsed).toBe(5);
    expect(value(rateRatioHomogeneity(withZero, { statistic: 'score' })).strataUsed).toBe(6);
  });
  it('says why not', () => {
    expect(oddsRatioHomogeneity([tolbutamide[0]!])).toMatchObject({
      computable: false,
      reason: expect.stringContaining('two strata'),
    });
    expect(oddsRatioHomogeneity([cells([0, 5, 3, 5]), cells([0, 5, 3, 5])])).toMatchObject({
      computable: false,
      reason: expect.stringContaining('0 or infinite'),
    });
    expect(rateRatioHomogeneity([doctors[0]!])).toMatchObject({ computable: false });
  });
});

const table = fc.tuple(fc.nat(50), fc.nat(50), fc.nat(50), fc.nat(50)).map(cells);
describe('properties', () => {
  it('order changes nothing, swapped groups give the reciprocal', () => {
    holds(
      fc.property(fc.array(table, { minLength: 1, maxLength: 8 }), (s) => {
        const a = mantelHaenszelOddsRatio(s);
        const b = mantelHaenszelOddsRatio(
          s.toReversed().map((t) => ({
            exposedEvents: t.unexposedEvents,
            exposedTotal: t.unexposedTotal,
            unexposedEvents: t.exposedEvents,
            unexposedTotal: t.exposedTotal,
          })),
        );
        expect(a.computable).toBe(b.computable);
        if (!a.computable || !b.computable) return;
        expectNear(a.estimate, 1 / b.estimate, 1e-10);
        expect(a.chiSquare).toBeCloseTo(b.chiSquare, 9);
        if (a.interval !== undefined) expectNear(a.interval.low, 1 / b.interval!.high, 1e-10);
      }),
    );
  });
  it('the same table split into equal halves keeps the ratio', () => {
    holds(
      fc.property(table, (t) => {
        const double = {
          exposedEvents: 2 * t.exposedEvents,
          exposedTotal: 2 * t.exposedTotal,
          unexposedEvents: 2 * t.unexposedEvents,
          unexposedTotal: 2 * t.unexposedTotal,
        };
        const [a, b] = [mantelHaenszelOddsRatio([t, t]), mantelHaenszelOddsRatio([double])];
        if (a.computable && b.computable) expectNear(a.estimate, b.estimate, 1e-12);
      }),
    );
  });
});

describe('edges', () => {
  it('states what it cannot compute', () => {
    expect(mantelHaenszelOddsRatio([])).toMatchObject({ computable: false });
    expect(mantelHaenszelRateRatio([])).toMatchObject({ computable: false });
    expect(mantelHaenszelOddsRatio([cells([0, 5, 0, 8])])).toMatchObject({ computable: false });
  });
  it('a ratio of 0 or Infinity has a test and no interval', () => {
    const zero = value(mantelHaenszelOddsRatio([cells([0, 20, 6, 20])]));
    expect(zero).toMatchObject({ estimate: 0, interval: undefined, logStandardError: undefined });
    expect(zero.pValue).toBeLessThan(0.05);
    const endless = value(
      mantelHaenszelRateRatio([{ exposedEvents: 3, exposedTime: 5, unexposedEvents: 0, unexposedTime: 9 }]),
    );
    expect(endless).toMatchObject({ estimate: Number.POSITIVE_INFINITY, interval: undefined });
  });
  it('a million counts', () => {
    // R 4.2.2 mantelhaen.test(correct = FALSE): 1.00396301336, 0.998416193685 to 1.009540649059.
    const result = value(
      mantelHaenszelOddsRatio([
        cells([500_000, 500_000, 499_000, 501_000]),
        cells([300, 999_700, 310, 999_690]),
      ]),
    );
    expectNear(result.estimate, 1.00396301336, 1e-10);
    expectNear(result.interval!.low, 0.998416193685, 1e-10);
    expectNear(result.interval!.high, 1.009540649059, 1e-10);
  });
});
