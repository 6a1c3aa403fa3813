import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactCommonOddsRatio } from '../../../pipeline/statistics/stratified/exact-common-odds-ratio.ts';
import { exactCommonRateRatio } from '../../../pipeline/statistics/stratified/exact-common-rate-ratio.ts';
import type { RateStratum } from '../../../pipeline/statistics/stratified/rate-stratum.ts';
import type { TwoByTwo } from '../../../pipeline/statistics/stratified/two-by-two.ts';
import { fisherExact } from '../../../pipeline/statistics/two-groups/fisher-exact.ts';
import { poissonRateTest } from '../../../pipeline/statistics/two-groups/poisson-rate-test.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';
import { readReference } from '../reference/read-reference.ts';
import { cells, doctors, penicillin } from './examples.ts';

interface Inference {
  estimate: number | 'Inf';
  low: number;
  high: number | 'Inf';
  p_greater: number;
  p_less: number;
}
interface OddsCase extends Inference {
  exposed_events: number[];
  exposed_total: number[];
  unexposed_events: number[];
  unexposed_total: number[];
  mantelhaen_greater: number;
  mantelhaen_less: number;
}
interface RateCase extends Inference {
  exposed_events: number[];
  exposed_time: number[];
  unexposed_events: number[];
  unexposed_time: number[];
}

const number = (x: number | 'Inf') => (x === 'Inf' ? Number.POSITIVE_INFINITY : x);

function expectInference(found: ReturnType<typeof exactCommonOddsRatio>, expected: Inference): void {
  const result = value(found);
  // The table holds 15 digits, its root search 1e-12 on the log ratio.
  expectNear(result.estimate, number(expected.estimate), 1e-8);
  expectNear(result.interval.low, expected.low, 1e-8);
  expectNear(result.interval.high, number(expected.high), 1e-8);
  expectNear(result.pGreater, expected.p_greater, 1e-9);
  expectNear(result.pLess, expected.p_less, 1e-9);
  expectNear(result.pValue, Math.min(1, 2 * Math.min(expected.p_greater, expected.p_less)), 1e-9);
}

describe('against R 4.2.2', () => {
  // R 4.2.2 mantelhaen.test(x, exact = TRUE), data of its help page (Agresti 1990 pp. 231-237). R searches
  // its roots less closely: 10.36102 and 1.077401 are near, the upper limit 529.837 is off by 0.3 %.
  // One-sided p 0.01997245179 and S = 16.
  it('penicillin and rabbits', () => {
    const result = value(exactCommonOddsRatio(penicillin));
    expectNear(result.estimate, 10.36102, 1e-5);
    expectNear(result.interval.low, 1.077401, 2e-5);
    expectNear(result.interval.high, 529.837399, 5e-3);
    expectNear(result.pGreater, 0.01997245, 1e-6);
    expectNear(result.pValue, 0.0399449, 1e-6);
    expect(result).toMatchObject({ strataUsed: 3, strataGiven: 5 });
  });
  it('twelve sets of tables, by convolution on the plain scale and by mantelhaen.test (reference/exact-strata.R)', () => {
    for (const c of readReference<OddsCase>('exact-odds-strata')) {
      const strata = c.exposed_events.map((exposedEvents, i) => ({
        exposedEvents,
        exposedTotal: c.exposed_total[i]!,
        unexposedEvents: c.unexposed_events[i]!,
        unexposedTotal: c.unexposed_total[i]!,
      }));
      const found = exactCommonOddsRatio(strata);
      expectInference(found, c);
      expectNear(value(found).pGreater, c.mantelhaen_greater, 1e-9);
      expectNear(value(found).pLess, c.mantelhaen_less, 1e-9);
    }
  });
  it('ten sets of rates, by convolution on the plain scale (reference/exact-strata.R)', () => {
    for (const c of readReference<RateCase>('exact-rate-strata')) {
      const strata = c.exposed_events.map((exposedEvents, i) => ({
        exposedEvents,
        exposedTime: c.exposed_time[i]!,
        unexposedEvents: c.unexposed_events[i]!,
        unexposedTime: c.unexposed_time[i]!,
      }));
      expectInference(exactCommonRateRatio(strata), c);
    }
  });
});

const stratum: fc.Arbitrary<TwoByTwo> = fc
  .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }))
  .chain(([x, y]) =>
    fc.record({
      exposedEvents: fc.integer({ min: 0, max: x }),
      exposedTotal: fc.constant(x),
      unexposedEvents: fc.integer({ min: 0, max: y }),
      unexposedTotal: fc.constant(y),
    }),
  );
const strata = fc.array(stratum, { minLength: 1, maxLength: 6 });
const rateStratum: fc.Arbitrary<RateStratum> = fc.record({
  exposedEvents: fc.integer({ min: 0, max: 40 }),
  exposedTime: fc.double({ min: 0.5, max: 1000, noNaN: true }),
  unexposedEvents: fc.integer({ min: 0, max: 40 }),
  unexposedTime: fc.double({ min: 0.5, max: 1000, noNaN: true }),
});

function expectSame(a: ReturnType<typeof exactCommonOddsRatio>, b: typeof a): void {
  expect(a.computable).toBe(b.computable);
  if (!a.computable || !b.computable) return;
  expectNear(a.estimate, b.estimate, 1e-9);
  expectNear(a.interval.low, b.interval.low, 1e-9);
  expectNear(a.interval.high, b.interval.high, 1e-9);
  expectNear(a.pValue, b.pValue, 1e-9);
}

describe('properties', () => {
  it('order of strata changes nothing, nor do strata that say nothing', () => {
    holds(
      fc.property(strata, (s) => {
        const silent = { exposedEvents: 0, exposedTotal: 5, unexposedEvents: 0, unexposedTotal: 9 };
        expectSame(exactCommonOddsRatio(s), exactCommonOddsRatio([silent, ...s.toReversed()]));
      }),
    );
    holds(
      fc.property(fc.array(rateStratum, { minLength: 1, maxLength: 6 }), (s) => {
        expectSame(exactCommonRateRatio(s), exactCommonRateRatio(s.toReversed()));
      }),
    );
  });
  it('swapped groups mirror the result', () => {
    holds(
      fc.property(strata, (s) => {
        const a = exactCommonOddsRatio(s);
        const b = exactCommonOddsRatio(
          s.map((t) => ({
            exposedEvents: t.unexposedEvents,
            exposedTotal: t.unexposedTotal,
            unexposedEvents: t.exposedEvents,
            unexposedTotal: t.exposedTotal,
          })),
        );
        expect(a.computable).toBe(b.computable);
        if (!a.computable || !b.computable) return;
        expectNear(a.estimate, 1 / b.estimate, 1e-9);
        expectNear(a.interval.high, 1 / b.interval.low, 1e-9);
        expectNear(a.pGreater, b.pLess, 1e-9);
      }),
    );
  });
  it('events taken as non-events give the reciprocal odds ratio', () => {
    holds(
      fc.property(strata, (s) => {
        const a = exactCommonOddsRatio(s);
        const b = exactCommonOddsRatio(
          s.map((t) => ({
            ...t,
            exposedEvents: t.exposedTotal - t.exposedEvents,
            unexposedEvents: t.unexposedTotal - t.unexposedEvents,
          })),
        );
        if (!a.computable || !b.computable) return;
        expectNear(a.estimate, 1 / b.estimate, 1e-9);
        expectNear(a.pValue, b.pValue, 1e-9);
      }),
    );
  });
  it('central p is under 1 - level exactly when the interval leaves out 1, with mid-p as well', () => {
    holds(
      fc.property(
        strata,
        fc.constantFrom('exact' as const, 'mid-p' as const),
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        (s, tails, level) => {
          const result = exactCommonOddsRatio(s, { tails, level });
          if (!result.computable || Math.abs(result.pValue - (1 - level)) < 1e-9) return;
          expect(result.interval.low > 1 || result.interval.high < 1).toBe(result.pValue < 1 - level);
        },
      ),
    );
  });
  it('one stratum is the two-group method', () => {
    holds(
      fc.property(stratum, rateStratum, (t, r) => {
        const odds = exactCommonOddsRatio([t]);
        const fisher = fisherExact(t);
        expect(odds.computable).toBe(fisher.computable);
        if (odds.computable && fisher.computable) expect(odds.interval).toEqual(fisher.interval);
        const rate = exactCommonRateRatio([r]);
        const two = poissonRateTest(r);
        if (rate.computable && two.computable) expect(rate.pValue).toBe(two.pValue);
      }),
    );
  });
});

describe('edges', () => {
  it('no stratum, or none that says anything', () => {
    expect(exactCommonOddsRatio([])).toMatchObject({ computable: false });
    expect(exactCommonRateRatio([])).toMatchObject({ computable: false });
    expect(
      exactCommonOddsRatio([{ exposedEvents: 0, exposedTotal: 0, unexposedEvents: 2, unexposedTotal: 9 }]),
    ).toMatchObject({
      computable: false,
      reason: expect.stringContaining('No stratum'),
    });
  });
  it('no exposed event in any stratum; every exposed trial an event', () => {
    const none = { exposedEvents: 0, exposedTotal: 20, unexposedEvents: 5, unexposedTotal: 40 };
    expect(value(exactCommonOddsRatio([none, none]))).toMatchObject({ estimate: 0, interval: { low: 0 } });
    const all = { exposedEvents: 4, exposedTotal: 4, unexposedEvents: 5, unexposedTotal: 40 };
    expect(value(exactCommonOddsRatio([all, all]))).toMatchObject({ estimate: Number.POSITIVE_INFINITY });
  });
  it('a million counts in each of two strata: near the Mantel-Haenszel limit', () => {
    const big = [
      {
        exposedEvents: 500_000,
        exposedTotal: 1_000_000,
        unexposedEvents: 499_000,
        unexposedTotal: 1_000_000,
      },
      { exposedEvents: 300, exposedTotal: 1_000_000, unexposedEvents: 310, unexposedTotal: 1_000_000 },
    ];
    const result = value(exactCommonOddsRatio(big));
    // R 4.2.2: mantelhaen.test(..., correct = FALSE) gives 1.003963013 and 0.998416194 to 1.009540649.
    expectNear(result.estimate, 1.003963013, 1e-5);
    expectNear(result.interval.low, 0.998416194, 1e-4);
    expectNear(result.interval.high, 1.009540649, 1e-4);
  });
  it('says so where the exact distribution is too wide to be put together', () => {
    const wide = {
      exposedEvents: 500_000,
      exposedTotal: 1_000_000,
      unexposedEvents: 499_000,
      unexposedTotal: 1_000_000,
    };
    expect(exactCommonOddsRatio([wide, wide, wide, wide])).toMatchObject({
      computable: false,
      reason: expect.stringContaining('Too many events'),
    });
  });
  it('a p-value of 1e-128 keeps its digits', () => {
    // R 4.2.2: phyper(499, 1000, 1000, 650, lower.tail = FALSE); two such tables by convolution of dhyper on
    // the plain scale.
    const one = { exposedEvents: 500, exposedTotal: 1000, unexposedEvents: 150, unexposedTotal: 1000 };
    expectNear(value(exactCommonOddsRatio([one])).pGreater, 4.44932625493e-65, 1e-9);
    expectNear(value(exactCommonOddsRatio([one, one])).pGreater, 2.66263799214e-128, 1e-9);
  });
  it('refuses what cannot be', () => {
    expect(() => exactCommonOddsRatio([cells([1, -2, 3, 4])])).toThrow('exactCommonOddsRatio');
    expect(() => exactCommonRateRatio([{ ...doctors[0]!, exposedTime: 0 }])).toThrow('no time');
    expect(() => exactCommonOddsRatio(penicillin, { level: 0 })).toThrow('level');
  });
});
