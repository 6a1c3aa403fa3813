import type { Rules } from '../../site/rules.ts';
import type { AdjustedSeries } from './adjusted-series.ts';
import { EVIDENCE } from './evidence.ts';
import type { JudgeInput } from './judge-series.ts';
import type { PooledNoise } from './pool-noise.ts';
import { median } from './robust.ts';

/** Probes with values once a week or so are judged from half as many values. */
const SELDOM_DAYS = 5;
/** Where a record is coarse, a change smaller than this many of its steps can't be told from rounding. */
const COARSE_STEPS = 1.5;
/** A record is coarse where its noise is smaller than this many of its steps: what goes to and fro between two neighbouring values has a standard deviation of half a step at most. */
const FINE_FROM_STEPS = 0.6;

/** What `judgeSeries` needs of a series. */
export function judgeInput(series: AdjustedSeries, noise: PooledNoise, rules: Rules['drift']): JudgeInput {
  const watched = series.values.slice(series.memory);
  const t = watched.map((value) => value.day);
  return {
    t,
    y: series.noise.y,
    w: watched.map((value) => value.weight),
    measured: watched.map((value) => value.measured),
    spread: noise.spread,
    autocorrelation: noise.autocorrelation,
    leastChange: isCoarse(series) ? COARSE_STEPS * series.resolution : 0,
    leastValues: isSeldom(t) ? Math.ceil(rules.least_values / 2) : rules.least_values,
    leastRate: series.comparedWith === 'several' ? EVIDENCE.leastRate : EVIDENCE.leastRateAlone,
    leastMeasuredStep: series.comparedWith === 'one' ? EVIDENCE.leastMeasured : Number.NEGATIVE_INFINITY,
  };
}

function isSeldom(t: readonly number[]): boolean {
  const gap = median(t.slice(1).map((day, i) => day - t[i]!));
  return gap !== undefined && gap >= SELDOM_DAYS;
}

/**
 * Whether changes smaller than a step of the record hide in it. Where noise spans several steps they don't: the mean of values moves as finely as what was measured.
 *
 * By the standard deviation, not by the median absolute deviation, which reads two values in turn as 0.74 steps.
 *
 * Source: noise before rounding as dither: Wannamaker, Lipshitz, Vanderkooy and Wright, IEEE Transactions on Signal Processing 48 (2000) 499-516, from memory.
 */
function isCoarse({ noise, resolution }: AdjustedSeries): boolean {
  const squares = noise.rest.reduce((sum, value) => sum + value * value, 0);
  return Math.sqrt(squares / Math.max(1, noise.rest.length)) < FINE_FROM_STEPS * resolution;
}
