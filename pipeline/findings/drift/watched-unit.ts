import { type Day, formatDay } from '../../site/day.ts';
import type { Rules } from '../../site/rules.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import type { Drift, UnitDrift } from './drift-schema.ts';
import { type EraSeries, eraSeries } from './era-series.ts';
import { heatUpPasses } from './heat-up-passes.ts';
import { wetBefore, wetWorks } from './leak-after-cleaning.ts';
import { alarmLimit, configuredLimit, type ProbeLimit } from './limit-of-probe.ts';
import type { Probe } from './probes.ts';
import { rounded } from './robust.ts';
import { driftEvents } from './unit-drift.ts';

/** What is taken of a unit's history to watch it beside the others of its site. */
export interface WatchedUnit {
  unit: string;
  site: string;
  series: EraSeries[];
  /** Limits that are stated, or shown by the unit's own aborts, of each probe that has a series. */
  limits: ReadonlyMap<Probe, ProbeLimit[]>;
  events: UnitDrift['events'];
  heat_up_passes: Drift['heat_up_passes'];
  leak_tests_after_cleaning: Drift['leak_tests_after_cleaning'];
}

/** @param until first operating day that is left out */
export function watchedUnit(history: UnitHistory, rules: Rules, until: Day): WatchedUnit {
  const { drift } = rules;
  const series = eraSeries(history, until, drift.wet_hours);
  const probes = new Set(series.map((of) => of.probe));
  return {
    unit: history.unit,
    site: history.site,
    series,
    limits: new Map([...probes].map((probe) => [probe, limitsOf(history, probe, rules, until)])),
    events: driftEvents(history, until),
    heat_up_passes:
      rules.heat_up_limits === 'off' ? [] : heatUpPasses(history, until, drift.heat_up_deviations),
    leak_tests_after_cleaning: wetLeakTests(history, until, drift.wet_hours),
  };
}

const limitsOf = (history: UnitHistory, probe: Probe, rules: Rules, until: Day): ProbeLimit[] =>
  [
    configuredLimit(history, probe, until, rules.leak_limit_kpa_min),
    alarmLimit(history, probe, until),
  ].filter((limit) => limit !== null);

function wetLeakTests(history: UnitHistory, until: Day, hours: number): Drift['leak_tests_after_cleaning'] {
  const works = wetWorks(history);
  return history.leak_tests.flatMap((test) => {
    const wet = test.day < until ? wetBefore(works, test, hours) : null;
    return wet
      ? [
          {
            unit: history.unit,
            date: formatDay(test.day),
            leak_rate_kpa_min: rounded(test.leak_rate_kpa_min),
            ...wet,
          },
        ]
      : [];
  });
}
