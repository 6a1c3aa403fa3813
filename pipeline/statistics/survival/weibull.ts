import { findRoot } from '../distributions/find-root.ts';
import { chiSquareQuantile, chiSquareTail } from '../distributions/gamma.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { maximiseNear } from './maximise.ts';
import { checkSurvivalData } from './survival-data.ts';
import { weibullErrors } from './weibull-errors.ts';
import {
  bestScale,
  likelihoodAt,
  powerSum,
  profileAt,
  type WeibullInput,
  type WeibullStratum,
  weibullStrata,
} from './weibull-likelihood.ts';

export interface WeibullScale {
  stratum: string;
  subjects: number;
  events: number;
  /**
   * Age by which 63.2 % have had the event, in the unit of the durations; null for a stratum without events,
   * which only bounds it from below.
   */
  scale: number | null;
  interval: Interval;
  /** Standard error of the logarithm of the scale; null without events. */
  logScaleError: number | null;
}

export interface Weibull {
  /** Above 1: the hazard rises with age; 1: constant; under 1: it falls. */
  shape: number;
  shapeInterval: Interval;
  /** Standard error of the logarithm of the shape. */
  logShapeError: number;
  scales: WeibullScale[];
  logLikelihood: number;
  /** Likelihood-ratio test against shape 1, a constant hazard in each stratum; 1 degree of freedom. */
  shapeOne: { logLikelihood: number; statistic: number; pValue: number };
  subjects: number;
  events: number;
}

/**
 * Steps of a quarter in log shape: beyond 0.007 or 150 a shape describes nothing, and powers lose their
 * digits.
 */
const SHAPE_STEPS = 20;

/**
 * Weibull distribution of ages at an event by maximum likelihood: survival exp(-(t/scale)^shape), right
 * censoring and left truncation allowed.
 *
 * Assumes that hazard is a power of age, censoring and late entry say nothing about the event to come, and
 * independent subjects. With strata: one shape, a scale for each (frailer and stronger units), so that a
 * mixture of units isn't read as a falling hazard.
 *
 * Conventions: shape and scale, not log-scale; intervals by profile likelihood (chi-square with 1 degree of
 * freedom), which are right in small samples where Wald's aren't; standard errors of the logarithms from the
 * observed information. R's survreg has scale = 1/shape, intercept = log(scale).
 *
 * Edges, as stated outcomes: fewer than 2 events; a shape that grows without bound (all events at the end of
 * watching, say) or falls to 0. An end of an interval that the likelihood doesn't bound is 0 or Infinity.
 *
 * @throws RangeError as `checkSurvivalData`; if a duration with an event is 0, weights or strata differ in
 * length, a weight is negative, or level isn't in (0, 1)
 *
 * Source: Kalbfleisch and Prentice, The Statistical Analysis of Failure Time Data, 2nd ed. (2002), chapter 3;
 * left truncation: Klein and Moeschberger, Survival Analysis, 2nd ed. (2003), section 3.5; profile intervals:
 * Meeker and Escobar, Statistical Methods for Reliability Data (1998), chapter 8.
 *
 * @example
 * weibull({ durations: [54, 187, 216, 240, 500, 500], observed: [1, 1, 1, 1, 0, 0] }); // shape 1.175, scale 411.7
 */
export function weibull(input: WeibullInput): Outcome<Weibull> {
  const method = 'Weibull by maximum likelihood, profile-likelihood intervals';
  const { level = 0.95 } = input;
  checkInput(input, level);
  const strata = weibullStrata(input);
  const events = strata.reduce((sum, s) => sum + s.events, 0);
  if (events < 2) return notComputable(method, `${events} events are too few for a shape; 2 are needed.`);

  const profile = (logShape: number) => strata.reduce((sum, s) => sum + profileAt(s, Math.exp(logShape)), 0);
  const peak = maximiseNear(profile, 0, 0.25, 1e-5, SHAPE_STEPS);
  if (peak === null) {
    const where = profile(1) > profile(0) ? 'grows without bound' : 'falls to 0';
    return notComputable(method, `The likelihood has no maximum: the shape ${where}.`);
  }
  const shape = Math.exp(refine(strata, peak.at));
  const logLikelihood = profile(Math.log(shape));
  const drop = chiSquareQuantile(1 - level, 1, 'upper') / 2;

  const shapeInterval = intervalAround(Math.log(shape), level, (u) => logLikelihood - profile(u) - drop);
  const errors = weibullErrors(strata, shape);
  const scaleOf = strata.map((stratum) => bestScale(stratum, shape));
  if (
    !Number.isFinite(errors.logShape) ||
    scaleOf.some((scale) => scale === 0 || scale === Number.POSITIVE_INFINITY)
  ) {
    return notComputable(method, 'The likelihood is flat near shape 0, where a scale has no meaning.');
  }
  const scales = strata.map((stratum, at): WeibullScale => {
    const scale = scaleOf[at]!;
    const others = strata.filter((s) => s !== stratum);
    const shortfall = (logScale: number) => {
      const given = (u: number) =>
        likelihoodAt(stratum, Math.exp(u), Math.exp(logScale)) +
        others.reduce((sum, s) => sum + profileAt(s, Math.exp(u)), 0);
      const best = maximiseNear(given, Math.log(shape), 0.25, 1e-7, 80);
      return best === null ? Number.POSITIVE_INFINITY : logLikelihood - best.value - drop;
    };
    // Without events the likelihood rises with the scale for ever: only the lower end exists.
    const start = Math.log(scale ?? 1000 * stratum.longest);
    const interval = intervalAround(start, level, shortfall, scale === null);
    return {
      stratum: stratum.name,
      subjects: stratum.subjects,
      events: stratum.events,
      scale,
      interval,
      logScaleError: errors.logScale[at] ?? null,
    };
  });
  const atOne = profile(0);
  const statistic = Math.max(0, 2 * (logLikelihood - atOne));
  return computed(method, {
    shape,
    shapeInterval,
    logShapeError: errors.logShape,
    scales,
    logLikelihood,
    shapeOne: { logLikelihood: atOne, statistic, pValue: chiSquareTail(statistic, 1, 'upper') },
    subjects: input.durations.length,
    events,
  });
}

/**
 * The root of the profile's slope next to the peak found, in log shape: more digits than a search on values
 * can give.
 */
function refine(strata: readonly WeibullStratum[], logShape: number): number {
  const slope = (u: number) => {
    const shape = Math.exp(u);
    let sum = 0;
    for (const s of strata) {
      if (s.weight === 0) continue;
      sum += s.weight * (1 / shape - powerSum(s, shape, 1) / powerSum(s, shape, 0)) + s.logTimes;
    }
    return sum;
  };
  let reach = 1e-3;
  while (reach < 1 && slope(logShape - reach) * slope(logShape + reach) > 0) reach *= 4;
  return findRoot(slope, logShape - reach, logShape + reach, 1e-13);
}

/** Steps of a half in the logarithm: an end over 3000 times away counts as unbounded. */
const INTERVAL_STEPS = 16;

/**
 * Where a shortfall of log-likelihood, under 0 at the start, crosses 0 on either side; 0 and Infinity where
 * it never does.
 */
function intervalAround(
  start: number,
  level: number,
  shortfall: (logarithm: number) => number,
  upwardOpen = false,
): Interval {
  const end = (direction: 1 | -1): number | null => {
    let inside = start;
    for (let i = 0; i < INTERVAL_STEPS; i += 1) {
      const outside = inside + direction * 0.5;
      if (shortfall(outside) > 0) return findRoot(shortfall, inside, outside, 1e-10);
      inside = outside;
    }
    return null;
  };
  const low = end(-1);
  const high = upwardOpen ? null : end(1);
  return {
    low: low === null ? 0 : Math.exp(low),
    high: high === null ? Number.POSITIVE_INFINITY : Math.exp(high),
    level,
  };
}

function checkInput(input: WeibullInput, level: number): void {
  const { durations, weights, strata } = input;
  checkSurvivalData('weibull', input);
  if (!(level > 0 && level < 1))
    throw new RangeError(`weibull: level must be between 0 and 1, found ${level}.`);
  for (const [name, list] of [
    ['weights', weights],
    ['strata', strata],
  ] as const) {
    if (list !== undefined && list.length !== durations.length) {
      throw new RangeError(
        `weibull: ${name} must be as many as durations, found ${list.length} and ${durations.length}.`,
      );
    }
  }
  for (const [i, duration] of durations.entries()) {
    if (duration === 0) throw new RangeError(`weibull: durations[${i}] must be above 0, found 0.`);
    const weight = weights?.[i] ?? 1;
    if (!Number.isFinite(weight) || weight < 0) {
      throw new RangeError(`weibull: weights[${i}] must be 0 or more, found ${weight}.`);
    }
  }
}
