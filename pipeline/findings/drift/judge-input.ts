import type { Rules } from '../../site/rules.ts';
import type { AdjustedSeries } from './adjusted-series.ts';
import { EVIDENCE } from './evidence.ts';
import type { JudgeInput } from './judge-series.ts';
import type { PooledNoise } from './pool-noise.ts';
import { median } from './robust.ts';

/** Probes with values once a week or so are judged from half as many values. */
const SELDOM_DAYS = 5;
/** A change smaller than this many steps of the record can't be told from rounding. */
const COARSE_STEPS = 1.5;

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
    leastChange: COARSE_STEPS * series.resolution,
    leastValues: isSeldom(t) ? Math.ceil(rules.least_values / 2) : rules.least_values,
    leastRate: series.comparedWith === 'several' ? EVIDENCE.leastRate : EVIDENCE.leastRateAlone,
    leastMeasuredStep: series.comparedWith === 'one' ? EVIDENCE.leastMeasured : Number.NEGATIVE_INFINITY,
  };
}

function isSeldom(t: readonly number[]): boolean {
  const gap = median(t.slice(1).map((day, i) => day - t[i]!));
  return gap !== undefined && gap >= SELDOM_DAYS;
}
