import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ageReplacement } from '../../../pipeline/statistics/replacement/age-replacement.ts';
import { ageReplacementRates } from '../../../pipeline/statistics/replacement/age-replacement-rates.ts';
import { computedOrFail, numbersIn } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

const example = { shape: 2.5, scale: 1000, plannedCost: 1, failureCost: 5 };

describe('age replacement', () => {
  // "Optimum Replacement Time", ReliaWiki, System Analysis Reference, as in the documentation of the Python
  // library reliability ("Optimal replacement time", early version): age 493.05, cost 0.0035. More digits by
  // reference/age-replacement.R, R 4.2.2 (relative 1e-6).
  const found = computedOrFail(ageReplacement(example));
  const optimum = found.optimum!;

  it('has the published optimum (the example of the docstring)', () => {
    expect(optimum.age).toBeCloseTo(493.05, 2);
    expect(optimum.costRate).toBeCloseTo(0.0035, 4);
    expect(Math.abs(optimum.age / 493.0469576 - 1)).toBeLessThan(1e-8);
    expect(Math.abs(optimum.costRate / 0.003462042739 - 1)).toBeLessThan(1e-9);
    expect(Math.abs(found.runToFailureCostRate / 0.00563530249 - 1)).toBeLessThan(1e-9);
    expect(Math.abs(optimum.survival / 0.8430787035 - 1)).toBeLessThan(1e-8);
    expect(optimum.saving).toBeCloseTo(1 - 0.003462042739 / 0.00563530249, 8);
  });

  it('has the range within 5 % of the best cost (reference/age-replacement.R, R 4.2.2)', () => {
    expect(optimum.goodEnough.low / 374.6582725).toBeCloseTo(1, 7);
    expect(optimum.goodEnough.high / 649.387391).toBeCloseTo(1, 7);
  });

  it('meets the condition of Barlow and Hunter: the least cost is (failure - planned) x hazard', () => {
    const hazard = (2.5 / 1000) * (optimum.age / 1000) ** 1.5;
    expect(optimum.costRate).toBeCloseTo(4 * hazard, 12);
  });

  it('states that there is no optimum, with the cost of run to failure', () => {
    const constant = computedOrFail(ageReplacement({ ...example, shape: 1 }));
    expect(constant).toMatchObject({ optimum: null, noOptimum: expect.stringContaining('not above 1') });
    expect(constant.runToFailureCostRate).toBeCloseTo(5 / 1000, 12);
    const cheap = computedOrFail(ageReplacement({ ...example, failureCost: 1 }));
    expect(cheap).toMatchObject({ optimum: null, noOptimum: expect.stringContaining('no more than') });
    const slow = computedOrFail(ageReplacement({ ...example, shape: 1.0001, failureCost: 1.01 }));
    expect(slow).toMatchObject({ optimum: null, noOptimum: expect.stringContaining('so slowly') });
  });

  it('has a range open to the right where run to failure is nearly as good', () => {
    const flat = computedOrFail(ageReplacement({ ...example, shape: 1.3, failureCost: 2 }));
    expect(flat.optimum!.goodEnough.high).toBe(Number.POSITIVE_INFINITY);
  });

  it('refuses impossible input', () => {
    expect(() => ageReplacement({ ...example, shape: 0 })).toThrow(RangeError);
    expect(() => ageReplacement({ ...example, plannedCost: -1 })).toThrow(RangeError);
    expect(() => ageReplacementRates({ shape: 1, scale: 1, age: 0 })).toThrow(RangeError);
  });

  it('is the best age: no other age costs less, and the range is where it says', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    holds(
      fc.property(
        number(1.05, 6),
        number(1, 500),
        number(1.2, 50),
        number(0.2, 5),
        (shape, scale, ratio, factor) => {
          const result = computedOrFail(
            ageReplacement({ shape, scale, plannedCost: 10, failureCost: 10 * ratio }),
          );
          expect(numbersIn(result).some(Number.isNaN)).toBe(false);
          if (result.optimum === null) return;
          const { age, costRate, goodEnough } = result.optimum;
          const costAt = (t: number) => {
            const rates = ageReplacementRates({ shape, scale, age: t });
            return 10 * rates.planned + 10 * ratio * rates.failures;
          };
          expect(costAt(age * factor)).toBeGreaterThanOrEqual(costRate * (1 - 1e-12));
          expect(result.runToFailureCostRate).toBeGreaterThanOrEqual(costRate * (1 - 1e-12));
          expect(costAt(goodEnough.low) / costRate).toBeCloseTo(1.05, 9);
          if (Number.isFinite(goodEnough.high))
            expect(costAt(goodEnough.high) / costRate).toBeCloseTo(1.05, 9);
        },
      ),
    );
  });
});

describe('rates of a replacement policy', () => {
  it('has failures at the constant hazard whatever the age where shape is 1 (and the example of the docstring)', () => {
    for (const age of [1, 10, 100, Number.POSITIVE_INFINITY]) {
      expect(ageReplacementRates({ shape: 1, scale: 10, age }).failures).toBeCloseTo(0.1, 12);
    }
    expect(ageReplacementRates({ shape: 1, scale: 10, age: 10 }).meanCycle).toBeCloseTo(
      10 * (1 - Math.exp(-1)),
      12,
    );
  });

  it('ends every cycle in one way or the other', () => {
    holds(
      fc.property(
        fc.double({ min: 0.3, max: 8, noNaN: true }),
        fc.double({ min: 0.01, max: 10, noNaN: true }),
        (shape, age) => {
          const rates = ageReplacementRates({ shape, scale: 2, age });
          expect((rates.failures + rates.planned) * rates.meanCycle).toBeCloseTo(1, 12);
          expect(rates.meanCycle).toBeLessThanOrEqual(age * (1 + 1e-12));
        },
      ),
    );
  });
});
