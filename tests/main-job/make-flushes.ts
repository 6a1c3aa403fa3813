import type { Cleaning, Cycle, Records } from '../../pipeline/site/records.ts';
import { instant } from './untidy.ts';
import { writeExports } from './write-exports.ts';

/**
 * A year of four units whose drains are flushed more or less each week: one in use every day, one not at weekends, one with idle weeks, and one that processes no liquids. Flushed on time, late, twice, early, not at all,
 * and while idle; chambers are cleaned about each month, now and then while idle.
 */

const made = { time_mark: 'time', origin: { source: '', file: '', sheet: null, row: 1 } } as const;
const DAYS = 366;

const UNITS: { unit: string; isUsed: (day: number) => boolean; gaps: readonly number[] }[] = [
  { unit: 'U1', isUsed: () => true, gaps: [7, 7, 8, 7, 6, 9, 7, 3, 7, 15, 7, 1, 8, 22, 7, 4] },
  // Day 0 is a Monday.
  { unit: 'U2', isUsed: (day) => day % 7 < 5, gaps: [7, 7, 10, 4, 7, 6, 1, 14, 8, 7, 23, 7, 5, 2] },
  {
    unit: 'U3',
    isUsed: (day) => day % 61 < 30 || day % 61 > 50,
    gaps: [7, 9, 7, 21, 6, 7, 16, 8, 7, 7, 3, 12],
  },
  { unit: 'U4', isUsed: (day) => day % 7 !== 6, gaps: [28, 1, 34, 26, 29, 2, 27, 55] },
];
const CHAMBER_GAPS = [27, 30, 28, 25, 33];

export function makeFlushes(): void {
  const cycles: Cycle[] = [];
  const cleanings: Cleaning[] = [];
  for (const [index, { unit, isUsed, gaps }] of UNITS.entries()) {
    const cleaning = (task: Cleaning['task'], day: number, minutes: number) =>
      cleanings.push({ ...made, unit, task, time: instant(day, minutes), state: 'done' });
    for (let day = 0; day < DAYS; day++) {
      if (!isUsed(day)) continue;
      cleaning('drain_strainer', day, 330);
      cycles.push({
        ...made,
        unit,
        start: instant(day, 480),
        end: instant(day, 530),
        kind: 'production',
        outcome: 'completed',
      });
    }
    for (let [day, at] = [gaps[0]! - 1 + index, 1]; day < DAYS; day += gaps[at++ % gaps.length]!)
      cleaning('drain_flush', day, 1000);
    // Late in the evening, when the unit has been cold for hours.
    for (let [day, at] = [10 + 3 * index, 0]; day < DAYS; day += CHAMBER_GAPS[at++ % CHAMBER_GAPS.length]!)
      cleaning('chamber', day, 960);
  }
  const none = {
    air_removal_tests: [],
    leak_tests: [],
    service: [],
    inspections: [],
    water: [],
    actions: [],
  };
  const records: Records = { ...none, cycles, cleanings };
  writeExports(
    new URL('flushes/', import.meta.url),
    records,
    `# Made by make-fleets.ts. All columns are named as the fields of the records, so no sources are listed.
sites: [{ id: s, zone: Etc/UTC }]
units: [{ id: U1, liquids: true }, { id: U2, liquids: true }, { id: U3, liquids: true }, { id: U4 }]
cleaning:
  - { task: drain_strainer, every: 1, counted_in: days_of_use, unrecorded_means: missed }
  - { task: drain_flush, every: 7, grace_days: 1, unrecorded_means: missed }
`,
  );
}
