import type { IntervalCase } from './interval-schema.ts';

/** From this ratio on the kept median counts as clearly longer than the stated interval (our choice: a cleaning moved by a weekend is not meant). */
const CLEARLY_LONGER = 1.15;

/** The median time between cleanings that count, where it is clearly longer than the stated interval: shortening that would ask for what is not kept. */
export function keptLonger({ in_force, spells }: IntervalCase): { stated: number; median: number } | null {
  const { median_length: median } = spells;
  return in_force !== null && median !== null && median >= CLEARLY_LONGER * in_force
    ? { stated: in_force, median }
    : null;
}
