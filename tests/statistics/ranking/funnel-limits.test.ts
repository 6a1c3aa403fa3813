import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialTail } from '../../../pipeline/statistics/distributions/beta.ts';
import { funnelLimits } from '../../../pipeline/statistics/ranking/funnel-limits.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';

describe('funnelLimits', () => {
  // Definition of Spiegelhalter, Statistics in Medicine 24 (2005) 1185-1202, Appendix A.1.1, target 0.1;
  // values computed from it with R 4.2.2 (qbinom, pbinom, dbinom): no printed table is known. At 50 trials
  // the lower 99.8 % limit is -0.0161 before it is clipped.
  it.each([
    [50, 0.01386292696, 0.1797227276, 0, 0.2401284188],
    [100, 0.04038059552, 0.1577186116, 0.01417886501, 0.1983567185],
    [200, 0.05769072202, 0.1409717144, 0.0378515074, 0.1685672639],
    [500, 0.07344752831, 0.1260148989, 0.05998868655, 0.142689313],
  ])('target 0.1, %i trials', (n, low95, high95, low998, high998) => {
    const two = value(funnelLimits(0.1, n, { kind: 'proportion' }));
    const three = value(funnelLimits(0.1, n, { kind: 'proportion', tail: 0.001 }));
    expectNear(two.low, low95, 1e-8);
    expectNear(two.high, high95, 1e-8);
    expectNear(three.low, low998, 1e-8);
    expectNear(three.high, high998, 1e-8);
  });
  // R 4.2.2, same definition with qpois, ppois, dpois.
  it.each([
    [50, 0.01084131591, 0.1875311718],
    [500, 0.072243447, 0.1276609834],
  ])('rate 0.1 over an exposure of %i', (exposure, low, high) => {
    const limits = value(funnelLimits(0.1, exposure, { kind: 'rate' }));
    expectNear(limits.low, low, 1e-8);
    expectNear(limits.high, high, 1e-8);
  });
});

describe('properties', () => {
  const designs = fc.record({
    target: fc.double({ min: 0.001, max: 0.999, noNaN: true }),
    n: fc.integer({ min: 1, max: 100_000 }),
    tail: fc.double({ min: 0.0005, max: 0.2, noNaN: true }),
  });
  it('the count under the limit has at most the tail, the next one more', () => {
    holds(
      fc.property(designs, ({ target, n, tail }) => {
        const { low } = value(funnelLimits(target, n, { kind: 'proportion', tail }));
        if (low > 0) {
          const r = Math.ceil(low * n - 1e-6);
          expect(binomialTail(r - 1, n, target, 'lower')).toBeLessThan(tail * (1 + 1e-6));
          expect(binomialTail(r, n, target, 'lower')).toBeGreaterThanOrEqual(tail * (1 - 1e-6));
        }
      }),
    );
  });
  it('events and non-events mirror: the limits of 1 - target are 1 minus those of the target, less one count of interpolation', () => {
    holds(
      fc.property(designs, ({ target, n, tail }) => {
        const a = value(funnelLimits(target, n, { kind: 'proportion', tail }));
        const b = value(funnelLimits(1 - target, n, { kind: 'proportion', tail }));
        // The definition interpolates down from a count on both sides, so a mirrored limit may lie up to one
        // count off.
        expect(Math.abs(a.low - (1 - b.high))).toBeLessThanOrEqual(1 / n + 1e-9);
        expect(a.low).toBeLessThanOrEqual(target);
        expect(a.high).toBeGreaterThanOrEqual(target - 1 / n);
      }),
    );
  });
});

describe('edges', () => {
  it('states what it cannot compute', () => {
    expect(funnelLimits(0.1, 0, { kind: 'proportion' })).toMatchObject({
      computable: false,
      reason: 'The size is 0.',
    });
    expect(funnelLimits(0, 10, { kind: 'rate' })).toMatchObject({ computable: false });
    expect(funnelLimits(1, 10, { kind: 'proportion' })).toMatchObject({ computable: false });
    expect(funnelLimits(1, 10, { kind: 'rate' }).computable).toBe(true);
  });
  it('a million', () => {
    const { low, high } = value(funnelLimits(0.01, 1_000_000, { kind: 'proportion' }));
    expect(low).toBeCloseTo(0.01 - 1.96 * Math.sqrt(0.0099 / 1e6), 5);
    expect(high).toBeCloseTo(0.01 + 1.96 * Math.sqrt(0.0099 / 1e6), 5);
  });
  it('refuses what cannot be', () => {
    expect(() => funnelLimits(1.2, 10, { kind: 'proportion' })).toThrow('target');
    expect(() => funnelLimits(0.2, 10.5, { kind: 'proportion' })).toThrow('size');
    expect(() => funnelLimits(0.2, 10, { kind: 'proportion', tail: 0.5 })).toThrow('tail');
  });
});
