import { ageReplacementRates } from '../../statistics/replacement/age-replacement-rates.ts';
import type { Clock } from './clocks.ts';
import type { Inputs } from './inputs-in-force.ts';
import type { Pace } from './pace.ts';

/** An intensity: expected events up to clock t are rate x t^shape per chance. */
export interface Intensity {
  shape: number;
  rate: number;
}

/** Intensities from which expectations are made. */
export interface Intensities {
  failures: Intensity;
  aborts: Intensity;
}

/** What a failure does to the clock. */
export type AfterFailure = 'clock_goes_on' | 'cleaned';

/** A unit with its own level: its frailty among the units. */
export interface UnitLevel {
  pace: Pace;
  failures: number;
  aborts: number;
}

/** Expectations of a year. */
export interface Year {
  cleanings: number;
  failures: number;
  aborts: number;
  hours: { cleanings: number; failures: number; aborts: number; total: number };
  labour_hours: number;
  cleaner_litres: number;
  retests: number;
  delayed_loads: number;
  cost: { cleanings: number; failures: number; aborts: number; total: number };
}

/**
 * Expected year of some units cleaned every `interval` ticks of the clock.
 *
 * Where the clock goes on after a failure (minimal repair) there are ticks / T cleanings, and rate x T^shape failures between two of them for each unit of
 * chance. Where each failure brings a cleaning (age replacement) a spell ends at T or at its first failure: with R the chance to get to T and m the mean length, there are
 * ticks / m spells, each with one cleaning and 1 - R failures. Aborts never move the clock; their mean intensity over a spell of the
 * full length is taken in both cases.
 *
 * Source: R. E. Barlow & L. C. Hunter, Operations Research 8 (1960) 90-100, policies I and II.
 */
export function expectedYear(
  units: readonly UnitLevel[],
  clock: Clock,
  interval: number,
  { failures, aborts }: Intensities,
  after: AfterFailure,
  inputs: Inputs,
): Year {
  const growth = failures.rate * interval ** (failures.shape - 1);
  const abortGrowth = aborts.rate * interval ** (aborts.shape - 1);
  let cleanings = 0;
  let failed = 0;
  let aborted = 0;
  for (const { pace, failures: level, aborts: abortLevel } of units) {
    // Days not at risk are taken as without chance.
    const yearly = level * growth * (clock === 'cycles' ? pace.cycles_at_risk : pace.test_days);
    if (after === 'clock_goes_on' || yearly === 0) {
      cleanings += pace.ticks / interval;
      failed += yearly;
    } else {
      const { shape } = failures;
      const scale = interval * ((yearly * interval) / pace.ticks) ** (-1 / shape);
      const { meanCycle, failures: perTick } = ageReplacementRates({ shape, scale, age: interval });
      cleanings += pace.ticks / meanCycle;
      failed += pace.ticks * perTick;
    }
    aborted += abortLevel * abortGrowth * pace.production;
  }
  return yearOf(cleanings, failed, aborted, inputs);
}

/** Hours, material and money of so many cleanings, failures and aborts. */
function yearOf(cleanings: number, failures: number, aborts: number, inputs: Inputs): Year {
  const perCleaning = hoursPerCleaning(inputs);
  const hours = {
    cleanings: cleanings * perCleaning,
    failures: failures * inputs.hours_out_of_use,
    aborts: aborts * inputs.hours_per_abort,
  };
  const labour = inputs.people * (inputs.work_minutes / 60);
  const litres = cleanerMl(inputs) / 1000;
  const cost = {
    cleanings:
      cleanings *
      (perCleaning * inputs.hour_out_of_use +
        labour * inputs.labour_hour +
        litres * inputs.cleaner_litre +
        inputs.other_per_cleaning),
    failures:
      failures *
      (inputs.hours_out_of_use * inputs.hour_out_of_use +
        inputs.retests * inputs.retest +
        inputs.repair_per_failure +
        inputs.delayed_loads * inputs.delayed_load),
    aborts: aborts * (inputs.hours_per_abort * inputs.hour_out_of_use + inputs.abort),
  };
  return {
    cleanings,
    failures,
    aborts,
    hours: { ...hours, total: hours.cleanings + hours.failures + hours.aborts },
    labour_hours: cleanings * labour,
    cleaner_litres: cleanings * litres,
    retests: failures * inputs.retests,
    delayed_loads: failures * inputs.delayed_loads,
    cost: { ...cost, total: cost.cleanings + cost.failures + cost.aborts },
  };
}

/** Hours out of use of a cleaning: cool-down, work, warm-up, air-removal test. */
export function hoursPerCleaning(inputs: Inputs): number {
  return inputs.cool_down_hours + (inputs.work_minutes + inputs.warm_up_minutes + inputs.test_minutes) / 60;
}

/** Cleaner of a cleaning, ml: dose x water of the fillings. Half a US fluid ounce a gallon in 1.5 l is 5.86 ml. */
export function cleanerMl(inputs: Inputs): number {
  return inputs.cleaner_ml_per_litre * inputs.sprayer_litres * inputs.fillings;
}
