import { intervalCase } from '../../pipeline/findings/interval/interval-case.ts';
import { transform } from '../../pipeline/transform/transform.ts';
import type { IntervalScenario } from './interval-scenarios.ts';
import { simulateIntervalFleet, trueBest } from './interval-simulate.ts';

/** What the case said of one simulated fleet, beside what was true. */
export interface IntervalResult {
  answer: 'supported' | 'not_supported' | 'cannot_tell';
  failures: number;
  shape: number | null;
  /** Whether the interval of the shape holds the true shape. */
  shapeCovered: boolean | null;
  best: number | null;
  /** Whether the printed range, and the range within 5 % alone, hold the true best interval. */
  inRange: boolean | null;
  inNearRange: boolean | null;
  rangeWidth: number | null;
}

export function runIntervalFleet(scenario: IntervalScenario, seed: number): IntervalResult {
  const { site, records, until } = simulateIntervalFleet(scenario, seed);
  const { panel, histories } = transform(site, records, until);
  const found = intervalCase(histories, panel, site, records, until);
  const fit = found.fits[0]!;
  const truth = trueBest(scenario);
  const { best } = found;
  const holds = (low: number, high: number) => low - 0.5 <= truth && truth <= high + 0.5;
  return {
    answer: found.answer.code,
    failures: fit.events,
    shape: fit.shape,
    shapeCovered:
      fit.low === null
        ? null
        : fit.low <= scenario.shape && scenario.shape <= (fit.high ?? Number.POSITIVE_INFINITY),
    best: best?.interval ?? null,
    inRange: best && holds(best.low, best.high),
    inNearRange: best && holds(best.near_low, best.near_high),
    rangeWidth: best && best.high - best.low,
  };
}
