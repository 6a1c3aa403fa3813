import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benjaminiHochberg } from '../../../pipeline/statistics/multiplicity/benjamini-hochberg.ts';
import { holds } from '../properties.ts';

// Benjamini & Hochberg, JRSS B 57 (1995) 289-300, section 3.2; the paper rejects four at 0.05. Adjusted
// values: R 4.2.2 p.adjust.
const paper = [
  0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528,
  0.759, 1,
];
const adjustedByR = [
  0.0015, 0.003, 0.0095, 0.035625, 0.0603, 0.06385714286, 0.06385714286, 0.0645, 0.0765, 0.486, 0.5811818182,
  0.714875, 0.7532307692, 0.8132142857, 1,
];

describe('benjaminiHochberg', () => {
  it('rejects four of the fifteen in the paper', () => {
    const { adjusted, rejected } = benjaminiHochberg(paper, 0.05);
    expect(rejected.filter(Boolean)).toHaveLength(4);
    for (const [i, p] of adjusted.entries()) expect(p).toBeCloseTo(adjustedByR[i]!, 9);
  });
  it('returns results in the order of the input', () => {
    holds(
      fc.property(
        fc.shuffledSubarray(
          paper.map((_, i) => i),
          { minLength: 15, maxLength: 15 },
        ),
        (order) => {
          const { adjusted, rejected } = benjaminiHochberg(order.map((i) => paper[i]!));
          const inPlace = benjaminiHochberg(paper);
          expect(adjusted).toEqual(order.map((i) => inPlace.adjusted[i]!));
          expect(rejected).toEqual(order.map((i) => inPlace.rejected[i]!));
        },
      ),
    );
  });
  it('rejects at equality, where rounding would have lost it', () => {
    // 0.05 * 3 / 3 and (1 / 3) 0.3 sit on the line.
    expect(benjaminiHochberg([0.1, 0.2, 0.3], 0.3).rejected).toEqual([true, true, true]);
    expect(benjaminiHochberg([0.05], 0.05).rejected).toEqual([true]);
  });
  it('agrees with the step-up definition written out', () => {
    holds(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 30 }),
        (p) => {
          const sorted = p.toSorted((a, b) => a - b);
          const last = sorted.findLastIndex((x, i) => x <= ((i + 1) / p.length) * 0.1);
          const { rejected, adjusted } = benjaminiHochberg(p, 0.1);
          expect(rejected.filter(Boolean)).toHaveLength(last + 1);
          adjusted.forEach((a, i) => {
            expect(a).toBeGreaterThanOrEqual(p[i]!);
            expect(a).toBeLessThanOrEqual(1);
          });
        },
      ),
    );
  });
  it('ties, one test, no test', () => {
    expect(benjaminiHochberg([0.02, 0.02, 0.02]).adjusted).toEqual([0.02, 0.02, 0.02]);
    expect(benjaminiHochberg([0.04]).adjusted).toEqual([0.04]);
    expect(benjaminiHochberg([0.04, 0.01])).toMatchObject({ adjusted: [0.04, 0.02], rejected: [true, true] });
    expect(benjaminiHochberg([])).toMatchObject({ adjusted: [], rejected: [] });
  });
  it('refuses what is no p-value', () => {
    for (const p of [[1.1], [-0.1], [Number.NaN]]) expect(() => benjaminiHochberg(p)).toThrow(RangeError);
    expect(() => benjaminiHochberg([0.5], 0)).toThrow(RangeError);
  });
});
