import type { Day } from '../../site/day.ts';
import type { CycleKind } from '../../site/vocabulary.ts';
import { saturationResidual } from '../../steam/saturation-residual.ts';
import type { ClassedCycle } from '../../transform/cycles/class-cycles.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { PROBE_META, PROBES, type Probe } from './probes.ts';

/** One value of a probe, from one empty cycle or one leak test. */
export interface ProbeValue {
  day: Day;
  /** Start of the cycle, or time of the leak test. */
  at: number;
  kind: CycleKind;
  /** In the probe's measure. */
  value: number;
}

/** Values of a unit's probes, each list in order of time; days of the cycles that should have given one, and of those that did not. */
export type ProbeValues = Record<
  Probe,
  { values: ProbeValue[]; cycles: number; cycleDays: Day[]; missingDays: Day[] }
>;

/**
 * Takes the probes from a unit's empty cycles: of each operating day the first completed cycle of each kind. Later ones of the day start
 * from another state (hot walls after production, a retest after work on the unit), so that they are left out.
 *
 * A time of 0 s is a missing value. The saturation residual is the middle of the exposure temperatures minus the saturation temperature
 * at the exposure pressure (IAPWS-IF97 region 4); where pressure is outside the equation's range there is none.
 */
export function probeValues(history: UnitHistory, until: Day): ProbeValues {
  const result = Object.fromEntries(
    PROBES.map((probe) => [probe, { values: [], cycles: 0, cycleDays: [], missingDays: [] }]),
  ) as unknown as ProbeValues;
  const seen = new Set<string>();
  for (const cycle of history.cycles) {
    if (cycle.day >= until || cycle.standing !== 'completed') continue;
    if (cycle.kind !== 'air_removal_test' && cycle.kind !== 'warm_up' && cycle.kind !== 'leak_test') continue;
    const key = `${cycle.day} ${cycle.kind}`;
    if (seen.has(key)) continue;
    seen.add(key);
    for (const probe of PROBES) {
      if (probe === 'leak_rate' || !PROBE_META[probe].kinds.includes(cycle.kind)) continue;
      const value = measured(cycle, probe);
      if (cycle.kind !== 'leak_test') {
        result[probe].cycles++;
        result[probe].cycleDays.push(cycle.day);
        if (value === undefined) result[probe].missingDays.push(cycle.day);
      }
      if (value !== undefined)
        result[probe].values.push({ day: cycle.day, at: cycle.start, kind: cycle.kind, value });
    }
  }
  for (const test of history.leak_tests) {
    if (test.day >= until) continue;
    result.leak_rate.cycles++;
    result.leak_rate.values.push({
      day: test.day,
      at: test.time,
      kind: 'leak_test',
      value: test.leak_rate_kpa_min,
    });
  }
  return result;
}

function measured(cycle: ClassedCycle, probe: Probe): number | undefined {
  const { exposure_temperature_min_c: min, exposure_temperature_max_c: max } = cycle;
  switch (probe) {
    case 'evacuation_time':
      return cycle.evacuation_s || undefined;
    case 'heat_up_time':
      return cycle.heat_up_s || undefined;
    case 'exhaust_time':
      return cycle.exhaust_s || undefined;
    case 'exposure_spread':
      return min === undefined || max === undefined ? undefined : max - min;
    case 'saturation_residual': {
      if (min === undefined || max === undefined || cycle.exposure_pressure_kpa === undefined)
        return undefined;
      const residual = saturationResidual((min + max) / 2, cycle.exposure_pressure_kpa);
      return residual.computable ? residual.kelvin : undefined;
    }
    default:
      return undefined;
  }
}
