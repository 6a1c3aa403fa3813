import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medianInterval } from '../../../pipeline/statistics/intervals/median-interval.ts';

const upTo = (n: number): number[] => Array.from({ length: n }, (_, at) => at + 1);

describe('interval of a median', () => {
  // Ranks and coverage by hand from the binomial with p = 1/2: n = 10, P(X <= 1) = 11/1024; n = 6, P(X = 0) = 1/64; n = 15, P(X <= 3) = 576/32768.
  it.each([
    [6, 1, 6, 1 - 2 / 64],
    [10, 2, 9, 1 - 22 / 1024],
    [15, 4, 12, 1 - (2 * 576) / 32_768],
  ])('of 1 to %i', (n, low, high, coverage) => {
    const outcome = medianInterval(upTo(n).reverse());
    expect(outcome).toMatchObject({
      computable: true,
      estimate: (n + 1) / 2,
      interval: { low, high, level: 0.95 },
    });
    expect(outcome.computable && outcome.coverage).toBeCloseTo(coverage, 12);
  });

  it('has none of five values, and of none', () => {
    expect(medianInterval(upTo(5))).toMatchObject({
      computable: false,
      reason: '5 values are too few for an interval at level 0.95.',
    });
    expect(medianInterval([])).toMatchObject({ computable: false });
  });

  it('refuses what can’t be', () => {
    expect(() => medianInterval([1, Number.NaN])).toThrow(RangeError);
    expect(() => medianInterval([1], 1)).toThrow(RangeError);
  });

  it('moves and stretches with the values, whatever their order, and leaves them as they are', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 6, maxLength: 60 }),
        (values) => {
          const frozen = Object.freeze([...values]);
          const plain = medianInterval(frozen);
          const moved = medianInterval(values.map((value) => 2 * value + 7).reverse());
          if (!plain.computable || !moved.computable) throw new Error('six values are enough');
          expect(moved.interval.low).toBe(2 * plain.interval.low + 7);
          expect(moved.interval.high).toBe(2 * plain.interval.high + 7);
          expect(plain.interval.low).toBeLessThanOrEqual(plain.estimate);
          expect(plain.coverage).toBeGreaterThanOrEqual(0.95);
        },
      ),
      { seed: 3 },
    );
  });
});
