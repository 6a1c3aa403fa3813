import { findRoot } from '../distributions/find-root.ts';
import { chiSquareQuantile, chiSquareTail } from '../distributions/gamma.ts';
import { normalTail } from '../distributions/normal.ts';
import { checkLevel } from '../intervals/check-proportion.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { bestRateAndSpread } from './gamma-frailty.ts';
import { atShape, checkCells, type FlatCells, flatten, type RecurrentCell } from './recurrent-cells.ts';

export interface PowerLawIntensity {
  /** Shape of the intensity rate x shape x t^(shape - 1): above 1 it rises with the clock. */
  shape: number;
  /** Profile-likelihood interval of the shape; an end may be Infinity where the events stand at the end of every cell. */
  interval: Interval;
  /** Likelihood-ratio test of shape 1, one degree of freedom; `pGreater` is one-sided against shapes above 1 (signed root). */
  testOfShape1: { likelihoodRatio: number; pValue: number; pGreater: number };
  /** Expected events of a cluster of frailty 1 up to clock 1, per weight: its expectation up to t is rate x t^shape. */
  rate: number;
  /** Clock at which one event is expected: rate^(-1/shape). The scale of the Weibull distribution with this hazard. */
  scale: number;
  /** Standard deviation of the clusters' frailties, whose mean is 1; 0 where no spread beyond chance is found. */
  spread: number;
  /** Standard error of the log of the shape, from the curvature of the profile likelihood; null where it can't be had. */
  logShapeError: number | null;
  logLikelihood: number;
  events: number;
  /** For each cluster: its events, its expectation at frailty 1, and its frailty given both (posterior mean). */
  clusters: { events: number; expected: number; frailty: number }[];
}

const LEAST_SHAPE = 0.05;
const LARGEST_SHAPE = 20;

/**
 * Power-law (Weibull) intensity of recurrent events on a clock that starts anew, with a gamma frailty for each cluster.
 *
 * Estimated: shape and rate of the intensity frailty x rate x shape x t^(shape - 1), t on the clock. The first event of a spell then has a Weibull
 * distribution; after an event that does not restart the clock the intensity goes on from where it was (minimal repair), so that the next observation is left
 * truncated at its entry. An observation that ends without an event is right censored. Events are known to a cell, not to a point: a cell's count is Poisson with mean
 * frailty x rate x weight x (exit^shape - entry^shape). Assumed: given its frailty a cluster's cells are independent; observation ends for reasons in its
 * past (a stop because of an event is allowed, as nothing is conditioned on the number of events); frailties are gamma
 * with mean 1 and integrated out, so that clusters that always fail more speak for no shape.
 *
 * Interval and test are of the profile likelihood, rate and spread maximised anew at each shape. Shapes are sought from 0.05 to 20.
 *
 * Edges: fewer than two events, or cells that all cover the same stretch of the clock, are not computable. Where the likelihood still rises at 20 (every
 * event at the latest clock there is) the shape is not computable: no maximum.
 *
 * @param clusters - cells of each cluster (a unit, or a unit between repairs); clock and weight in any unit, the same for all
 * @param options - `level` of the interval, default 0.95
 * @throws RangeError for cells that can't be
 *
 * Source: power-law process: L. H. Crow, "Reliability analysis for complex, repairable systems", in Reliability and Biometry (SIAM 1974) 379-410; grouped
 * counts and gamma frailty: J. F. Lawless, Technometrics 29 (1987) 1-12 and JASA 82 (1987) 808-815; R. J. Cook & J. F. Lawless, The Statistical Analysis of Recurrent
 * Events (2007) ch. 3.
 *
 * @example One cluster, 20 items until their first failure or 500 h (NIST/SEMATECH e-Handbook 8.4.1): shape 1.7208, scale 606.53
 */
export function powerLawIntensity(
  clusters: readonly (readonly RecurrentCell[])[],
  options: { level?: number } = {},
): Outcome<PowerLawIntensity> {
  const { level = 0.95 } = options;
  const method = 'power-law intensity with gamma frailty, cells of the clock, profile likelihood';
  checkLevel(level, 'powerLawIntensity');
  checkCells(clusters, 'powerLawIntensity');
  const used = clusters.filter((cells) => cells.length > 0);
  const events = used.reduce((sum, cells) => sum + cells.reduce((of, cell) => of + cell.events, 0), 0);
  if (events < 2) return notComputable(method, 'There are fewer than two events.');
  if (!clockVaries(used))
    return notComputable(method, 'All observation covers the same stretch of the clock.');
  const flat = flatten(used);
  const profile = profileOf(flat);
  const peak = highest(profile);
  if (peak > Math.log(LARGEST_SHAPE) - 1e-3 || peak < Math.log(LEAST_SHAPE) + 1e-3)
    return notComputable(method, 'The likelihood has no maximum: all events stand at one end of the clock.');
  const top = profile(peak);
  const drop = chiSquareQuantile(1 - level, 1, 'upper') / 2;
  const likelihoodRatio = Math.max(0, 2 * (top.logLikelihood - profile(0).logLikelihood));
  const shape = Math.exp(peak);
  const rate = Math.exp(top.logRate) / flat.reference ** shape;
  const { exposure } = atShape(flat, shape);
  const h = 1e-3;
  const curvature =
    (2 * top.logLikelihood - profile(peak - h).logLikelihood - profile(peak + h).logLikelihood) / (h * h);
  const given = clusters.map((cells) => (cells.length > 0 ? used.indexOf(cells) : -1));
  return computed(method, {
    shape,
    interval: {
      low: bound(profile, peak, Math.log(LEAST_SHAPE), top.logLikelihood - drop, 0),
      high: bound(profile, peak, Math.log(LARGEST_SHAPE), top.logLikelihood - drop, Number.POSITIVE_INFINITY),
      level,
    },
    testOfShape1: {
      likelihoodRatio,
      pValue:
        likelihoodRatio > 0 ? Math.max(Number.MIN_VALUE, chiSquareTail(likelihoodRatio, 1, 'upper')) : 1,
      pGreater: normalTail(Math.sign(peak) * Math.sqrt(likelihoodRatio), 'upper'),
    },
    rate,
    scale: rate ** (-1 / shape),
    spread: top.spread,
    logShapeError: curvature > 0 ? Math.sqrt(1 / curvature) : null,
    logLikelihood: top.logLikelihood,
    events,
    clusters: given.map((index) => {
      if (index < 0) return { events: 0, expected: 0, frailty: 1 };
      const expected = Math.exp(top.logRate) * exposure[index]!;
      const dispersion = top.spread * top.spread;
      return {
        events: flat.eventsOf[index]!,
        expected,
        frailty: (1 + dispersion * flat.eventsOf[index]!) / (1 + dispersion * expected),
      };
    }),
  });
}

type Profile = (logShape: number) => { logLikelihood: number; logRate: number; spread: number };

function profileOf(flat: FlatCells): Profile {
  const seen = new Map<number, ReturnType<Profile>>();
  const total = flat.eventsOf.reduce((sum, d) => sum + d, 0);
  return (logShape) => {
    const known = seen.get(logShape);
    if (known) return known;
    const { exposure, placing } = atShape(flat, Math.exp(logShape));
    const whole = exposure.reduce((sum, of) => sum + of, 0);
    const best = bestRateAndSpread({ events: flat.eventsOf, exposure }, Math.log(total / whole));
    const place = placing.reduce((sum, of) => sum + of, 0);
    const found = { ...best, logLikelihood: best.logLikelihood + place };
    seen.set(logShape, found);
    return found;
  };
}

/** Log of the shape of highest profile likelihood: best of a grid, then golden section about it. */
function highest(profile: Profile): number {
  const [from, to, steps] = [Math.log(LEAST_SHAPE), Math.log(LARGEST_SHAPE), 24];
  const width = (to - from) / steps;
  let best = from;
  for (let i = 1; i <= steps; i++) {
    const at = from + i * width;
    if (profile(at).logLikelihood > profile(best).logLikelihood) best = at;
  }
  let low = Math.max(from, best - width);
  let high = Math.min(to, best + width);
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [high - share * (high - low), low + share * (high - low)];
  while (high - low > 1e-9) {
    if (profile(a).logLikelihood >= profile(b).logLikelihood) {
      high = b;
      b = a;
      a = high - share * (high - low);
    } else {
      low = a;
      a = b;
      b = low + share * (high - low);
    }
  }
  return (low + high) / 2;
}

function bound(profile: Profile, peak: number, limit: number, line: number, beyond: number): number {
  const excess = (at: number) => profile(at).logLikelihood - line;
  if (excess(limit) >= 0) return beyond;
  return Math.exp(findRoot(excess, peak, limit, 1e-10));
}

/** Whether any two cells cover different stretches: else any shape explains them alike. */
function clockVaries(clusters: readonly (readonly RecurrentCell[])[]): boolean {
  const first = clusters[0]?.[0];
  return clusters.some((cells) =>
    cells.some((cell) => cell.entry !== first!.entry || cell.exit !== first!.exit),
  );
}
