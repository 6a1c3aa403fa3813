import gammaln from '@stdlib/math-base-special-gammaln';
import { gammaTail } from '../distributions/gamma.ts';
import { sumOfLogs } from '../distributions/rising-sums.ts';
import { checkLevel } from '../intervals/check-proportion.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { fitShrinkage, type TwoLevelModel } from './shrinkage.ts';

export interface ShrunkenUnit {
  /** Events over exposure (or trials); undefined where there is none. */
  raw: number | undefined;
  /** Posterior mean, averaged over what the spread may be. */
  estimate: number;
  interval: Interval;
  /** Posterior mean at the maximum-likelihood mean and spread: the classical empirical Bayes estimate. */
  plugIn: number;
  /** Weight of the common mean in the plug-in estimate, 0 to 1. */
  shrinkage: number;
}

export interface ShrunkenUnits {
  /** Mean of the true values over units. */
  mean: number;
  /**
   * Spread of the true values: for rates their standard deviation over the mean, for proportions the square
   * root of the intraclass correlation.
   */
  spread: number;
  logLikelihood: number;
  /**
   * Test of no spread beyond chance: likelihood ratio, half-and-half mixture of chi-squares with 0 and 1
   * degrees of freedom.
   */
  heterogeneity: { likelihoodRatio: number; pValue: number };
  units: ShrunkenUnit[];
}

/**
 * Rates of many units, shrunk towards their mean: gamma-Poisson model, marginal maximum likelihood.
 *
 * Estimated: each unit's true rate. Model: events are Poisson given the unit's rate; rates follow a gamma
 * distribution. Units with little exposure are drawn to the mean most, so that a list in this order is not
 * led by the smallest units. Assumed: units exchangeable before their events are seen, independent Poisson
 * events. Estimates and intervals average over what the spread may be (see `fitShrinkage`).
 *
 * Edges: a unit without exposure gets the mean and the spread of units. Where no spread beyond chance is
 * found (`spread` 0) all plug-in estimates are the common rate. Fewer than two units with exposure, or no
 * event at all, is not computable. With few units (under about five) the intervals lean on the flat prior of
 * the spread, which is limited to 5.
 *
 * @param units - events (whole numbers) and exposure (any unit, the same for all)
 * @param options - `level` of the intervals, default 0.95
 * @throws RangeError for events or exposures that can't be
 *
 * Source: R. J. Marshall, Applied Statistics 40 (1991) 283-294; D. Clayton & J. Kaldor, Biometrics 43 (1987)
 * 671-681; D. P. Gaver & I. G. O'Muircheartaigh, Technometrics 29 (1987) 1-15.
 *
 * @example Ten pumps (Gaver & O'Muircheartaigh 1987): mean 0.6523, shape 0.8230 (spread 1.1023)
 */
export function empiricalBayesRates(
  units: readonly { events: number; exposure: number }[],
  options: { level?: number } = {},
): Outcome<ShrunkenUnits> {
  const { level = 0.95 } = options;
  const method = 'gamma-Poisson shrinkage, marginal maximum likelihood, posteriors averaged over the spread';
  checkLevel(level, 'empiricalBayesRates');
  for (const [i, { events, exposure }] of units.entries()) {
    const valid =
      Number.isSafeInteger(events) && events >= 0 && exposure >= 0 && exposure < Number.POSITIVE_INFINITY;
    if (!valid || (exposure === 0 && events > 0)) {
      throw new RangeError(
        `empiricalBayesRates: unit ${i} can't have ${events} events in exposure ${exposure}`,
      );
    }
  }
  const exposed = units.filter((unit) => unit.exposure > 0);
  const events = units.reduce((sum, unit) => sum + unit.events, 0);
  if (exposed.length < 2) return notComputable(method, 'Fewer than two units have exposure.');
  if (events === 0) return notComputable(method, 'There are no events.');
  // Dispersion is the squared spread: the variance of the true rates over their squared mean.
  const sum = (term: (unit: { events: number; exposure: number }) => number) =>
    exposed.reduce((total, unit) => total + term(unit), 0);
  const model: TwoLevelModel = {
    units: units.length,
    largestSpread: 5,
    pooledLocation: Math.log(events / sum((unit) => unit.exposure)),
    logLikelihood(location, spread) {
      const dispersion = spread * spread;
      return sum(({ events: d, exposure }) => {
        const mean = exposure * Math.exp(location);
        const base = sumOfLogs(1, dispersion, d) + d * Math.log(mean) - gammaln(d + 1);
        if (dispersion === 0) return base - mean;
        return base - (d + 1 / dispersion) * Math.log1p(dispersion * mean);
      });
    },
    slope: (location, spread) =>
      sum(({ events: d, exposure }) => {
        const mean = exposure * Math.exp(location);
        return (d - mean) / (1 + spread * spread * mean);
      }),
    information: (location, spread) =>
      sum(({ events: d, exposure }) => {
        const mean = exposure * Math.exp(location);
        return (mean * (1 + spread * spread * d)) / (1 + spread * spread * mean) ** 2;
      }),
    posterior(unit, location, spread) {
      const { events: d, exposure } = units[unit]!;
      const dispersion = spread * spread;
      const rate = Math.exp(location);
      const shrink = 1 / (1 + dispersion * rate * exposure);
      const mean = (1 + dispersion * d) * rate * shrink;
      return { mean, variance: mean * dispersion * rate * shrink, slope: mean * shrink };
    },
    tail: (x, mean, variance, tail) => gammaTail((x * mean) / variance, (mean * mean) / variance, tail),
    valueAt: Math.exp,
  };
  const { location, spread, ...fit } = fitShrinkage(model, level);
  const mean = Math.exp(location);
  return computed(method, {
    ...fit,
    mean,
    spread,
    units: units.map((unit, i) => ({
      raw: unit.exposure > 0 ? unit.events / unit.exposure : undefined,
      ...fit.units[i]!,
      shrinkage: 1 / (1 + spread * spread * mean * unit.exposure),
    })),
  });
}
