import { type Day, formatDay } from '../../site/day.ts';
import { eraOf } from '../../transform/service/eras.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Drift } from './drift-schema.ts';
import { median, robustSpread } from './robust.ts';

const LEAST_CYCLES = 20;
/** A whole-minute clock can't tell less than half a minute. */
const SHARE_OF_STEP = 0.5;

/**
 * Passing air-removal tests whose heat-up time lies outside the unit's own limits: slow admission of steam heats and wets residual air and can hide it (PLoS ONE 2020, e0227943).
 *
 * Limits: median of the logarithms of the heat-up times of the era's test cycles, less and plus `sds` robust standard deviations (not less than half the record's step). Not
 * freed from the site's movement: where steam comes slowly to all units, all passes are in doubt. Eras with fewer than 20 such cycles have no limits.
 */
export function heatUpPasses(history: UnitHistory, until: Day, sds: number): Drift['heat_up_passes'] {
  const timed = history.cycles.filter(
    (cycle) =>
      cycle.day < until &&
      cycle.kind === 'air_removal_test' &&
      cycle.standing === 'completed' &&
      cycle.heat_up_s,
  );
  const limits = history.eras.map((era) => {
    const times = timed
      .filter((cycle) => cycle.day >= era.from && cycle.day <= era.to)
      .map((of) => of.heat_up_s!);
    if (times.length < LEAST_CYCLES) return null;
    const logs = times.map(Math.log);
    const centre = median(logs)!;
    const distinct = [...new Set(times)].sort((a, b) => a - b);
    const step = median(distinct.slice(1).map((value, i) => value - distinct[i]!)) ?? 0;
    const spread = Math.max(robustSpread(logs, centre)!, (SHARE_OF_STEP * step) / Math.exp(centre));
    return { low: Math.exp(centre - sds * spread), high: Math.exp(centre + sds * spread), spread };
  });
  return history.tests.flatMap((test) => {
    const heatUp = test.cycle?.heat_up_s;
    if (test.day >= until || test.result !== 'pass' || !heatUp) return [];
    const own = limits[eraOf(history.eras, test.day).index];
    if (!own || !(own.spread > 0) || (heatUp >= own.low && heatUp <= own.high)) return [];
    return [
      {
        unit: history.unit,
        date: formatDay(test.day),
        heat_up_s: heatUp,
        low_s: Math.round(own.low),
        high_s: Math.round(own.high),
        slow: heatUp > own.high,
      },
    ];
  });
}
