import { median } from 'simple-statistics';
import type { Day } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { Schedule } from './schedule-schema.ts';

export const HOURS = 168;
const HOUR = 3_600_000;
const WEEK = HOURS * HOUR;
/** 1970-01-01 was a Thursday: three days after a Monday. */
const SHIFT = 3 * 24 * HOUR;

/** Wall time since Monday 00:00, ms. */
export const sinceMonday = (wallMs: number): number => (((wallMs + SHIFT) % WEEK) + WEEK) % WEEK;

/** A cycle in the pattern: begin and end since its Monday, ms (the end may lie beyond the week), and whether a cleaning in its place displaces it. */
interface PatternCycle {
  from: number;
  to: number;
  displaceable: boolean;
}

export interface UnitWeek {
  unit: string;
  site: string;
  cycles: PatternCycle[];
  in_use: number[];
  /** Weeks by hours: whether the unit was needed, that is ran a cycle that a cleaning would displace. */
  needed: Uint8Array[];
}

export interface SiteWeek {
  site: string;
  units: UnitWeek[];
  needed: number[];
  needed_origin: Schedule['sites'][number]['needed_origin'];
  worked: number[];
  worked_origin: Schedule['sites'][number]['worked_origin'];
}

/** Share of weeks in which an hour must see the start of a cycle for the site to count as at work in it (our choice). */
const WORKED_SHARE = 0.5;

/**
 * The weekly pattern of the units in use over the last whole weeks before `until`: which hours each unit ran, how many units the site had in use in each hour of the
 * week (median over the weeks), and in which hours people were at work.
 *
 * Needed: the site's number, else as many units as ran in that hour in the median week, warm-ups and tests aside (they move with the return). Worked: the site's hours, else those in which a cycle was started in at least half of the weeks, and
 * the hour before each.
 */
export function weekPatterns(
  histories: readonly UnitCourse[],
  site: Site,
  until: Day,
  weeks: number,
): SiteWeek[] {
  const sites = [...new Set(histories.map((history) => history.site))];
  return sites.map((id) => {
    const units = histories
      .filter((history) => history.site === id)
      .map((history) => unitWeek(history, until, weeks));
    const { units_in_use, work_from, work_to } = site.declared.interval.planning;
    const ofDay = (hour: number) => hour % 24;
    const needed = Array.from({ length: HOURS }, (_, hour) => {
      if (units_in_use === undefined) return medianInUse(units, hour, weeks);
      return typeof units_in_use === 'number' ? units_in_use : units_in_use[ofDay(hour)]!;
    });
    return {
      site: id,
      units,
      needed,
      needed_origin: units_in_use === undefined ? 'record' : 'site',
      worked:
        work_from !== undefined && work_to !== undefined
          ? statedHours(work_from, work_to)
          : workedHours(units, weeks),
      worked_origin: work_from === undefined ? 'record' : 'site',
    };
  });
}

function unitWeek(unit: UnitCourse, until: Day, weeks: number): UnitWeek {
  const begin = (until - 7 * weeks) * 24 * HOUR;
  const end = until * 24 * HOUR;
  const ran = Array.from({ length: weeks }, () => new Uint8Array(HOURS));
  const needed = Array.from({ length: weeks }, () => new Uint8Array(HOURS));
  const cycles: PatternCycle[] = [];
  for (const { from, to, displaceable } of unit.recent_runs) {
    if (from < begin || from >= end) continue;
    const length = Math.max(0, to - from);
    const at = sinceMonday(from);
    cycles.push({ from: at, to: at + length, displaceable });
    const week = Math.floor((from - begin) / WEEK);
    const last = Math.floor((at + Math.max(0, length - 1)) / HOUR);
    for (let hour = Math.floor(at / HOUR); hour <= last; hour++) {
      ran[week]![hour % HOURS] = 1;
      if (displaceable) needed[week]![hour % HOURS] = 1;
    }
  }
  const in_use = Array.from(
    { length: HOURS },
    (_, hour) => ran.reduce((sum, week) => sum + week[hour]!, 0) / weeks,
  );
  return { unit: unit.unit, site: unit.site, cycles, in_use, needed };
}

/** Units are whole: where the median lies between two numbers of them, half a unit is one. */
function medianInUse(units: readonly UnitWeek[], hour: number, weeks: number): number {
  const counts = Array.from({ length: weeks }, (_, week) =>
    units.reduce((sum, unit) => sum + unit.needed[week]![hour]!, 0),
  );
  return Math.ceil(median(counts));
}

function workedHours(units: readonly UnitWeek[], weeks: number): number[] {
  const starts = new Float64Array(HOURS);
  for (const unit of units) for (const cycle of unit.cycles) starts[Math.floor(cycle.from / HOUR)]! += 1;
  const busy = Array.from(starts, (of) => of >= WORKED_SHARE * weeks);
  return busy.map((of, hour) => Number(of || busy[(hour + 1) % HOURS]!));
}

function statedHours(from: string, to: string): number[] {
  const hourOf = (text: string) => Number(text.slice(0, 2)) + Number(text.slice(3)) / 60;
  const [first, last] = [hourOf(from), hourOf(to)];
  return Array.from({ length: HOURS }, (_, at) => {
    const hour = at % 24;
    const inside = first <= last ? hour >= first && hour + 1 <= last : hour >= first || hour + 1 <= last;
    return Number(inside);
  });
}

/** Mean number of displaceable cycles a week that touch a window, `from` to `to` since Monday in ms (`to` may lie beyond the week). */
export function displacedIn(unit: UnitWeek, from: number, to: number, weeks: number): number {
  let count = 0;
  for (const cycle of unit.cycles) {
    if (!cycle.displaceable) continue;
    for (let shift = -WEEK; shift <= WEEK; shift += WEEK)
      if (cycle.from + shift < to && cycle.to + shift > from) {
        count++;
        break;
      }
  }
  return count / weeks;
}
