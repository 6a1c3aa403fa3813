import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cochranArmitageTrend } from '../../../pipeline/statistics/two-groups/cochran-armitage-trend.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';

/** Maternal alcohol and malformation, Graubard & Korn (1987), in Agresti, Categorical Data Analysis. */
const events = [48, 38, 5, 1, 1];
const totals = [48 + 17066, 38 + 14464, 5 + 788, 1 + 126, 1 + 37];

describe('cochranArmitageTrend on maternal alcohol', () => {
  // R 4.2.2 prop.trend.test (N version); two decimals as printed by Agresti (from memory).
  it.each([
    ['0 to 7', [0, 0.5, 1.5, 4, 7], 6.5701339, 0.01037041, 6.57],
    ['1 to 5', [1, 2, 3, 4, 5], 1.8278158, 0.1763858, 1.83],
    ['midranks', [8557.5, 24365.5, 32013, 32473, 32555.5], 0.35143832, 0.5533001, 0.35],
  ])('scores %s', (_, scores, chiSquare, p, printed) => {
    const result = value(cochranArmitageTrend({ events, totals, scores }));
    expectNear(result.chiSquare, chiSquare, 3e-8);
    expectNear(result.pValue, p, 1e-6);
    expect(Math.abs(result.chiSquare - printed)).toBeLessThanOrEqual(0.005);
  });
  it('one-sided p, and the (N - 1) version that Agresti prints as 6.5699', () => {
    const result = value(cochranArmitageTrend({ events, totals, scores: [0, 0.5, 1.5, 4, 7] }));
    expectNear(result.pGreater, 0.005185207286, 1e-9);
    const n = totals.reduce((a, b) => a + b);
    expect(((n - 1) / n) * result.chiSquare).toBeCloseTo(6.5699, 4);
  });
});

const groups = fc.array(
  fc
    .integer({ min: 0, max: 50 })
    .chain((n) =>
      fc.record({ e: fc.integer({ min: 0, max: n }), n: fc.constant(n), s: fc.integer({ min: -5, max: 5 }) }),
    ),
  { minLength: 1, maxLength: 6 },
);
const tableOf = (g: { e: number; n: number; s: number }[]) => ({
  events: g.map((x) => x.e),
  totals: g.map((x) => x.n),
  scores: g.map((x) => x.s),
});

describe('properties', () => {
  it('order of groups, and the zero and unit of the scores, change nothing; reversed scores mirror', () => {
    holds(
      fc.property(
        groups,
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: -1000, max: 1000 }),
        (g, unit, zero) => {
          const a = cochranArmitageTrend(tableOf(g));
          const b = cochranArmitageTrend(
            tableOf(g.toReversed().map((x) => ({ ...x, s: zero + unit * x.s }))),
          );
          const c = cochranArmitageTrend(tableOf(g.map((x) => ({ ...x, s: -x.s }))));
          expect(b.computable).toBe(a.computable);
          if (!a.computable || !b.computable || !c.computable) return;
          expect(b.z).toBeCloseTo(a.z, 9);
          expect(c.z).toBeCloseTo(-a.z, 9);
          expect(c.pGreater).toBeCloseTo(a.pLess, 12);
        },
      ),
    );
  });
  it('two groups: the chi-square of a two-by-two table', () => {
    // 12 of 40 against 5 of 60, by hand: N (ad - bc)^2 / (row and column totals).
    const expected = (100 * (12 * 55 - 28 * 5) ** 2) / (40 * 60 * 17 * 83);
    expectNear(
      value(cochranArmitageTrend({ events: [5, 12], totals: [60, 40], scores: [0, 1] })).chiSquare,
      expected,
      1e-12,
    );
  });
});

describe('edges', () => {
  it.each([
    [{ events: [0, 0], totals: [5, 5], scores: [0, 1] }],
    [{ events: [5, 5], totals: [5, 5], scores: [0, 1] }],
    [{ events: [1, 2], totals: [5, 5], scores: [0.1, 0.1] }],
    [{ events: [1, 0], totals: [5, 0], scores: [0, 1] }],
    [{ events: [], totals: [], scores: [] }],
  ])('not computable: %j', (table) => {
    expect(cochranArmitageTrend(table)).toMatchObject({
      computable: false,
      reason: expect.stringContaining('needed'),
    });
  });
  it('refuses what cannot be', () => {
    expect(() => cochranArmitageTrend({ events: [6], totals: [5], scores: [0] })).toThrow(RangeError);
    expect(() => cochranArmitageTrend({ events: [1], totals: [5], scores: [0, 1] })).toThrow('one length');
    expect(() => cochranArmitageTrend({ events: [1], totals: [5], scores: [Number.NaN] })).toThrow('finite');
  });
});
