import { describe, expect, it } from 'vitest';
import { sumOfLogs, sumOfReciprocals } from '../../../pipeline/statistics/distributions/rising-sums.ts';
import { empiricalBayesProportions } from '../../../pipeline/statistics/ranking/empirical-bayes-proportions.ts';
import { empiricalBayesRates } from '../../../pipeline/statistics/ranking/empirical-bayes-rates.ts';
import { expectNear, value } from '../computable.ts';
import { readReference } from '../reference/read-reference.ts';

interface Case {
  events: number[];
  size: number[];
  mean: number;
  spread: number;
  log_likelihood: number;
  plug_in: number[];
  estimate: number[];
  low: number[];
  high: number[];
}
const [reference] = readReference<{ pumps: Case; aborts: Case; failures: Case }>('shrinkage');
const rates = (c: Case) =>
  empiricalBayesRates(c.events.map((events, i) => ({ events, exposure: c.size[i]! })));
const proportions = (c: Case) =>
  empiricalBayesProportions(c.events.map((events, i) => ({ events, trials: c.size[i]! })));

describe('against R 4.2.2 (reference/shrinkage.R)', () => {
  it.each([
    ['ten pumps, glm.nb', reference!.pumps, rates],
    ['eight rates, glm.nb', reference!.aborts, rates],
    ['eight proportions, optim', reference!.failures, proportions],
  ])('%s: maximum likelihood and plug-in estimates', (_, c, method) => {
    const result = value(method(c));
    // glm.nb and optim stop at about 1e-7.
    expectNear(result.mean, c.mean, 1e-6);
    expectNear(result.spread, c.spread, 2e-6);
    expectNear(result.logLikelihood, c.log_likelihood, 1e-10);
    for (const [i, unit] of result.units.entries()) expectNear(unit.plugIn, c.plug_in[i]!, 2e-6);
  });
  it('ten pumps: shape 0.82, as Gaver & O’Muircheartaigh (1987) print it (from memory)', () => {
    expect(1 / value(rates(reference!.pumps)).spread ** 2).toBeCloseTo(0.82, 2);
  });
  it.each([
    ['ten pumps', reference!.pumps, rates],
    ['eight rates', reference!.aborts, rates],
    ['eight proportions', reference!.failures, proportions],
  ])('%s: estimates and intervals near those of full quadrature over mean and spread', (_, c, method) => {
    for (const [i, unit] of value(method(c)).units.entries()) {
      // The approximations (first order in the mean, matched moments) are measured here: 2 % of the width, 5
      // % for the upper limit of units with one event.
      const width = c.high[i]! - c.low[i]!;
      expect(Math.abs(unit.estimate - c.estimate[i]!) / width).toBeLessThan(0.01);
      expect(Math.abs(unit.interval.low - c.low[i]!) / width).toBeLessThan(0.01);
      expect(Math.abs(unit.interval.high - c.high[i]!) / width).toBeLessThan(
        c.events[i]! <= 1 && c.size[i]! < 2 ? 0.05 : 0.02,
      );
    }
  });
});

describe('properties', () => {
  const units = [
    { events: 12, exposure: 900 },
    { events: 0, exposure: 40 },
    { events: 31, exposure: 1300 },
    { events: 2, exposure: 10 },
    { events: 7, exposure: 1100 },
  ];
  it('shrinks towards the mean, the smallest units most; the plug-in is the weighted mean of raw and common', () => {
    const { mean, units: found } = value(empiricalBayesRates(units));
    for (const unit of found) {
      expectNear(unit.plugIn, unit.shrinkage * mean + (1 - unit.shrinkage) * unit.raw!, 1e-10);
      expect(unit.interval.low).toBeLessThan(unit.estimate);
      expect(unit.interval.high).toBeGreaterThan(unit.estimate);
    }
    expect(found[3]!.shrinkage).toBeGreaterThan(found[2]!.shrinkage);
  });
  it('order of units changes nothing, nor does the unit of exposure', () => {
    const base = value(empiricalBayesRates(units));
    const turned = value(
      empiricalBayesRates(units.toReversed().map((u) => ({ events: u.events, exposure: u.exposure * 24 }))),
    );
    for (const [i, unit] of turned.units.toReversed().entries()) {
      expectNear(unit.estimate * 24, base.units[i]!.estimate, 1e-6);
      expectNear(unit.interval.high * 24, base.units[i]!.interval.high, 1e-6);
    }
    expectNear(turned.heterogeneity.pValue, base.heterogeneity.pValue, 1e-6);
  });
  it('events and non-events mirror', () => {
    const trials = [
      [3, 30],
      [9, 25],
      [1, 60],
      [12, 40],
    ] as const;
    const a = value(empiricalBayesProportions(trials.map(([events, n]) => ({ events, trials: n }))));
    const b = value(
      empiricalBayesProportions(trials.map(([events, n]) => ({ events: n - events, trials: n }))),
    );
    for (const [i, unit] of a.units.entries()) {
      expectNear(unit.estimate, 1 - b.units[i]!.estimate, 1e-6);
      expectNear(unit.interval.low, 1 - b.units[i]!.interval.high, 1e-6);
    }
  });
  it('rare events: proportions agree with rates', () => {
    const a = value(
      empiricalBayesProportions(units.map((u) => ({ events: u.events, trials: u.exposure * 1000 }))),
    );
    const b = value(
      empiricalBayesRates(units.map((u) => ({ events: u.events, exposure: u.exposure * 1000 }))),
    );
    for (const [i, unit] of a.units.entries()) expectNear(unit.plugIn, b.units[i]!.plugIn, 1e-3);
  });
});

describe('edges', () => {
  it('equal units: no spread, all plug-ins the common value, intervals about that of all events together', () => {
    const result = value(
      empiricalBayesRates(Array.from({ length: 6 }, () => ({ events: 5, exposure: 100 }))),
    );
    expect(result).toMatchObject({ spread: 0, heterogeneity: { likelihoodRatio: 0, pValue: 1 } });
    for (const unit of result.units) {
      expectNear(unit.plugIn, 0.05, 1e-9);
      // Wider than Garwood for 30 events (0.0337 to 0.0714), narrower than Garwood for the unit's own 5
      // (0.0162 to 0.1167).
      expect(unit.interval.low).toBeGreaterThan(0.0162);
      expect(unit.interval.low).toBeLessThan(0.0337);
      expect(unit.interval.high).toBeGreaterThan(0.0675);
      expect(unit.interval.high).toBeLessThan(0.1167);
    }
  });
  it('a unit without exposure gets the mean, and the widest interval', () => {
    const result = value(
      empiricalBayesRates([
        { events: 3, exposure: 100 },
        { events: 14, exposure: 120 },
        { events: 5, exposure: 90 },
        { events: 0, exposure: 0 },
      ]),
    );
    expect(result.units[3]!.raw).toBeUndefined();
    expectNear(result.units[3]!.plugIn, result.mean, 1e-12);
    const widths = result.units.map((u) => u.interval.high - u.interval.low);
    expect(Math.max(...widths)).toBe(widths[3]);
    expect(
      value(
        empiricalBayesProportions([
          { events: 3, trials: 10 },
          { events: 9, trials: 12 },
          { events: 0, trials: 0 },
        ]),
      ).units[2]!.raw,
    ).toBeUndefined();
  });
  it('a million events', () => {
    const result = value(
      empiricalBayesRates([
        { events: 1_000_000, exposure: 3e6 },
        { events: 1_003_000, exposure: 3e6 },
        { events: 990_000, exposure: 3e6 },
      ]),
    );
    expectNear(result.units[0]!.estimate, 1 / 3, 1e-3);
    expect(result.heterogeneity.pValue).toBeLessThan(1e-10);
  });
  it('states what it cannot compute, and refuses what cannot be', () => {
    expect(empiricalBayesRates([{ events: 3, exposure: 5 }])).toMatchObject({
      computable: false,
      reason: 'Fewer than two units have exposure.',
    });
    expect(
      empiricalBayesRates([
        { events: 0, exposure: 5 },
        { events: 0, exposure: 5 },
      ]),
    ).toMatchObject({ computable: false, reason: 'There are no events.' });
    expect(
      empiricalBayesProportions([
        { events: 5, trials: 5 },
        { events: 4, trials: 4 },
      ]),
    ).toMatchObject({ computable: false });
    expect(() => empiricalBayesRates([{ events: 1, exposure: 0 }])).toThrow(RangeError);
    expect(() => empiricalBayesProportions([{ events: 2, trials: 1 }])).toThrow(RangeError);
  });
});

describe('rising sums', () => {
  it('agree with adding up, near step 0 as well', () => {
    for (const a of [1e-4, 0.3, 1, 20]) {
      for (const step of [0, 1e-9, 0.01, 1, 40]) {
        for (const n of [0, 1, 7, 49, 51, 3000]) {
          let [logs, reciprocals] = [0, 0];
          for (let j = 0; j < n; j++) {
            logs += Math.log(a + j * step);
            reciprocals += 1 / (a + j * step);
          }
          expect(Math.abs(sumOfLogs(a, step, n) - logs)).toBeLessThan(
            1e-11 * (1 + Math.abs(logs)) + n * 1e-13,
          );
          expectNear(sumOfReciprocals(a, step, n), reciprocals, 1e-11);
        }
      }
    }
  });
});
