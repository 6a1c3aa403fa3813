import { describe, expect, it } from 'vitest';
import { autoregressiveSeries, normalStream } from '../../../pipeline/statistics/run-length/normal-stream.ts';
import { autoregressiveFactor } from '../../../pipeline/statistics/trend/autoregressive-factor.ts';
import { hamedRaoFactor } from '../../../pipeline/statistics/trend/hamed-rao-factor.ts';
import { lagOneAutocorrelation } from '../../../pipeline/statistics/trend/lag-one-autocorrelation.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

function meanEstimate(phi: number, slope: number, gapEvery: number, detrend: 'none' | 'theil-sen'): number {
  const newSeries = autoregressiveSeries(normalStream(40), phi);
  let sum = 0;
  const runs = 300;
  for (let run = 0; run < runs; run += 1) {
    const next = newSeries();
    const values = Array.from({ length: 80 }, (_, i) => {
      const value = slope * i + next();
      return gapEvery > 0 && i % gapEvery === 0 ? null : value;
    });
    sum += computedOrFail(lagOneAutocorrelation({ values, detrend })).autocorrelation;
  }
  return sum / runs;
}

describe('lag-one autocorrelation', () => {
  // Mean of 300 estimates from 80 values: standard error about 0.006. Left over bias under 0.03.
  it.each([-0.4, 0, 0.3, 0.6])(
    'is right on average at %f, with or without a line taken out, and with gaps',
    (phi) => {
      expect(Math.abs(meanEstimate(phi, 0, 0, 'none') - phi)).toBeLessThan(0.03);
      expect(Math.abs(meanEstimate(phi, 0.1, 0, 'theil-sen') - phi)).toBeLessThan(0.03);
      expect(Math.abs(meanEstimate(phi, 0.1, 5, 'theil-sen') - phi)).toBeLessThan(0.03);
    },
  );

  it('is hardly moved by an outlier', () => {
    const next = autoregressiveSeries(normalStream(5), 0.5)();
    const values = Array.from({ length: 100 }, next);
    const clean = computedOrFail(lagOneAutocorrelation({ values })).autocorrelation;
    const spoilt = computedOrFail(lagOneAutocorrelation({ values: values.with(50, 1e6) })).autocorrelation;
    expect(Math.abs(clean - spoilt)).toBeLessThan(0.06);
  });

  it('states too few values, too few neighbours and no variation', () => {
    expect(reasonOrFail(lagOneAutocorrelation({ values: [1, 2, 3] }))).toMatch(/too few/);
    const alternate = Array.from({ length: 60 }, (_, i) => (i % 2 ? null : i * i));
    expect(reasonOrFail(lagOneAutocorrelation({ values: alternate }))).toMatch(/follow directly/);
    expect(reasonOrFail(lagOneAutocorrelation({ values: Array(30).fill(2) }))).toMatch(/do not vary/);
    expect(() => lagOneAutocorrelation({ values: [Number.NaN] })).toThrow(RangeError);
  });
});

describe('variance factors for the trend', () => {
  it('AR(1): the closed sum for its own autocorrelation', () => {
    const next = autoregressiveSeries(normalStream(6), 0.5)();
    const { factor, autocorrelation } = computedOrFail(
      autoregressiveFactor({ values: Array.from({ length: 40 }, next) }),
    );
    let sum = 0;
    for (let k = 1; k < 38; k += 1) {
      sum += (40 - k) * (39 - k) * (38 - k) * ((6 / Math.PI) * Math.asin(autocorrelation ** k / 2));
    }
    expect(factor).toBeCloseTo(1 + (2 * sum) / (40 * 39 * 38), 12);
  });

  it('Hamed-Rao: is 1 where no lag is significant, and names the lags where some are', () => {
    const next = autoregressiveSeries(normalStream(7), 0.8)();
    const values = Array.from({ length: 60 }, next);
    const all = computedOrFail(hamedRaoFactor({ values, maxLag: 3 }));
    expect(all.lags).toContain(1);
    expect(all.factor).toBeGreaterThan(1);
    const white = Array.from({ length: 60 }, (_, i) => Math.sin(i * i * 7.3));
    expect(computedOrFail(hamedRaoFactor({ values: white, maxLag: 1 }))).toMatchObject({
      factor: 1,
      lags: [],
    });
  });

  it('Hamed-Rao: states too few values and no variation', () => {
    expect(reasonOrFail(hamedRaoFactor({ values: [1, 2, 3] }))).toMatch(/too few/);
    expect(reasonOrFail(hamedRaoFactor({ values: Array(20).fill(1) }))).toMatch(/do not vary/);
    expect(() => hamedRaoFactor({ values: [1, 2, 3], maxLag: 0 })).toThrow(RangeError);
  });
});
