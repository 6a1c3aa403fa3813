import type { CycleKind } from '../../pipeline/site/vocabulary.ts';
import type { CommonMovement } from './common-movement.ts';
import type { Phases } from './history.ts';
import type { Stream } from './random.ts';
import { saturationPressure } from './saturation.ts';
import type { UnitPlan } from './scenario.ts';
import { DRIFT, driftShare, SAW_TOOTH } from './unit-stories.ts';

const NOISE = 0.024;

/** What a complete cycle of a kind takes and reaches, on a day of a unit. Seconds are whole, temperatures to 0.1 C, pressures to 0.1 kPa. */
export function phasesOf(
  plan: UnitPlan,
  kind: CycleKind,
  day: number,
  daysSinceFlush: number,
  common: CommonMovement,
  draw: Stream,
): Phases {
  const drift = plan.id === DRIFT.unit ? driftShare(day) : 0;
  const saw = plan.id === SAW_TOOTH.unit ? 1 + SAW_TOOTH.exhaustPerDay * daysSinceFlush : 1;
  const noise = () => Math.exp(NOISE * draw.normal());
  const load = kind === 'production' ? 1.06 + 0.22 * draw.float() : 1;
  const evacuation = Math.round(
    plan.evacuation * common.evacuation * (1 + DRIFT.evacuation * drift) * load * noise(),
  );
  if (kind === 'leak_test') return { evacuation };
  const heatUp = plan.heatUp * common.heatUp * (1 + DRIFT.heatUp * drift) * load * load * noise();
  const exhaust = Math.round(plan.exhaust * common.exhaust * saw * (1 + DRIFT.exhaust * drift) * noise());
  if (kind === 'liquids') {
    return {
      heatUp: Math.round(heatUp * (5.5 + 2 * draw.float())),
      exposure: 1800,
      exhaust: exhaust * 7,
      ...steam(121.3, plan, draw),
    };
  }
  return {
    evacuation,
    heatUp: Math.round(heatUp * (kind === 'warm_up' ? 1.12 : 1)),
    exposure: EXPOSURE[kind] ?? 240,
    exhaust,
    ...drying(kind, draw),
    ...steam(134.2, plan, draw),
  };
}

const EXPOSURE: Partial<Record<CycleKind, number>> = { warm_up: 180, air_removal_test: 210 };

/** Longest part of a cycle that no phase counts: purge, pulses, air break. */
const LEAD = 180;
const PULSES = 360;
const TAIL = 75;
const LEAK_HOLD = 900;

/** Seconds from start to end of a complete cycle. */
export function lengthOf(kind: CycleKind, phases: Phases): number {
  const { evacuation = 0, heatUp = 0, exposure = 0, exhaust = 0, drying: dry = 0 } = phases;
  const pulses = kind === 'leak_test' ? LEAK_HOLD : kind === 'liquids' ? 0 : PULSES;
  return LEAD + evacuation + pulses + heatUp + exposure + exhaust + dry + TAIL;
}

/** Temperatures in exposure and the saturated pressure at their middle, within about 0.15 K. */
function steam(low: number, plan: UnitPlan, draw: Stream): Phases {
  const min = round1(low + 0.06 * draw.normal());
  const max = round1(min + 0.3 + 0.3 * draw.float());
  const offset = ((plan.counter % 7) - 3) * 0.012;
  const pressure = saturationPressure((min + max) / 2 + offset + 0.03 * draw.normal());
  return {
    temperatureMin: min,
    temperatureMax: max,
    pressure: round1(pressure),
    drainTemperature: round1(min - 0.5 - 0.2 * draw.float()),
  };
}

function drying(kind: CycleKind, draw: Stream): Phases {
  if (kind === 'production' || kind === 'qualification')
    return { drying: 60 * draw.int(18, 27), dryVacuum: round1(3.8 + 0.9 * draw.float()) };
  return kind === 'air_removal_test' ? { drying: 60 } : {};
}

const round1 = (value: number): number => Math.round(value * 10) / 10;
