import type { Day } from '../../site/day.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { Clock } from './clocks.ts';

/** Days of a year of the pace. */
export const YEAR = 365.25;
/** Days back from the end of the record from which the pace is taken. */
const PACE_DAYS = 365;
/** A unit with no day of use in so many days before the end is taken as out of use, and left out of the expectations. */
const IDLE_DAYS = 90;

/** What a unit does in a year at its present pace. */
export interface Pace {
  unit: string;
  site: string;
  /** What passes on the clock. */
  ticks: number;
  /** Days at risk: test days that can begin a failure. */
  test_days: number;
  /** Cycles of any kind on the days at risk, for a clock in cycles. */
  cycles_at_risk: number;
  production: number;
}

/** Yearly pace of the units in use, from the last year of the record (or all of it where it is shorter). */
export function paceOf(
  histories: readonly UnitCourse[],
  rowsOf: (unit: string) => readonly UnitDay[],
  clock: Clock,
  until: Day,
): Pace[] {
  return histories.flatMap((history) => {
    // Made anew where it is asked for.
    const { use_days } = history;
    const first = use_days[0]?.day;
    const last = use_days.at(-1)?.day;
    if (first === undefined || last === undefined || last < until - IDLE_DAYS) return [];
    const from = Math.max(first, until - PACE_DAYS);
    const perYear = YEAR / (until - from);
    const uses = use_days.filter((use) => use.day >= from);
    const cyclesOf = new Map(uses.map((use) => [use.day, use.cycles]));
    const atRisk = rowsOf(history.unit).filter((row) => row.day >= from && row.at_risk === 1);
    const cycles = uses.reduce((sum, use) => sum + use.cycles, 0);
    return [
      {
        unit: history.unit,
        site: history.site,
        ticks: clock === 'calendar_days' ? YEAR : perYear * (clock === 'cycles' ? cycles : uses.length),
        test_days: perYear * atRisk.length,
        cycles_at_risk: perYear * atRisk.reduce((sum, row) => sum + (cyclesOf.get(row.day) ?? 0), 0),
        production: perYear * atRisk.reduce((sum, row) => sum + row.production_cycles, 0),
      },
    ];
  });
}
