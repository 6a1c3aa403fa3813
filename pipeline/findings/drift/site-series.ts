import type { Rules } from '../../site/rules.ts';
import { type AdjustedSeries, adjustSeries, teethOf } from './adjusted-series.ts';
import { type CommonMovement, commonMovement } from './common-movement.ts';
import type { EraSeries } from './era-series.ts';
import { judgeInput } from './judge-input.ts';
import { likelyShape } from './judge-series.ts';
import { type PooledNoise, poolNoise } from './pool-noise.ts';
import { sensitivities } from './sensitivity.ts';

/** All series of one probe at one site, made comparable. */
export interface SiteSeries {
  /** The site's movement, from all units; without days at a site with two. */
  common: CommonMovement;
  /** The movement that was taken out of each series: that of the site's other units. */
  commonOf: CommonMovement[];
  adjusted: AdjustedSeries[];
  noises: PooledNoise[];
}

const PASSES = 3;
const PAIR = 2;
/** Units up to which each is left out of the movement that is taken from it: of more, one hardly bends it, and working out one for each takes with the cube of their number. */
const MOST_LEFT_OUT = 40;
/** Of the movements of single units, those are taken out in a pass that are at least so clear as this share of the clearest. */
const CLEAR_SHARE = 0.3;

/**
 * Takes the common movement out of a probe's series at a site.
 *
 * In passes: what single units did in the pass before (steps, slopes, teeth) is taken out before the common movement is worked out again. Otherwise one unit's step bends
 * the common movement, and with it all others. The clearest movements go first, since the others may be their mirror images. In the end each
 * unit is compared with the others alone: a common movement in which it takes part itself would follow it, and would take the first reading of what it
 * does (a step, a slope) for granted. What is taken out is the movement as strongly as the unit feels it.
 *
 * At a site with two units each is compared with the other, of which only teeth are taken out: the difference of the two does not say which of them moved. The values as measured do, in which a
 * movement or step must show.
 */
export function siteSeries(series: readonly EraSeries[], rules: Rules['drift']): SiteSeries {
  const units = series.map((of) => of.history.unit);
  const distinct = new Set(units);
  const pair = distinct.size === PAIR;
  const least = pair ? PAIR : rules.least_units;
  let own: Map<number, number>[] = series.map(() => new Map());
  let common = commonMovement(
    series.map((of) => of.days),
    units,
    least,
  );
  const without = (own: readonly Map<number, number>[]) =>
    series.map((of, i) =>
      own[i]!.size === 0 ? of.days : of.days.map(({ day, y }) => ({ day, y: y - (own[i]!.get(day) ?? 0) })),
    );
  for (let pass = 0; pass < PASSES && common.days.length > 0; pass++) {
    const adjusted = series.map((of) => adjustSeries(of, common, rules.memory_days));
    const noises = poolNoise(adjusted);
    const shapes = adjusted.map((one, i) => ownMovement(one, noises[i]!, rules, pair));
    const clearest = Math.max(0, ...shapes.map((shape) => shape.gain).filter(Number.isFinite));
    own = shapes.map(({ moved, gain }) => (gain >= CLEAR_SHARE * clearest ? moved : new Map()));
    if (own.every((moved) => moved.size === 0)) break;
    common = commonMovement(without(own), units, least);
  }
  const cleared = without(own);
  const others = new Map(
    [...distinct].map((unit) => [
      unit,
      common.days.length === 0 || distinct.size > MOST_LEFT_OUT
        ? common
        : commonMovement(
            cleared.map((days, i) => (units[i] === unit ? [] : days)),
            units,
            least - 1,
          ),
    ]),
  );
  const commonOf = units.map((unit) => others.get(unit)!);
  const alike = series.map((of, i) => adjustSeries(of, commonOf[i]!, rules.memory_days));
  const felt = sensitivities(alike, commonOf, poolNoise(alike));
  const adjusted = series.map((of, i) => adjustSeries(of, commonOf[i]!, rules.memory_days, felt[i]));
  return { common: pair ? { ...common, days: [] } : common, commonOf, adjusted, noises: poolNoise(adjusted) };
}

/** What a unit did by itself, by day, or its teeth alone; empty where it was steady. */
function ownMovement(
  series: AdjustedSeries,
  noise: PooledNoise,
  rules: Rules['drift'],
  teethAlone: boolean,
): { moved: Map<number, number>; gain: number } {
  // The whole era, not only what is in memory: an old step bends the common movement as well.
  const { values } = series;
  const input = {
    ...judgeInput(series, noise, rules),
    t: values.map((of) => of.day),
    y: values.map((of, i) => (i < series.memory ? of.y : series.noise.y[i - series.memory]!)),
    w: values.map((of) => of.weight),
  };
  const moved = new Map<number, number>();
  const found = teethAlone ? null : likelyShape(input);
  if (found) for (const [i, day] of input.t.entries()) moved.set(day, found.shape[i]!);
  const teeth = teethOf(series);
  for (const [day, tooth] of teeth) moved.set(day, (moved.get(day) ?? 0) + tooth);
  return { moved, gain: teeth.size > 0 ? Number.POSITIVE_INFINITY : (found?.gain ?? 0) };
}
