import type { Records } from '../../pipeline/site/records.ts';
import { SCENARIOS, type Scenario } from '../calibration/scenarios.ts';
import { simulateFleet } from '../calibration/simulate-fleet.ts';
import { makeFlushes } from './make-flushes.ts';
import {
  drop,
  instant,
  oddCycles,
  purgesAndEarlyStops,
  repair,
  untidyCleanings,
  untidyTests,
} from './untidy.ts';
import { writeExports } from './write-exports.ts';

/**
 * Makes the raw exports of the two fleets from the calibration's simulator and the changes of untidy.ts, and those of the flushes. The exports are kept, so this is needed only to
 * make other ones; a changed simulator gives other ones, after which recompute.ts must be run.
 *
 * Usage: npx tsx tests/main-job/make-fleets.ts
 */

const scenario = (name: string, changes: Partial<Scenario>): Scenario => ({
  ...SCENARIOS.find((of) => of.name === name)!,
  days: 400,
  ...changes,
});

const MADE =
  '# Made by make-fleets.ts. All columns are named as the fields of the records, so no sources are listed.\n';

/** Half the units have the effect, strainers go undone together with the chamber, records are false now and then; a unit comes late. */
function fleetA(): void {
  const { records } = simulateFleet(
    scenario('ratio 4', { units: 4, affected: 0.5, falseRecords: 0.15, together: true }),
    2,
  );
  drop(records, ['cycles', 'air_removal_tests', 'cleanings'], ['U04'], (day) => day < 190);
  writeExports(
    new URL('fleet-a/', import.meta.url),
    records,
    `${MADE}sites: [{ id: s, zone: Etc/UTC }]
units: [{ id: U01 }, { id: U02 }, { id: U03 }, { id: U04 }]
cleaning:
  - { task: chamber, every: 28, unrecorded_means: missed }
  - { task: drain_strainer, every: 1, counted_in: days_of_use, unrecorded_means: missed }
`,
  );
}

/** No effect; bad spells, long streaks of misses, cleaning partly (in U04 only) after failures; all that is untidy. */
function fleetB(): void {
  const spells = { units: 5, falseRecords: 0.05 };
  const partly = simulateFleet(scenario('spells', { ...spells, reactiveChance: 0.3 }), 23).records;
  const only = simulateFleet(
    scenario('spells', { ...spells, routine: false, reactiveChance: 1 }),
    12,
  ).records;
  const records = Object.fromEntries(
    Object.keys(partly).map((kind) => [
      kind,
      [
        ...rowsOf(partly, kind).filter((row) => row.unit !== 'U04'),
        ...rowsOf(only, kind).filter((row) => row.unit === 'U04'),
      ],
    ]),
  ) as unknown as Records;
  untidyTests(records, ['U01', 'U03']);
  purgesAndEarlyStops(records, ['U01', 'U02']);
  oddCycles(records, ['U02', 'U05']);
  untidyCleanings(records, ['U01', 'U02', 'U05']);
  drop(records, ['cycles', 'air_removal_tests'], ['U02'], (day) => day % 7 === 6);
  repair(records, 'U01', 150);
  records.cleanings.push({
    unit: 'U02',
    task: 'professional',
    time: instant(215, 900),
    state: 'done',
    time_mark: 'time',
    origin: { source: '', file: '', sheet: null, row: 1 },
  });
  // The cleaning log was not kept for three weeks; some lines of the cycle log were exported twice.
  drop(records, ['cleanings'], ['U01', 'U02', 'U03', 'U04', 'U05'], (day) => day >= 260 && day < 281);
  records.cycles.push(...records.cycles.slice(1000, 1012));
  writeExports(
    new URL('fleet-b/', import.meta.url),
    records,
    `${MADE}sites: [{ id: s, zone: Europe/Berlin, day_starts: "03:00" }]
units: [{ id: U01 }, { id: U02 }, { id: U03 }, { id: U04 }, { id: U05 }]
cleaning:
  - { task: chamber, every: 28, grace_days: 2, unrecorded_means: missed }
  - { task: drain_strainer, every: 1, counted_in: days_of_use, unrecorded_means: missed }
`,
  );
}

const rowsOf = (records: Records, kind: string): { unit: string }[] =>
  records[kind as keyof Records] as { unit: string }[];

fleetA();
fleetB();
makeFlushes();
