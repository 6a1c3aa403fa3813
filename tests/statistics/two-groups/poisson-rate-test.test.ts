import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialTail } from '../../../pipeline/statistics/distributions/beta.ts';
import { poissonRateTest } from '../../../pipeline/statistics/two-groups/poisson-rate-test.ts';
import { expectNear, value } from '../computable.ts';
import { holds } from '../properties.ts';
import { readReference } from '../reference/read-reference.ts';

/** Boice & Monson (1977), breast cancer; as in Stata's manual: iri 41 15 28010 19017. */
const breast = { exposedEvents: 41, exposedTime: 28010, unexposedEvents: 15, unexposedTime: 19017 };

describe('poissonRateTest against Boice & Monson (1977)', () => {
  it('printed by Stata: ratio 1.855759, exact interval 1.005684 to 3.6093', () => {
    const { estimate, interval } = value(poissonRateTest(breast));
    expect(estimate).toBeCloseTo(1.855759, 6);
    expect(interval.low).toBeCloseTo(1.005684, 6);
    expect(interval.high).toBeCloseTo(3.6093, 4);
    expectNear(interval.low, 1.005684063, 1e-9);
    expectNear(interval.high, 3.609300311, 1e-9);
  });
  it('exact p: one-sided, doubled, and by minimum likelihood (R 4.2.2 poisson.test)', () => {
    const result = value(poissonRateTest(breast));
    expectNear(result.pGreater, 0.02383012338, 1e-9);
    expectNear(result.pValue, 0.04766024675, 1e-9);
    expectNear(value(poissonRateTest(breast, { twoSided: 'minimum-likelihood' })).pValue, 0.04085203, 1e-7);
  });
  it('mid-p, printed by Stata: 0.0177, 0.9823, doubled 0.0355', () => {
    const result = value(poissonRateTest(breast, { discreteness: 'mid-p' }));
    expect(result.pGreater).toBeCloseTo(0.0177, 4);
    expect(result.pLess).toBeCloseTo(0.9823, 4);
    expect(result.pValue).toBeCloseTo(0.0355, 4);
    expectNear(result.pGreater, 0.01772871089, 1e-9);
    expectNear(result.pValue, 0.03545742177, 1e-9);
    expectNear(result.interval.low, 1.041075243, 1e-9);
    expectNear(result.interval.high, 3.44942276, 1e-9);
  });
});

interface Row {
  exposed_events: number;
  exposed_time: number;
  unexposed_events: number;
  unexposed_time: number;
  minimum_likelihood: number;
  greater: number;
  less: number;
  low: number;
  /** -1 for no upper limit. */
  high: number;
}

it('p-values and intervals of R 4.2.2 (tests/statistics/reference/two-groups.R)', () => {
  for (const row of readReference<Row>('poisson-rate')) {
    const groups = {
      exposedEvents: row.exposed_events,
      exposedTime: row.exposed_time,
      unexposedEvents: row.unexposed_events,
      unexposedTime: row.unexposed_time,
    };
    const result = value(poissonRateTest(groups));
    // 1e-8: R and the library lose digits at 689 000 events.
    expectNear(result.pGreater, row.greater, 1e-8);
    expectNear(result.pLess, row.less, 1e-8);
    expectNear(result.interval.low, row.low, 1e-8);
    expectNear(result.interval.high, row.high === -1 ? Number.POSITIVE_INFINITY : row.high, 1e-8);
    const { pValue } = value(poissonRateTest(groups, { twoSided: 'minimum-likelihood' }));
    expectNear(pValue, row.minimum_likelihood, 1e-8);
  }
});

const groups = fc
  .record({
    exposedEvents: fc.integer({ min: 0, max: 300 }),
    exposedTime: fc.double({ min: 0.1, max: 1000, noNaN: true }),
    unexposedEvents: fc.integer({ min: 0, max: 300 }),
    unexposedTime: fc.double({ min: 0.1, max: 1000, noNaN: true }),
  })
  .filter((g) => g.exposedEvents + g.unexposedEvents > 0);

describe('properties of poissonRateTest', () => {
  it('the binomial tail is alpha / 2 at each bound', () => {
    holds(
      fc.property(groups, fc.double({ min: 0.5, max: 0.9999, noNaN: true }), (g, level) => {
        const { interval } = value(poissonRateTest(g, { level }));
        const n = g.exposedEvents + g.unexposedEvents;
        const share = (ratio: number) => (ratio * g.exposedTime) / (ratio * g.exposedTime + g.unexposedTime);
        if (g.exposedEvents > 0)
          expectNear(binomialTail(g.exposedEvents, n, share(interval.low), 'upper'), (1 - level) / 2, 1e-8);
        if (g.unexposedEvents > 0)
          expectNear(binomialTail(g.exposedEvents, n, share(interval.high), 'lower'), (1 - level) / 2, 1e-8);
      }),
    );
  });
  it('the estimate is the ratio of the two rates; swapped groups and another unit of time change nothing', () => {
    holds(
      fc.property(groups, fc.double({ min: 0.01, max: 100, noNaN: true }), (g, unit) => {
        const a = value(poissonRateTest(g));
        expectNear(a.estimate, g.exposedEvents / g.exposedTime / (g.unexposedEvents / g.unexposedTime), 1e-9);
        const b = value(
          poissonRateTest({
            exposedEvents: g.unexposedEvents,
            exposedTime: g.unexposedTime * unit,
            unexposedEvents: g.exposedEvents,
            unexposedTime: g.exposedTime * unit,
          }),
        );
        expectNear(b.interval.high, 1 / a.interval.low, 1e-9);
        expectNear(b.pLess, a.pGreater, 1e-9);
        expectNear(b.pValue, a.pValue, 1e-9);
      }),
    );
  });
});

it('states what it cannot compute, and refuses what cannot be', () => {
  expect(poissonRateTest({ ...breast, exposedEvents: 0, exposedTime: 0 }).computable).toBe(false);
  expect(poissonRateTest({ ...breast, exposedEvents: 0, unexposedEvents: 0 }).computable).toBe(false);
  expect(() => poissonRateTest({ ...breast, exposedTime: 0 })).toThrow('events must not occur in no time');
  expect(() => poissonRateTest({ ...breast, exposedEvents: 1.5 })).toThrow(RangeError);
  expect(() => poissonRateTest({ ...breast, unexposedTime: Number.NaN })).toThrow(RangeError);
});
