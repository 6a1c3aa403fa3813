import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { hypergeometricCount } from '../../../pipeline/statistics/distributions/conditional-count.ts';
import { tiltedMass } from '../../../pipeline/statistics/distributions/tilted-sum.ts';
import type { StratumMargins } from '../../../pipeline/statistics/stratified/conditional-power.ts';
import { dataNeededForRatio } from '../../../pipeline/statistics/stratified/data-needed-for-ratio.ts';
import { detectableRatio } from '../../../pipeline/statistics/stratified/detectable-ratio.ts';
import { mantelHaenszelOddsRatio } from '../../../pipeline/statistics/stratified/mantel-haenszel-odds-ratio.ts';
import { expectNear, value } from '../computable.ts';

const trials = { design: 'events-of-trials' } as const;
const time = { design: 'events-over-time' } as const;

describe('against formulas for two groups', () => {
  // R 4.2.2 power.prop.test(p1, p2, power = 0.8)$n: 4672.8, 2318.2, 1533.3, 1140.8, 434.4. That formula is
  // not conditional on the margins, ours is; they agree to 5 % in size, 3 % in the ratio.
  it.each([
    [0.005, 0.01, 4673],
    [0.01, 0.02, 2318],
    [0.015, 0.03, 1534],
    [0.02, 0.04, 1141],
    [0.05, 0.1, 435],
  ])('%d against %d needs %i per group', (p1, p2, n) => {
    const margins = [{ exposed: n, unexposed: n, events: Math.round(n * (p1 + p2)) }];
    const oddsRatio = p2 / (1 - p2) / (p1 / (1 - p1));
    expectNear(value(detectableRatio(margins, trials)).ratio, oddsRatio, 0.03);
    expectNear(value(dataNeededForRatio(margins, oddsRatio, trials)).growth, 1, 0.05);
  });
  it('rates, by hand: equal times, 50 events', () => {
    // Binomial with share r / (1 + r): 50 (r / (1 + r) - 1 / 2) = 1.959964 sqrt(12.5) + 0.841621 sqrt(50 r) /
    // (1 + r).
    const { ratio } = value(detectableRatio([{ exposed: 7, unexposed: 7, events: 50 }], time));
    const share = ratio / (1 + ratio);
    expectNear(
      50 * (share - 0.5),
      1.959963985 * Math.sqrt(12.5) + 0.8416212336 * Math.sqrt(50 * share * (1 - share)),
      1e-8,
    );
  });
});

it('simulated: the Mantel-Haenszel test rejects in 80 % at the detectable ratio', () => {
  const generator = xoroshiro128plus(11);
  /** Share of simulated records in which the test rejects upwards at the detectable ratio. */
  const rejects = (margins: StratumMargins[], runs: number) => {
    const { ratio } = value(detectableRatio(margins, trials));
    const masses = margins.map((m) =>
      tiltedMass(hypergeometricCount(m.events, m.exposed, m.unexposed), Math.log(ratio)),
    );
    let rejected = 0;
    for (let run = 0; run < runs; run++) {
      const tables = margins.map((m, j) => {
        const { first, probability } = masses[j]!;
        let u = (generator.next() >>> 0) / 2 ** 32;
        let i = 0;
        while (i < probability.length - 1 && u >= probability[i]!) u -= probability[i++]!;
        return {
          exposedEvents: first + i,
          exposedTotal: m.exposed,
          unexposedEvents: m.events - first - i,
          unexposedTotal: m.unexposed,
        };
      });
      const result = value(mantelHaenszelOddsRatio(tables));
      if (result.pValue <= 0.05 && result.estimate > 1) rejected++;
    }
    return rejected / runs;
  };
  // The count of exposed events is whole, so the power of a single design lies up to 0.08 off; over designs
  // that evens out.
  const shares = Array.from({ length: 24 }, (_, k) =>
    rejects(
      [
        { exposed: 60 + k, unexposed: 120, events: 9 + (k % 5) },
        { exposed: 25, unexposed: 150 + k, events: 6 + (k % 3) },
        { exposed: 90, unexposed: 85, events: 14 + (k % 7) },
        { exposed: 40, unexposed: 130, events: 4 + (k % 2) },
      ],
      500,
    ),
  );
  const mean = shares.reduce((a, b) => a + b) / shares.length;
  expect(Math.min(...shares)).toBeGreaterThan(0.7);
  expect(mean).toBeGreaterThan(0.78); // standard error 0.004 for the draws, about 0.007 for the designs
  expect(mean).toBeLessThan(0.82);
});

describe('properties', () => {
  const strata = [
    { exposed: 100, unexposed: 260, events: 12 },
    { exposed: 40, unexposed: 300, events: 20 },
  ];
  it('growth is 1 at the detectable ratio, and the power then is the one asked for', () => {
    for (const options of [trials, time, { ...trials, power: 0.9 }, { ...time, varianceInflation: 1.7 }]) {
      const { ratio } = value(detectableRatio(strata, options));
      const needed = value(dataNeededForRatio(strata, ratio, options));
      expectNear(needed.growth, 1, 1e-6);
      expectNear(needed.powerNow, 'power' in options ? options.power : 0.8, 1e-6);
    }
  });
  it('copies of the strata grow as said', () => {
    const { growth } = value(dataNeededForRatio(strata, 1.6, trials));
    const copies = Array.from({ length: Math.ceil(growth) }, () => strata).flat();
    expect(value(dataNeededForRatio(copies, 1.6, trials)).growth).toBeCloseTo(growth / Math.ceil(growth), 6);
  });
  it('inflation raises ratio and growth, the latter in proportion; fewer events too', () => {
    expect(value(detectableRatio(strata, { ...trials, varianceInflation: 2 })).ratio).toBeGreaterThan(
      value(detectableRatio(strata, trials)).ratio,
    );
    expectNear(
      value(dataNeededForRatio(strata, 2, { ...trials, varianceInflation: 2 })).growth,
      2 * value(dataNeededForRatio(strata, 2, trials)).growth,
      1e-12,
    );
    const fewer = strata.map((s) => ({ ...s, events: s.events / 2 }));
    expect(value(detectableRatio(fewer, trials)).ratio).toBeGreaterThan(
      value(detectableRatio(strata, trials)).ratio,
    );
  });
  it('swapped groups: the reciprocal ratio needs as much', () => {
    const swapped = strata.map((s) => ({ exposed: s.unexposed, unexposed: s.exposed, events: s.events }));
    expectNear(
      value(dataNeededForRatio(swapped, 0.5, trials)).growth,
      value(dataNeededForRatio(strata, 2, trials)).growth,
      1e-9,
    );
  });
});

describe('edges', () => {
  it('states why no ratio can be given', () => {
    expect(detectableRatio([], trials)).toMatchObject({
      computable: false,
      reason: expect.stringContaining('No stratum'),
    });
    expect(detectableRatio([{ exposed: 0, unexposed: 300, events: 4 }], trials)).toMatchObject({
      computable: false,
    });
    // One event, 30 of 330 days exposed: even an exposed event has p = 30 / 330 > 0.025.
    expect(detectableRatio([{ exposed: 30, unexposed: 300, events: 1 }], trials)).toMatchObject({
      computable: false,
      reason: expect.stringContaining('most extreme'),
    });
    expect(
      value(dataNeededForRatio([{ exposed: 30, unexposed: 300, events: 1 }], 2, trials)).attainable,
    ).toBe(false);
  });
  it('attainable looks to the side of the ratio', () => {
    // One event, 9 of 10 days exposed (180 of 200): p = 0.1 where it is unexposed, 0.9 where exposed. Two
    // such: 0.01.
    const stratum = { exposed: 180, unexposed: 20, events: 1 };
    const attainable = (ratio: number) =>
      value(dataNeededForRatio([stratum, stratum], ratio, trials)).attainable;
    expect(attainable(2)).toBe(false);
    expect(attainable(0.5)).toBe(true);
  });
  it('a million trials', () => {
    const { ratio } = value(
      detectableRatio([{ exposed: 1_000_000, unexposed: 1_000_000, events: 1_000_000 }], trials),
    );
    expect(ratio).toBeGreaterThan(1.007);
    expect(ratio).toBeLessThan(1.009); // 2.8 standard errors of 0.00283 on the log scale
  });
  it('refuses what cannot be', () => {
    expect(() => detectableRatio([{ exposed: 3, unexposed: 3, events: 7 }], trials)).toThrow(RangeError);
    expect(() => detectableRatio([{ exposed: 3.5, unexposed: 3, events: 1 }], trials)).toThrow(RangeError);
    expect(() => detectableRatio([], { ...trials, varianceInflation: 0.5 })).toThrow('varianceInflation');
    expect(() => dataNeededForRatio([], 1, trials)).toThrow('ratio');
  });
});
