import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialTail } from '../../../pipeline/statistics/distributions/beta.ts';
import { clopperPearsonInterval } from '../../../pipeline/statistics/intervals/clopper-pearson-interval.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';

describe('clopperPearsonInterval', () => {
  // Newcombe, Statistics in Medicine 17 (1998) 857-872, Table I, method 5 (four decimals, quoted from
  // memory); ten digits from R 4.2.2 binom.test.
  it.each([
    [81, 263, 0.2527, 0.3676, 0.2527367456, 0.3676219226],
    [15, 148, 0.0578, 0.1617, 0.0578440101, 0.1616504904],
    [0, 20, 0, 0.1684, 0, 0.168433471],
    [1, 29, 0.0009, 0.1776, 0.0008726468836, 0.1776442954],
    [29, 29, 0.8806, 1, 0.8805551309, 1], // the mirrored edge: R 4.2.2 alone
  ])('%i of %i', (events, trials, low, high, lowR, highR) => {
    const { interval } = value(clopperPearsonInterval(events, trials));
    expect(Math.abs(interval.low - low)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs(interval.high - high)).toBeLessThanOrEqual(0.00005);
    expectNear(interval.low, lowR, 1e-9);
    expectNear(interval.high, highR, 1e-9);
  });

  const counts = fc
    .integer({ min: 1, max: 1_000_000 })
    .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
  it('has the one-sided binomial test at alpha / 2 on each bound', () => {
    holds(
      fc.property(counts, fc.double({ min: 0.5, max: 0.9999, noNaN: true }), ([x, n], level) => {
        const { interval } = value(clopperPearsonInterval(x, n, level));
        const alpha = (1 - level) / 2;
        if (x > 0) expectNear(binomialTail(x, n, interval.low, 'upper'), alpha, 1e-6);
        if (x < n) expectNear(binomialTail(x, n, interval.high, 'lower'), alpha, 1e-6);
      }),
    );
  });
  it('mirrors when events and non-events swap, and holds the estimate', () => {
    holds(
      fc.property(counts, ([x, n]) => {
        const a = value(clopperPearsonInterval(x, n));
        const b = value(clopperPearsonInterval(n - x, n)).interval;
        expect(a.interval.low).toBeCloseTo(1 - b.high, 10);
        expect(a.interval.high).toBeCloseTo(1 - b.low, 10);
        expect(a.interval.low).toBeLessThanOrEqual(a.estimate);
        expect(a.interval.high).toBeGreaterThanOrEqual(a.estimate);
      }),
    );
  });
  it('closed form at the edges', () => {
    // 0 of n: the upper limit is 1 - (alpha / 2)^(1 / n).
    expectNear(value(clopperPearsonInterval(0, 20)).interval.high, 1 - 0.025 ** (1 / 20), 1e-13);
    expectNear(value(clopperPearsonInterval(1_000_000, 1_000_000)).interval.low, 0.025 ** 1e-6, 1e-13);
  });
  it('states what it cannot compute, and refuses what cannot be', () => {
    expect(clopperPearsonInterval(0, 0)).toMatchObject({ computable: false, reason: 'There are no trials.' });
    expect(() => clopperPearsonInterval(6, 5)).toThrow('events must not exceed trials, found 6 of 5');
    expect(() => clopperPearsonInterval(1, 5, 95)).toThrow('level must lie in (0, 1), found 95');
  });
});
