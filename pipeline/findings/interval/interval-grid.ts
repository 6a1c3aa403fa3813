import type { Clock } from './clocks.ts';
import { type AfterFailure, expectedYear, type Intensities, type UnitLevel, type Year } from './expected.ts';
import type { Inputs } from './inputs-in-force.ts';

/** What is to be made small: money where prices are given on both sides, else hours out of use. */
export type Objective = 'cost' | 'hours';

export const totalOf = (year: Year, objective: Objective): number =>
  objective === 'cost' ? year.cost.total : year.hours.total;

/** All that an expectation needs beside the interval and the intensities. */
export interface Setting {
  units: readonly UnitLevel[];
  clock: Clock;
  after: AfterFailure;
  inputs: Inputs;
  objective: Objective;
}

export const yearAt = (setting: Setting, interval: number, intensities: Intensities): Year =>
  expectedYear(setting.units, setting.clock, interval, intensities, setting.after, setting.inputs);

const MOST_STEPS = 120;

/** Intervals looked at: every whole number up to the longest, thinned to at most 120 with the longest kept. */
export function gridUpTo(longest: number): number[] {
  const step = Math.max(1, Math.ceil(longest / MOST_STEPS));
  const grid: number[] = [];
  for (let at = longest; at >= 1; at -= step) grid.push(at);
  return grid.reverse();
}

/** The interval of smallest value on the grid (of equals the longest), and those within `share` of it. */
export function bestOf(
  grid: readonly number[],
  values: readonly number[],
  share: number,
): { best: number; value: number; low: number; high: number } {
  let at = 0;
  for (let i = 1; i < grid.length; i++) if (values[i]! <= values[at]!) at = i;
  const line = values[at]! * (1 + share);
  let low = at;
  let high = at;
  while (low > 0 && values[low - 1]! <= line) low--;
  while (high < grid.length - 1 && values[high + 1]! <= line) high++;
  return { best: grid[at]!, value: values[at]!, low: grid[low]!, high: grid[high]! };
}
