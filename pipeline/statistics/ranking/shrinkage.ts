import { findRoot } from '../distributions/find-root.ts';
import { chiSquareTail } from '../distributions/gamma.ts';
import type { Tail } from '../distributions/tail.ts';
import type { Interval } from '../result.ts';

/**
 * A two-level model of units: each unit's true value spreads about a common mean, and its count spreads about
 * its value.
 */
export interface TwoLevelModel {
  units: number;
  /** Largest spread considered; spreads run from 0. */
  largestSpread: number;
  /** Log marginal likelihood of all units; `location` is the mean on a scale without bounds. */
  logLikelihood(location: number, spread: number): number;
  /** Derivative of the log-likelihood in the location (any factor above 0 allowed); falls with it. */
  slope(location: number, spread: number): number;
  /** Information on the location. */
  information(location: number, spread: number): number;
  /** Where to begin the search for the location. */
  pooledLocation: number;
  /**
   * Mean and variance of a unit's true value given its count, and the derivative of that mean in the
   * location.
   */
  posterior(
    unit: number,
    location: number,
    spread: number,
  ): { mean: number; variance: number; slope: number };
  /** Tail of a distribution with this mean and variance, of the family of the true values. */
  tail(x: number, mean: number, variance: number, tail: Tail): number;
  /** From the scale without bounds to that of the true values. */
  valueAt(location: number): number;
}

export interface Shrinkage {
  /** Maximum-likelihood mean of the true values, on the scale without bounds. */
  location: number;
  /** Maximum-likelihood spread of the true values. */
  spread: number;
  logLikelihood: number;
  /** Likelihood ratio of no spread at all. */
  heterogeneity: { likelihoodRatio: number; pValue: number };
  units: { estimate: number; interval: Interval; plugIn: number }[];
}

const STEPS = 120;

/**
 * Fits a two-level model by marginal maximum likelihood and shrinks each unit's value towards the mean.
 *
 * The plug-in estimates put in the maximum-likelihood mean and spread. With few units the spread is poorly
 * known, and often estimated as 0; intervals that took it for known would be too narrow, or of no width.
 * Estimate and interval are therefore the mean and quantiles of the unit's posterior averaged over spreads,
 * each weighted by its likelihood with the mean integrated out (flat in the spread, which is a standard
 * deviation, and in the location). The mean's uncertainty enters by its first-order variance, the posterior
 * at each spread by a distribution of the family with the same mean and variance.
 *
 * Source: C. N. Morris, JASA 78 (1983) 47-55; B. P. Carlin & T. A. Louis, Bayesian Methods for Data Analysis,
 * 3rd ed. (2009) ch. 5; flat prior on the standard deviation: A. Gelman, Bayesian Analysis 1 (2006) 515-533.
 * Heterogeneity: half-and-half mixture of chi-squares with 0 and 1 degrees of freedom, S. G. Self & K.-Y.
 * Liang, JASA 82 (1987) 605-610.
 */
export function fitShrinkage(model: TwoLevelModel, level: number): Shrinkage {
  const profile = (spread: number) => {
    const location = locationAt(model, spread);
    return { spread, location, logLikelihood: model.logLikelihood(location, spread) };
  };
  const grid = Array.from({ length: STEPS + 1 }, (_, i) => profile((model.largestSpread * i) / STEPS));
  const best = grid.reduce((a, b) => (b.logLikelihood > a.logLikelihood ? b : a));
  const width = model.largestSpread / STEPS;
  const maximum = goldenMaximum(
    profile,
    Math.max(0, best.spread - width),
    Math.min(model.largestSpread, best.spread + width),
  );
  const none = grid[0]!;
  // A gain of this size is rounding: no spread.
  const top = maximum.logLikelihood > none.logLikelihood + 1e-9 ? maximum : none;
  const likelihoodRatio = 2 * (top.logLikelihood - none.logLikelihood);
  const components = weightedSpreads(model, profile, top);
  return {
    location: top.location,
    spread: top.spread,
    logLikelihood: top.logLikelihood,
    heterogeneity: {
      likelihoodRatio,
      pValue:
        likelihoodRatio > 0 ? Math.max(Number.MIN_VALUE, chiSquareTail(likelihoodRatio, 1, 'upper') / 2) : 1,
    },
    units: Array.from({ length: model.units }, (_, unit) => ({
      ...average(model, unit, components, level),
      plugIn: model.posterior(unit, top.location, top.spread).mean,
    })),
  };
}

function locationAt(model: TwoLevelModel, spread: number): number {
  const slope = (location: number) => model.slope(location, spread);
  let reach = 0.5;
  while (slope(model.pooledLocation - reach) <= 0 || slope(model.pooledLocation + reach) >= 0) reach *= 2;
  return findRoot(slope, model.pooledLocation - reach, model.pooledLocation + reach, 1e-12);
}

interface Profile {
  spread: number;
  location: number;
  logLikelihood: number;
}

/**
 * Golden-section search; the profile is taken to have one maximum between neighbouring points of the grid.
 */
function goldenMaximum(profile: (spread: number) => Profile, low: number, high: number): Profile {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [left, right] = [profile(b - share * (b - a)), profile(a + share * (b - a))];
  for (let i = 0; i < 60; i++) {
    if (left.logLikelihood >= right.logLikelihood) {
      b = right.spread;
      right = left;
      left = profile(b - share * (b - a));
    } else {
      a = left.spread;
      left = right;
      right = profile(a + share * (b - a));
    }
  }
  return left.logLikelihood >= right.logLikelihood ? left : right;
}

interface Component {
  weight: number;
  location: number;
  spread: number;
  locationVariance: number;
}

/** Spreads at the middles of equal steps over the range that has likelihood, weighted by it. */
function weightedSpreads(
  model: TwoLevelModel,
  profile: (spread: number) => Profile,
  top: Profile,
): Component[] {
  /** Below 0 where a spread is more than 15 log-likelihood units under the best. */
  const margin = (spread: number) => profile(spread).logLikelihood - top.logLikelihood + 15;
  const high =
    margin(model.largestSpread) >= 0
      ? model.largestSpread
      : findRoot(margin, top.spread, model.largestSpread, 1e-3);
  const raw = Array.from({ length: STEPS }, (_, i) => {
    const { spread, location, logLikelihood } = profile(((i + 0.5) / STEPS) * high);
    const locationVariance = 1 / model.information(location, spread);
    const weight = Math.exp(logLikelihood - top.logLikelihood) * Math.sqrt(locationVariance);
    return { weight, location, spread, locationVariance };
  });
  const sum = raw.reduce((total, component) => total + component.weight, 0);
  return raw
    .filter((component) => component.weight > 1e-8 * sum)
    .map((component) => ({ ...component, weight: component.weight / sum }));
}

/** Mean and interval of a unit's posterior, averaged over spreads. */
function average(model: TwoLevelModel, unit: number, components: Component[], level: number) {
  const alpha = (1 - level) / 2;
  const parts = components.map(({ weight, location, spread, locationVariance }) => {
    const { mean, variance, slope } = model.posterior(unit, location, spread);
    return { weight, mean, variance: variance + slope * slope * locationVariance };
  });
  const bound = (tail: Tail) => {
    const excess = (location: number) => {
      const x = model.valueAt(location);
      return parts.reduce(
        (sum, part) => sum + part.weight * model.tail(x, part.mean, part.variance, tail),
        -alpha,
      );
    };
    let reach = 1;
    const towards = tail === 'lower' ? 1 : -1;
    while (
      excess(model.pooledLocation + towards * reach) <= 0 ||
      excess(model.pooledLocation - towards * reach) >= 0
    ) {
      reach *= 2;
      if (reach > 500) return tail === 'lower' ? model.valueAt(-500) : model.valueAt(500);
    }
    return model.valueAt(findRoot(excess, model.pooledLocation - reach, model.pooledLocation + reach, 1e-10));
  };
  return {
    estimate: parts.reduce((sum, part) => sum + part.weight * part.mean, 0),
    interval: { low: bound('lower'), high: bound('upper'), level },
  };
}
