import { betaTail } from '../distributions/beta.ts';
import { sumOfLogs, sumOfReciprocals } from '../distributions/rising-sums.ts';
import { checkProportion } from '../intervals/check-proportion.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import type { ShrunkenUnits } from './empirical-bayes-rates.ts';
import { fitShrinkage, type TwoLevelModel } from './shrinkage.ts';

/**
 * Proportions of many units, shrunk towards their mean: beta-binomial model, marginal maximum likelihood.
 *
 * Estimated: each unit's true probability. Model: events are binomial given the unit's probability;
 * probabilities follow a beta distribution. Assumed: units exchangeable before their events are seen,
 * independent trials. Estimates and intervals average over what the spread may be (see `fitShrinkage`).
 *
 * Edges: a unit without trials gets the mean and the spread of units. Where no spread beyond chance is found
 * (`spread` 0) all plug-in estimates are the common proportion. Fewer than two units with trials, no event at
 * all, or nothing but events, is not computable. With few units (under about five) the intervals lean on the
 * flat prior of the spread.
 *
 * @param units - events and trials, whole numbers
 * @param options - `level` of the intervals, default 0.95
 * @throws RangeError for counts that can't be
 *
 * Source: D. A. Griffiths, Biometrics 29 (1973) 637-648; J. C. Kleinman, JASA 68 (1973) 46-54; intervals as
 * in `fitShrinkage`.
 */
export function empiricalBayesProportions(
  units: readonly { events: number; trials: number }[],
  options: { level?: number } = {},
): Outcome<ShrunkenUnits> {
  const { level = 0.95 } = options;
  const method = 'beta-binomial shrinkage, marginal maximum likelihood, posteriors averaged over the spread';
  for (const unit of units) checkProportion(unit.events, unit.trials, level, 'empiricalBayesProportions');
  const tried = units.filter((unit) => unit.trials > 0);
  const sum = (term: (unit: { events: number; trials: number }) => number) =>
    tried.reduce((total, unit) => total + term(unit), 0);
  const [events, trials] = [sum((unit) => unit.events), sum((unit) => unit.trials)];
  if (tried.length < 2) return notComputable(method, 'Fewer than two units have trials.');
  if (events === 0 || events === trials) {
    return notComputable(method, 'There must be at least one event and one non-event.');
  }
  const choose = sum(
    (unit) =>
      sumOfLogs(1, 1, unit.trials) -
      sumOfLogs(1, 1, unit.events) -
      sumOfLogs(1, 1, unit.trials - unit.events),
  );
  const probability = (location: number) => 1 / (1 + Math.exp(-location));
  /**
   * Step of the rising factorials: 1 over the sum of the beta shapes. The squared spread is step / (1 +
   * step).
   */
  const stepOf = (spread: number) => (spread * spread) / (1 - spread * spread);
  const slope = (location: number, spread: number) => {
    const [p, q, step] = [probability(location), probability(-location), stepOf(spread)];
    const slopeInP = sum(
      (u) => sumOfReciprocals(p, step, u.events) - sumOfReciprocals(q, step, u.trials - u.events),
    );
    return p * q * slopeInP;
  };
  const model: TwoLevelModel = {
    units: units.length,
    largestSpread: 0.99,
    pooledLocation: Math.log(events / (trials - events)),
    logLikelihood(location, spread) {
      const [p, q, step] = [probability(location), probability(-location), stepOf(spread)];
      return (
        choose +
        sum(
          (u) =>
            sumOfLogs(p, step, u.events) +
            sumOfLogs(q, step, u.trials - u.events) -
            sumOfLogs(1, step, u.trials),
        )
      );
    },
    slope,
    information: (location, spread) =>
      (slope(location - 1e-4, spread) - slope(location + 1e-4, spread)) / 2e-4,
    posterior(unit, location, spread) {
      const { events: x, trials: n } = units[unit]!;
      const [p, step] = [probability(location), stepOf(spread)];
      const mean = (p + step * x) / (1 + step * n);
      const variance = (mean * (1 - mean) * step) / (1 + step * (n + 1));
      return { mean, variance, slope: (p * (1 - p)) / (1 + step * n) };
    },
    tail(x, mean, variance, tail) {
      // A variance at its limit means that the mass lies at 0 and 1: a size near 0.
      const size = Math.max(1e-3, (mean * (1 - mean)) / variance - 1);
      return betaTail(x, mean * size, (1 - mean) * size, tail);
    },
    valueAt: probability,
  };
  const { location, spread, ...fit } = fitShrinkage(model, level);
  return computed(method, {
    ...fit,
    mean: probability(location),
    spread,
    units: units.map((unit, i) => ({
      raw: unit.trials > 0 ? unit.events / unit.trials : undefined,
      ...fit.units[i]!,
      shrinkage: 1 / (1 + stepOf(spread) * unit.trials),
    })),
  });
}
