import { groupBy } from '../../group-by.ts';
import { normalMultiplier, normalQuantile } from '../../statistics/distributions/normal.ts';
import { type PowerLawIntensity, powerLawIntensity } from '../../statistics/recurrent/power-law-intensity.ts';
import type { RecurrentCell } from '../../statistics/recurrent/recurrent-cells.ts';
import type { Outcome } from '../../statistics/result.ts';
import { cellsOf } from './clock-cells.ts';
import type { Clock, ClockOutcome } from './clocks.ts';
import type { ShapeFit } from './interval-schema.ts';
import { countOf, type SpellDays } from './spell-days.ts';
import type { RecordReading, Spell } from './spells.ts';

/** A unit between two events that reset its baseline: what shares one frailty. */
export interface Cluster {
  unit: string;
  site: string;
  era: number;
  spells: Spell[];
}

/** Days at risk of a cluster, by spell. */
export const daysOf = ({ spells }: Pick<Cluster, 'spells'>): SpellDays[] => spells.map((spell) => spell.days);

/** Spells by unit and era, in their order. */
export function clustersOf(spells: readonly Spell[]): Cluster[] {
  return [...groupBy(spells, (spell) => `${spell.unit}\u0000${spell.era}`).values()].map((of) => ({
    unit: of[0]!.unit,
    site: of[0]!.site,
    era: of[0]!.era,
    spells: of,
  }));
}

export interface Fitted {
  clock: Clock;
  outcome: ClockOutcome;
  clusters: Cluster[];
  /** Cells of each cluster. */
  cells: RecurrentCell[][];
  fit: Outcome<PowerLawIntensity>;
}

/** Fits the intensity of an outcome on a clock. */
export function fitShape(clusters: Cluster[], clock: Clock, outcome: ClockOutcome, level: number): Fitted {
  const cells = clusters.map((cluster) => cellsOf(daysOf(cluster), clock, outcome));
  return { clock, outcome, clusters, cells, fit: powerLawIntensity(cells, { level }) };
}

/** Shape whose absence the case would like to be able to exclude: a hazard that rises with the square root of the clock (our choice). */
export const SHAPE_OF_INTEREST = 1.5;

/**
 * A fit as the case prints it, with what the record could have shown: the smallest shape above 1 seen with this power, and how many times the record it would
 * take to see the shape of interest; both from the standard error of the log shape, which falls with the square root of the record.
 */
export function describeFit(
  fitted: Fitted,
  reading: RecordReading,
  settings: { alpha: number; power: number },
): ShapeFit {
  const { clock, outcome, clusters, fit } = fitted;
  const base = {
    outcome,
    clock,
    reading,
    ...countOf(clusters.flatMap(daysOf), outcome),
    spells: clusters.reduce((total, cluster) => total + cluster.spells.length, 0),
    clusters: clusters.length,
  };
  if (!fit.computable) return { ...base, ...NOTHING, method: fit.method, not_computable: fit.reason };
  const reach = normalMultiplier(1 - settings.alpha) + normalQuantile(1 - settings.power, 'upper');
  const error = fit.logShapeError;
  return {
    ...base,
    shape: fit.shape,
    low: fit.interval.low,
    high: Number.isFinite(fit.interval.high) ? fit.interval.high : null,
    likelihood_ratio: fit.testOfShape1.likelihoodRatio,
    p: fit.testOfShape1.pValue,
    scale: fit.scale,
    rate: fit.rate,
    spread: fit.spread,
    smallest_detectable_shape: error === null ? null : Math.exp(reach * error),
    data_needed_factor: error === null ? null : ((reach * error) / Math.log(SHAPE_OF_INTEREST)) ** 2,
    method: fit.method,
    not_computable: null,
  };
}

const NOTHING = {
  shape: null,
  low: null,
  high: null,
  likelihood_ratio: null,
  p: null,
  scale: null,
  rate: null,
  spread: null,
  smallest_detectable_shape: null,
  data_needed_factor: null,
};
