import { normalTail } from '../distributions/normal.ts';
import { checkLevel } from '../intervals/check-proportion.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import type { ShrunkenUnits } from './empirical-bayes-rates.ts';
import { fitShrinkage, type TwoLevelModel } from './shrinkage.ts';

/**
 * Estimates of many units with known standard errors, shrunk towards their mean: normal-normal model, marginal maximum likelihood.
 *
 * Estimated: each unit's true value. Model: an estimate is normal about its true value with the given standard error; true values are normal about a common mean. Meant for
 * logs of ratios, of shapes and the like. Assumed: units exchangeable before their estimates are seen; standard errors known. Estimates and intervals average over what
 * the spread may be (see `fitShrinkage`); `spread` is the standard deviation of the true values, looked for up to four times that of the estimates.
 *
 * Edges: fewer than two units is not computable. With few units (under about five) the intervals lean on the flat prior of the spread.
 *
 * @param units - estimate and standard error (above 0) of each
 * @param options - `level` of the intervals, default 0.95
 * @throws RangeError for estimates that are not finite and errors that are not above 0
 *
 * Source: D. B. Rubin, Journal of Educational Statistics 6 (1981) 377-401; C. N. Morris, JASA 78 (1983) 47-55; A. Gelman and others, Bayesian Data Analysis,
 * 3rd ed. (2013) section 5.4.
 */
export function empiricalBayesNormal(
  units: readonly { estimate: number; standardError: number }[],
  options: { level?: number } = {},
): Outcome<ShrunkenUnits> {
  const { level = 0.95 } = options;
  const method = 'normal-normal shrinkage, marginal maximum likelihood, posteriors averaged over the spread';
  checkLevel(level, 'empiricalBayesNormal');
  for (const [i, { estimate, standardError }] of units.entries()) {
    if (!Number.isFinite(estimate) || !(standardError > 0 && standardError < Number.POSITIVE_INFINITY)) {
      throw new RangeError(
        `empiricalBayesNormal: unit ${i} can't have estimate ${estimate} with standard error ${standardError}`,
      );
    }
  }
  if (units.length < 2) return notComputable(method, 'There are fewer than two units.');
  const mean = units.reduce((sum, unit) => sum + unit.estimate, 0) / units.length;
  const widest = Math.max(
    ...units.map((unit) => Math.max(Math.abs(unit.estimate - mean), unit.standardError)),
  );
  const sum = (term: (estimate: number, variance: number) => number, spread: number) =>
    units.reduce((total, unit) => total + term(unit.estimate, unit.standardError ** 2 + spread * spread), 0);
  const model: TwoLevelModel = {
    units: units.length,
    largestSpread: 4 * widest,
    pooledLocation: mean,
    logLikelihood: (location, spread) =>
      sum((y, v) => -0.5 * (Math.log(2 * Math.PI * v) + (y - location) ** 2 / v), spread),
    slope: (location, spread) => sum((y, v) => (y - location) / v, spread),
    information: (_, spread) => sum((_y, v) => 1 / v, spread),
    posterior(unit, location, spread) {
      const { estimate, standardError } = units[unit]!;
      const own = standardError ** 2;
      const weight = own / (own + spread * spread);
      return {
        mean: weight * location + (1 - weight) * estimate,
        variance: weight * spread * spread,
        slope: weight,
      };
    },
    tail(x, mean_, variance, tail) {
      if (variance > 0) return normalTail((x - mean_) / Math.sqrt(variance), tail);
      return (tail === 'lower' ? x >= mean_ : x <= mean_) ? 1 : 0;
    },
    valueAt: (location) => location,
  };
  const { location, spread, ...fit } = fitShrinkage(model, level);
  return computed(method, {
    ...fit,
    mean: location,
    spread,
    units: units.map((unit, i) => ({
      raw: unit.estimate,
      ...fit.units[i]!,
      shrinkage: unit.standardError ** 2 / (unit.standardError ** 2 + spread * spread),
    })),
  });
}
