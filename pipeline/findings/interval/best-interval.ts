import type { Best } from './argument-schema.ts';
import { percentiles } from './bootstrap.ts';
import type { Intensities } from './expected.ts';
import { bestOf, gridUpTo, type Setting, totalOf, yearAt } from './interval-grid.ts';
import type { IntervalCase } from './interval-schema.ts';

/** Share of the best value within which an interval counts as near the best (the value is flat about its best; our choice). */
export const NEAR_SHARE = 0.05;
/** Level of the bootstrap interval of the best interval that widens the range to print. */
const RANGE_LEVEL = 0.9;

export interface Chosen {
  best: Best;
  curve: IntervalCase['curve'];
}

/**
 * The best interval up to the longest that may be proposed, and the range to print with it: intervals whose value lies within 5 % of the best, and those that
 * are best in the middle 90 % of the bootstrap samples.
 */
export function chooseInterval(
  setting: Setting,
  estimate: Intensities,
  samples: readonly Intensities[],
  options: { longest: number; inForce: number | null; level: number },
): Chosen {
  const grid = gridUpTo(options.longest);
  const values = grid.map((interval) => totalOf(yearAt(setting, interval, estimate), setting.objective));
  const drawn = samples.map((sample) =>
    grid.map((interval) => totalOf(yearAt(setting, interval, sample), setting.objective)),
  );
  const top = bestOf(grid, values, NEAR_SHARE);
  const bests = percentiles(
    drawn.map((of) => bestOf(grid, of, 0).best),
    RANGE_LEVEL,
  );
  const low = Math.min(top.low, Math.floor(bests.low ?? top.low));
  const high = Math.max(top.high, Math.ceil(bests.high ?? top.high));
  const { inForce } = options;
  const best: Best = {
    interval: top.best,
    value: top.value,
    near_low: top.low,
    near_high: top.high,
    low,
    high,
    at_longest: top.best === options.longest,
    value_in_force: inForce === null ? null : totalOf(yearAt(setting, inForce, estimate), setting.objective),
    advice:
      inForce === null
        ? 'none_in_force'
        : inForce > high
          ? 'earlier'
          : inForce < low
            ? 'longer_within_instructions'
            : 'keep',
  };
  const curve = grid.map((interval, index) => {
    const spread = percentiles(
      drawn.map((of) => of[index]!),
      options.level,
    );
    return {
      interval,
      value: values[index]!,
      low: spread.low ?? values[index]!,
      high: spread.high ?? values[index]!,
    };
  });
  return { best, curve };
}
