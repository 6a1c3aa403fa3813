import type { Rules } from '../../site/rules.ts';
import { type AdjustedSeries, adjustSeries, teethOf } from './adjusted-series.ts';
import { type CommonMovement, commonMovement } from './common-movement.ts';
import type { EraSeries } from './era-series.ts';
import { judgeInput } from './judge-input.ts';
import { judgeSeries, shapeOf } from './judge-series.ts';
import { type PooledNoise, poolNoise } from './pool-noise.ts';

/** All series of one probe at one site, made comparable. */
export interface SiteSeries {
  common: CommonMovement;
  adjusted: AdjustedSeries[];
  noises: PooledNoise[];
}

/**
 * Takes the common movement out of a probe's series at a site, in two passes: what single units did in the first pass (steps, slopes, teeth) is taken out before the
 * common movement is worked out again, so that one unit's step does not bend the others.
 */
export function siteSeries(series: readonly EraSeries[], rules: Rules['drift']): SiteSeries {
  const units = series.map((of) => of.history.unit);
  const first = adjusted(
    series,
    commonMovement(
      series.map((of) => of.days),
      units,
      rules.least_units,
    ),
    rules,
  );
  if (first.common.days.length === 0) return first;
  const shapes = first.adjusted.map((one, i) => ownMovement(one, first.noises[i]!, rules));
  if (shapes.every((shape) => shape.size === 0)) return first;
  return adjusted(
    series,
    commonMovement(
      series.map((of, i) => of.days.map((value) => ({ ...value, y: value.y - (shapes[i]!.get(value.day) ?? 0) }))),
      units,
      rules.least_units,
    ),
    rules,
  );
}

function adjusted(series: readonly EraSeries[], common: CommonMovement, rules: Rules['drift']): SiteSeries {
  const all = series.map((of) => adjustSeries(of, common, rules.memory_days));
  return { common, adjusted: all, noises: poolNoise(all) };
}

/** What a unit did by itself, by day; empty where it was steady. */
function ownMovement(series: AdjustedSeries, noise: PooledNoise, rules: Rules['drift']): Map<number, number> {
  const input = judgeInput(series, noise, rules);
  const judgement = judgeSeries(input);
  const moved = new Map<number, number>();
  if (judgement.steps.length === 0 && !judgement.slope && !series.sawTooth) return moved;
  const shape = shapeOf(judgement, input.t);
  for (const [i, day] of input.t.entries()) moved.set(day, shape[i]!);
  for (const [day, tooth] of teethOf(series)) moved.set(day, (moved.get(day) ?? 0) + tooth);
  return moved;
}
