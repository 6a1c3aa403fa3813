import { groupBy } from '../group-by.ts';
import type { Day } from '../site/day.ts';
import type { LeakTest, Service } from '../site/records.ts';
import type { Site } from '../site/site.ts';
import type { WallClock } from '../site/wall-clock.ts';
import { type FailureEpisode, failureEpisodes } from './air-removal-tests/failure-episodes.ts';
import { type JudgedTest, judgeTests } from './air-removal-tests/judge-tests.ts';
import type { CleaningLog } from './cleaning/cleaning-log.ts';
import { type CleaningOfUnit, cleaningOfUnit } from './cleaning/cleaning-of-unit.ts';
import type { UseDay } from './cleaning/due-tasks.ts';
import { type JudgedCleaning, judgeCleanings } from './cleaning/judge-cleanings.ts';
import { type ClassedCycle, classCycles } from './cycles/class-cycles.ts';
import type { UnitRecords } from './records-by-unit.ts';
import { type Era, eras } from './service/eras.ts';
import { outOfServiceDays } from './service/out-of-service.ts';

/** A unit's records, classed, judged and dated: what the panel and the lists are made from. */
export interface UnitHistory {
  unit: string;
  site: string;
  clock: WallClock;
  cycles: ClassedCycle[];
  tests: JudgedTest[];
  episodes: FailureEpisode[];
  leak_tests: (LeakTest & { day: Day })[];
  cleanings: JudgedCleaning[];
  service: Service[];
  eras: Era[];
  out_of_service: Set<Day>;
  use_days: UseDay[];
  cleaning: CleaningOfUnit;
}

/** Makes the history of one unit. */
export function unitHistory(site: Site, records: UnitRecords, until: Day, log: CleaningLog): UnitHistory {
  const cycles = classCycles(records, site.rules);
  const tests = judgeTests(records, cycles);
  const cleanings = judgeCleanings(records, cycles, tests, site.rules);
  const use_days = useDays(cycles);
  return {
    unit: records.unit,
    site: records.site,
    clock: records.clock,
    cycles,
    tests,
    episodes: failureEpisodes(tests),
    leak_tests: records.leak_tests.map((test) => dated(test, records.clock.operatingDay(test.time))),
    cleanings,
    service: records.service,
    eras: eras(records),
    out_of_service: outOfServiceDays(records, use_days),
    use_days,
    cleaning: cleaningOfUnit(site, records.unit, use_days, cleanings, until, log),
  };
}

/** Field by field, since a record may be a view of its columns, which can't be spread. */
function dated(test: LeakTest, day: Day): LeakTest & { day: Day } {
  const all: Required<Record<keyof LeakTest | 'day', unknown>> = {
    unit: test.unit,
    time: test.time,
    leak_rate_kpa_min: test.leak_rate_kpa_min,
    limit_kpa_min: test.limit_kpa_min,
    cycle_number: test.cycle_number,
    time_mark: test.time_mark,
    origin: test.origin,
    day,
  };
  return all as LeakTest & { day: Day };
}

/** Days of use: at least one cycle that is not a purge. Their first cycle is the first that is not one. */
function useDays(cycles: readonly ClassedCycle[]): UseDay[] {
  const counted = cycles.filter((cycle) => cycle.standing !== 'purge');
  return [...groupBy(counted, (cycle) => cycle.day)].map(([day, ofDay]) => ({
    day,
    first_cycle: ofDay[0]!.start,
    cycles: ofDay.length,
  }));
}
