import { BUILT_IN, type BuiltIn } from './built-in.ts';
import { isoDay } from './clock.ts';
import { type ExpectedCounts, expectedCounts } from './expected.ts';
import type { PlacedFault } from './faults/fault.ts';
import type { Fleet } from './fleet.ts';
import type { DayTruth, UnitHistory } from './history.ts';
import { FIRST_DAY, LAST_DAY, SEED } from './scenario.ts';
import { REPEATED_HOUR } from './single-days.ts';
import type { Table } from './table.ts';

/** What the generator knows of the demo data, for tests and for readers. */
export interface Truth {
  about: string;
  seed: number;
  first_day: string;
  last_day: string;
  built_in: readonly BuiltIn[];
  units: Record<string, UnitTruth>;
  /** Cycles about the repeated hour: UTC, so that their real length can be checked. */
  repeated_hour: { unit: string; cycle_number: number; start: string; end: string }[];
  reading: Record<string, ExpectedCounts>;
  faults: readonly PlacedFault[];
}

/** Counts of one unit as they happened, exported or not. Days are days of use with a day result unless said otherwise. */
export interface UnitTruth {
  days_of_use: number;
  cycles: number;
  production_cycles: number;
  chamber_overdue: SideTruth;
  chamber_in_time: SideTruth;
  tests_missing: number;
  tests_late: number;
  strainers_missed: number;
  chamber_cleanings: Record<'supported' | 'running' | 'hot' | 'date_only', number>;
  purges: number;
  unexplained_stops: number;
  long_heat_up_passes: number;
}

interface SideTruth {
  days_of_use: number;
  failed_days: number;
  production_cycles: number;
  cleanliness_aborts: number;
  unrelated_aborts: number;
}

export function truthOf(fleet: Fleet, tables: readonly Table[], faults: readonly PlacedFault[]): Truth {
  return {
    about: 'What the generator built in and what happened. Invented: no real organisation, unit or person.',
    seed: SEED,
    first_day: isoDay(FIRST_DAY),
    last_day: isoDay(LAST_DAY),
    built_in: BUILT_IN,
    units: Object.fromEntries([...fleet].map(([unit, history]) => [unit, unitTruth(history)])),
    repeated_hour: repeatedHour(fleet),
    reading: expectedCounts(tables),
    faults,
  };
}

function unitTruth({ days, cycles, cleanings }: UnitHistory): UnitTruth {
  const used = days.filter((day) => day.use);
  const chamber = cleanings.filter(({ task, state }) => task === 'chamber' && state === 'done');
  const tagged = (tag: string) => cycles.filter((cycle) => cycle.tag === tag).length;
  const supported = (support: string) =>
    chamber.filter((cleaning) => cleaning.support === support && !cleaning.dateOnly).length;
  return {
    days_of_use: used.length,
    cycles: cycles.length,
    production_cycles: sum(used, (day) => day.production),
    chamber_overdue: side(used.filter((day) => day.overdue === true)),
    chamber_in_time: side(used.filter((day) => day.overdue === false)),
    tests_missing: used.filter((day) => day.result === 'missing').length,
    tests_late: used.filter((day) => day.late).length,
    strainers_missed: used.filter((day) => day.strainer === 'missed').length,
    chamber_cleanings: {
      supported: supported('supported'),
      running: supported('running'),
      hot: supported('hot'),
      date_only: chamber.filter((cleaning) => cleaning.dateOnly).length,
    },
    purges: tagged('purge'),
    unexplained_stops: tagged('unexplained_stop'),
    long_heat_up_passes: tagged('long_heat_up'),
  };
}

const side = (days: readonly DayTruth[]): SideTruth => ({
  days_of_use: days.length,
  failed_days: days.filter((day) => day.result === 'fail').length,
  production_cycles: sum(days, (day) => day.production),
  cleanliness_aborts: sum(days, (day) => day.cleanlinessAborts),
  unrelated_aborts: sum(days, (day) => day.unrelatedAborts),
});

const sum = (days: readonly DayTruth[], of: (day: DayTruth) => number): number =>
  days.reduce((total, day) => total + of(day), 0);

function repeatedHour(fleet: Fleet): Truth['repeated_hour'] {
  const [unit, day] = REPEATED_HOUR.split(' ') as [string, string];
  const from = Number(day) * 86_400_000 + 26 * 3_600_000;
  return fleet
    .get(unit)!
    .cycles.filter((cycle) => cycle.start >= from && cycle.start < from + 6 * 3_600_000)
    .map((cycle) => ({
      unit,
      cycle_number: cycle.number,
      start: new Date(cycle.start).toISOString(),
      end: new Date(cycle.end).toISOString(),
    }));
}
