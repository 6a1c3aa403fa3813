import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalTwoSided } from '../../../pipeline/statistics/distributions/normal.ts';
import { wilsonInterval } from '../../../pipeline/statistics/intervals/wilson-interval.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';

describe('wilsonInterval', () => {
  // Newcombe, Statistics in Medicine 17 (1998) 857-872, Table I, method 3 (four decimals, quoted from
  // memory); ten digits from R 4.2.2 prop.test(correct = FALSE). 81/263 as 0.255 to 0.366 also in Altman et
  // al., Statistics with Confidence (2000) p. 47.
  it.each([
    [81, 263, 0.2553, 0.3662, 0.2552885199, 0.366209577],
    [15, 148, 0.0624, 0.1605, 0.0623863995, 0.1604872417],
    [0, 20, 0, 0.1611, 0, 0.1611251581],
    [1, 29, 0.0061, 0.1718, 0.0061132143, 0.1717552188],
    [29, 29, 0.883, 1, 0.8830302015, 1], // the mirrored edge: R 4.2.2 alone
  ])('%i of %i', (events, trials, low, high, lowR, highR) => {
    const { interval, estimate } = value(wilsonInterval(events, trials));
    expect(Math.abs(interval.low - low)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(interval.high - high)).toBeLessThanOrEqual(0.00005);
    expectNear(interval.low, lowR, 2e-8);
    expectNear(interval.high, highR, 2e-9);
    expect(estimate).toBe(events / trials);
  });

  const counts = fc
    .integer({ min: 1, max: 1_000_000 })
    .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
  it('has the score test at alpha on each bound', () => {
    holds(
      fc.property(counts, fc.double({ min: 0.5, max: 0.999, noNaN: true }), ([x, n], level) => {
        const { interval } = value(wilsonInterval(x, n, level));
        for (const [bound, open] of [
          [interval.low, x === 0],
          [interval.high, x === n],
        ] as const) {
          if (open) continue;
          const z = (x - n * bound) / Math.sqrt(n * bound * (1 - bound));
          expect(normalTwoSided(z)).toBeCloseTo(1 - level, 7);
        }
      }),
    );
  });
  it('mirrors when events and non-events swap', () => {
    holds(
      fc.property(counts, ([x, n]) => {
        const a = value(wilsonInterval(x, n)).interval;
        const b = value(wilsonInterval(n - x, n)).interval;
        expect(a.low).toBeCloseTo(1 - b.high, 13);
        expect(a.high).toBeCloseTo(1 - b.low, 13);
      }),
    );
  });
  it('states what it cannot compute, and refuses what cannot be', () => {
    expect(wilsonInterval(0, 0)).toMatchObject({ computable: false, reason: 'There are no trials.' });
    for (const [x, n, level] of [
      [-1, 5, 0.95],
      [6, 5, 0.95],
      [1.5, 5, 0.95],
      [1, 5, 1],
      [1, 5, 0],
      [Number.NaN, 5, 0.95],
    ] as const) {
      expect(() => wilsonInterval(x, n, level)).toThrow(RangeError);
    }
  });
});
