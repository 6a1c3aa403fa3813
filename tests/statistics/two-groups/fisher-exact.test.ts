import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hypergeometricCount } from '../../../pipeline/statistics/distributions/conditional-count.ts';
import { tiltedMass } from '../../../pipeline/statistics/distributions/tilted-sum.ts';
import { fisherExact } from '../../../pipeline/statistics/two-groups/fisher-exact.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';
import { readReference } from '../reference/read-reference.ts';

const table = (a: number, b: number, c: number, d: number) => ({
  exposedEvents: a,
  exposedTotal: a + b,
  unexposedEvents: c,
  unexposedTotal: c + d,
});
/** Fisher's tea tasting; Agresti, Categorical Data Analysis, 2nd ed. p. 91. */
const tea = table(3, 1, 1, 3);
/** Fisher's twins (1962), as in R's help page of fisher.test. */
const twins = table(2, 15, 10, 3);
/**
 * Perondi et al. (2004), in Fagerland, Lydersen & Laake, Statistical Analysis of Contingency Tables (2017)
 * ch. 4.
 */
const epinephrine = table(7, 27, 1, 33);

describe('fisherExact against published tables', () => {
  it('tea tasting: the hand calculation 1, 16, 36, 16, 1 of 70', () => {
    const { first, probability } = tiltedMass(hypergeometricCount(4, 4, 4), 0);
    expect(first).toBe(0);
    expect([...probability].map((p) => p * 70)).toEqual([1, 16, 36, 16, 1].map((n) => expect.closeTo(n, 13)));
    expect(value(fisherExact(tea)).pGreater).toBeCloseTo(17 / 70, 14); // printed 0.2429
    // Symmetric margins: central and minimum likelihood agree. Printed 0.4857.
    expect(value(fisherExact(tea)).pValue).toBeCloseTo(34 / 70, 14);
    expect(value(fisherExact(tea, { twoSided: 'minimum-likelihood' })).pValue).toBeCloseTo(34 / 70, 14);
  });
  // Conditional odds ratio and exact interval solved to convergence (checked with scipy 1.10.1; R 4.2.2
  // prints less exact ones).
  it.each([
    ['tea', tea, 6.40831966, 0.2117356, 626.24353],
    ['twins', twins, 0.04693664, 0.00331716, 0.3631896],
    ['epinephrine', epinephrine, 8.32934372, 0.97327363, 396.994],
  ])('%s: ratio and interval', (_, t, estimate, low, high) => {
    const result = value(fisherExact(t));
    expectNear(result.estimate, estimate, 1e-7);
    expectNear(result.interval.low, low, 2e-6);
    expectNear(result.interval.high, high, 1e-6);
  });
  it('agrees with what R 4.2.2 prints, within the error of its root search', () => {
    // R's uniroot stops at about 1e-4 on a transformed scale: up to 1 % on a large upper limit.
    const { estimate, interval } = value(fisherExact(tea));
    expectNear(estimate, 6.408309, 1e-5);
    expectNear(interval.low, 0.2117329, 1e-4);
    expectNear(interval.high, 621.9337505, 1e-2);
  });
  // Two-sided by minimum likelihood: R 4.2.2 fisher.test.
  it.each([
    [twins, 0.0005367241191],
    [epinephrine, 0.0544001305],
  ])('minimum-likelihood p', (t, p) => {
    expectNear(value(fisherExact(t, { twoSided: 'minimum-likelihood' })).pValue, p, 1e-9);
  });
  it('one-sided p', () => {
    expectNear(value(fisherExact(twins)).pLess, 0.0004651809434, 1e-9); // R help page prints 0.0004652
    expectNear(value(fisherExact(epinephrine)).pGreater, 0.02720006525, 1e-9);
  });
  // Fagerland et al. (2017): 0.25714 and 0.02966; the twins computed by the same rule.
  it.each([
    [tea, 0.2571428571],
    [twins, 0.0003118741381],
    [epinephrine, 0.02965625843],
  ])('mid-p of ties', (t, p) => {
    const result = value(fisherExact(t, { twoSided: 'minimum-likelihood', discreteness: 'mid-p-of-ties' }));
    expectNear(result.pValue, p, 1e-9);
  });
  // Half of the observed table alone, off the minimum-likelihood p: 34/70 - 8/70; and 0.0420.
  it('mid-p by half of the observed table', () => {
    const options = { twoSided: 'minimum-likelihood', discreteness: 'mid-p' } as const;
    expect(value(fisherExact(tea, options)).pValue).toBeCloseTo(26 / 70, 13);
    expect(value(fisherExact(epinephrine, options)).pValue).toBeCloseTo(0.042, 4);
    expect(value(fisherExact(tea, { discreteness: 'mid-p' })).pValue).toBeCloseTo(18 / 70, 13);
  });
  // Mid-p intervals: tea printed 0.3101, 308.5568 in Fagerland et al. (2017); the others computed to
  // convergence.
  it.each([
    [tea, 0.3100548817, 308.5567716],
    [twins, 0.004824611669, 0.2958662046],
    [epinephrine, 1.188586788, 199.6166457],
  ])('mid-p interval', (t, low, high) => {
    const { interval } = value(fisherExact(t, { discreteness: 'mid-p' }));
    expectNear(interval.low, low, 1e-8);
    expectNear(interval.high, high, 1e-8);
  });
});

interface Row {
  exposed_events: number;
  exposed_total: number;
  unexposed_events: number;
  unexposed_total: number;
  minimum_likelihood: number;
  greater: number;
  less: number;
}

it('p-values of R 4.2.2 (tests/statistics/reference/two-groups.R)', () => {
  for (const row of readReference<Row>('fisher')) {
    const t = {
      exposedEvents: row.exposed_events,
      exposedTotal: row.exposed_total,
      unexposedEvents: row.unexposed_events,
      unexposedTotal: row.unexposed_total,
    };
    const result = value(fisherExact(t));
    expectNear(result.pGreater, row.greater, 1e-9);
    expectNear(result.pLess, row.less, 1e-9);
    expectNear(
      value(fisherExact(t, { twoSided: 'minimum-likelihood' })).pValue,
      row.minimum_likelihood,
      1e-9,
    );
  }
});

/** Tables that carry information, small and large. */
const tables = fc
  .tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 400 }))
  .chain(([x, y]) =>
    fc.tuple(fc.integer({ min: 0, max: x }), fc.constant(x), fc.integer({ min: 0, max: y }), fc.constant(y)),
  )
  .filter(([a, x, c, y]) => a + c > 0 && a + c < x + y)
  .map(([a, x, c, y]) => ({ exposedEvents: a, exposedTotal: x, unexposedEvents: c, unexposedTotal: y }));

describe('properties of fisherExact', () => {
  it('each one-sided tail is alpha / 2 at the bound of the interval', () => {
    holds(
      fc.property(tables, fc.double({ min: 0.5, max: 0.9999, noNaN: true }), (t, level) => {
        const { interval } = value(fisherExact(t, { level }));
        const count = hypergeometricCount(
          t.exposedEvents + t.unexposedEvents,
          t.exposedTotal,
          t.unexposedTotal,
        );
        for (const [bound, side] of [
          [interval.low, 1],
          [interval.high, -1],
        ] as const) {
          if (bound === 0 || bound === Number.POSITIVE_INFINITY) continue;
          const { first, probability } = tiltedMass(count, Math.log(bound));
          const tail = probability.reduce(
            (sum, p, i) => sum + (side * (first + i - t.exposedEvents) >= 0 ? p : 0),
            0,
          );
          expectNear(tail, (1 - level) / 2, 1e-8);
        }
      }),
    );
  });
  it('swapped groups mirror the result', () => {
    holds(
      fc.property(tables, fc.constantFrom('exact' as const, 'mid-p' as const), (t, discreteness) => {
        const a = value(fisherExact(t, { discreteness }));
        const swapped = {
          exposedEvents: t.unexposedEvents,
          exposedTotal: t.unexposedTotal,
          unexposedEvents: t.exposedEvents,
          unexposedTotal: t.exposedTotal,
        };
        const b = value(fisherExact(swapped, { discreteness }));
        expectNear(a.estimate, 1 / b.estimate, 1e-9);
        expectNear(a.interval.low, 1 / b.interval.high, 1e-9);
        expectNear(a.pValue, b.pValue, 1e-9);
        expectNear(a.pGreater, b.pLess, 1e-9);
      }),
    );
  });
  it('central p is under alpha exactly when the interval leaves out 1', () => {
    holds(
      fc.property(tables, (t) => {
        const { pValue, interval } = value(fisherExact(t));
        if (Math.abs(pValue - 0.05) > 1e-9) expect(interval.low > 1 || interval.high < 1).toBe(pValue < 0.05);
      }),
    );
  });
  it('orders the three p-values: mid-p of ties <= mid-p <= exact', () => {
    holds(
      fc.property(tables, (t) => {
        const p = (discreteness: 'exact' | 'mid-p' | 'mid-p-of-ties') =>
          value(fisherExact(t, { twoSided: 'minimum-likelihood', discreteness })).pValue;
        expect(p('mid-p-of-ties')).toBeLessThanOrEqual(p('mid-p') * (1 + 1e-12));
        expect(p('mid-p')).toBeLessThan(p('exact'));
      }),
    );
  });
});

describe('edges of fisherExact', () => {
  it('0 of n against n of n', () => {
    const none = value(fisherExact(table(0, 5, 5, 0)));
    expect(none).toMatchObject({ estimate: 0, interval: { low: 0 } });
    expect(none.pValue).toBeCloseTo(2 / 252, 14); // 1 / choose(10, 5) in the smaller tail
    expect(value(fisherExact(table(5, 0, 0, 5)))).toMatchObject({
      estimate: Number.POSITIVE_INFINITY,
      interval: { high: Number.POSITIVE_INFINITY },
    });
  });
  it.each([[table(0, 0, 3, 4)], [table(3, 4, 0, 0)], [table(0, 7, 0, 9)], [table(7, 0, 9, 0)]])(
    'says what is missing: %j',
    (t) => {
      expect(fisherExact(t)).toMatchObject({ computable: false, reason: expect.stringContaining('needed') });
    },
  );
  it('a million trials per group', () => {
    // R 4.2.2: phyper(1099, 1e6, 1e6, 2100, lower.tail = FALSE), its complement from phyper(1100, ...).
    const { pGreater, pLess, estimate } = value(fisherExact(table(1100, 998_900, 1000, 999_000)));
    expectNear(pGreater, 0.01531653887097, 1e-9);
    expectNear(pLess, 0.98629035477142, 1e-9);
    expectNear(estimate, (1100 * 999_000) / (998_900 * 1000), 1e-5);
  });
  it('a p-value far below the smallest number is never 0', () => {
    expect(value(fisherExact(table(5000, 5, 5, 5000))).pValue).toBeGreaterThan(0);
  });
  it('refuses what cannot be', () => {
    expect(() => fisherExact(table(-1, 3, 2, 2))).toThrow(RangeError);
    expect(() => fisherExact(table(1.5, 3, 2, 2))).toThrow(RangeError);
    expect(() =>
      fisherExact({ exposedEvents: 3, exposedTotal: 2, unexposedEvents: 0, unexposedTotal: 4 }),
    ).toThrow('events must not exceed');
    expect(() => fisherExact(tea, { discreteness: 'mid-p-of-ties' })).toThrow('minimum-likelihood');
    expect(() => fisherExact(tea, { level: 1.2 })).toThrow('level');
  });
});
