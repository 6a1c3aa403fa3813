import { describe, expect, it } from 'vitest';
import { empiricalBayesNormal } from '../../../pipeline/statistics/ranking/empirical-bayes-normal.ts';
import { expectNear, value } from '../computable.ts';
import { reasonOrFail } from '../computed-or-fail.ts';

// Coaching in eight schools: Rubin (1981); Gelman and others, Bayesian Data Analysis, 3rd ed. (2013) table 5.2.
const schools = [
  [28, 15],
  [8, 10],
  [-3, 16],
  [7, 11],
  [-1, 9],
  [1, 11],
  [18, 10],
  [12, 18],
].map(([estimate, standardError]) => ({ estimate: estimate!, standardError: standardError! }));

// R 4.2.2: the spread on a grid of 4000 points (flat), the mean integrated out in closed form, quantiles of the mixture by uniroot.
const FROM_R = [
  [11.399756, -2.105024, 31.620506],
  [7.894549, -4.659137, 20.661462],
  [6.131022, -11.480378, 20.45895],
  [7.644698, -5.694476, 20.861326],
  [5.126614, -8.904111, 16.468604],
  [6.138694, -8.55798, 18.591977],
  [10.666756, -1.161106, 25.969158],
  [8.45671, -7.076898, 25.577625],
];

describe('normal-normal shrinkage', () => {
  it('of the eight schools agrees with the book and with R', () => {
    const fit = value(empiricalBayesNormal(schools));
    // The book: pooled effect 7.7, and a marginal density of the spread that is highest at 0 (figure 5.5).
    expect(fit.mean).toBeCloseTo(7.7, 1);
    expect(fit.spread).toBe(0);
    for (const [i, [estimate, low, high]] of FROM_R.entries()) {
      // 120 spreads here, 4000 there.
      expectNear(fit.units[i]!.estimate, estimate!, 1e-5);
      expectNear(fit.units[i]!.interval.low, low!, 1e-5);
      expectNear(fit.units[i]!.interval.high, high!, 1e-5);
    }
    // Medians of the book's table 5.3 from 200 draws, school A 10 and E 5: the means lie near.
    expect(fit.units[0]!.estimate).toBeGreaterThan(9);
    expect(fit.units[4]!.estimate).toBeLessThan(6);
  });

  it('leaves estimates alone that are exact beside their spread', () => {
    const fit = value(
      empiricalBayesNormal([
        { estimate: -5, standardError: 0.01 },
        { estimate: 0, standardError: 0.01 },
        { estimate: 5, standardError: 0.01 },
      ]),
    );
    expect(fit.units[2]!.estimate).toBeCloseTo(5, 3);
    // Three values -5, 0, 5: maximum-likelihood standard deviation sqrt(50 / 3).
    expectNear(fit.spread, Math.sqrt(50 / 3), 1e-4);
    expect(fit.heterogeneity.pValue).toBeLessThan(1e-6);
  });

  it('states what it can’t compute', () => {
    expect(reasonOrFail(empiricalBayesNormal(schools.slice(0, 1)))).toMatch(/fewer than two/);
    expect(() => empiricalBayesNormal([{ estimate: 1, standardError: 0 }])).toThrow(RangeError);
  });
});
