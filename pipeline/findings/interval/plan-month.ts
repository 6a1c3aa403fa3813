import { type Day, formatDay, monthOf, monthSpan } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { Inputs } from './inputs-in-force.ts';
import type { Pace } from './pace.ts';
import { type PlanBasis, placeCleanings } from './place-cleanings.ts';
import type { Schedule } from './schedule-schema.ts';
import { type UnitWeek, weekPatterns } from './week-pattern.ts';
import { bestWindows, type Slot, type Spans, slotsOf } from './windows.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** Days from the newest event of the record to the first day on which a unit may go out of use: time to hand the review round and to decide (our choice). */
const LEAD_DAYS = 3;

/**
 * Proposals of chamber cleanings for the month that begins with `until`, or that it lies in.
 *
 * Each unit in turn, the one due first before the others: in the days up to its due day the half hour at which a cleaning displaces the fewest cycles, given the
 * units that the site needs, those already proposed to be out, and that one chamber is worked at a time at a site. Nothing before some days after the newest event:
 * a unit that is due before them, or overdue, comes in the first week from then on, every other never after its due day.
 */
export function planMonth(
  histories: readonly UnitCourse[],
  site: Site,
  pace: readonly Pace[],
  inputs: Inputs,
  basis: PlanBasis,
  until: Day,
): Schedule {
  const month = monthOf(until);
  const monthEnd = monthSpan(month)!.until;
  const spans: Spans = {
    coolDown: roundUp(inputs.cool_down_hours * 60),
    work: roundUp(inputs.work_minutes),
    back: roundUp(inputs.warm_up_minutes + inputs.test_minutes),
  };
  const used = histories.filter((history) => pace.some((of) => of.unit === history.unit));
  const first = used.reduce((low, history) => Math.min(low, history.use_days[0]!.day), until);
  const earliest = Math.max(until, dayAfterNewest(used));
  const weeks = Math.min(site.declared.interval.planning.weeks, Math.floor((until - first) / 7));
  const frame = {
    interval: basis.every,
    month,
    from: formatDay(until),
    earliest: formatDay(earliest),
    to: formatDay(monthEnd - 1),
    weeks,
    cool_down_hours: spans.coolDown / HOUR,
    work_hours: spans.work / HOUR,
    return_hours: spans.back / HOUR,
    newest_event_at: newestEvent(histories),
  };
  const empty = { ...frame, sites: [], units: [], proposals: [], not_placed: [] };
  if (used.length === 0) return { ...empty, not_planned: 'no_units_in_use' };
  if (weeks < 2) return { ...empty, not_planned: 'record_too_short' };

  const patterns = weekPatterns(used, site, until, weeks);
  const slots = new Map<string, Slot[]>();
  for (const pattern of patterns)
    for (const unit of pattern.units) slots.set(unit.unit, slotsOf(unit, pattern, spans, weeks));
  const units = patterns.flatMap((pattern) =>
    pattern.units.map((unit) => describeUnit(unit, slots.get(unit.unit)!, spans)),
  );
  const sites = patterns.map(({ site: id, units: of, needed, needed_origin, worked, worked_origin }) => ({
    site: id,
    units: of.length,
    needed,
    needed_origin,
    worked,
    worked_origin,
  }));
  if (basis.every === null) return { ...empty, sites, units, not_planned: 'no_interval' };

  const { proposals, not_placed } = placeCleanings(
    used,
    site,
    pace,
    { ...basis, every: basis.every },
    {
      patterns,
      slots,
      spans,
      from: until,
      earliest,
      until: monthEnd,
    },
  );
  return { ...frame, not_planned: null, sites, units, proposals, not_placed };
}

function describeUnit(unit: UnitWeek, slots: readonly Slot[], spans: Spans): Schedule['units'][number] {
  const windows = bestWindows(slots, spans);
  const why = slots.some((slot) => slot.spare >= 0) ? 'work_hours' : 'units_needed';
  return {
    unit: unit.unit,
    site: unit.site,
    in_use: unit.in_use,
    windows,
    no_window: windows.length > 0 ? null : why,
  };
}

/** Minutes as ms, rounded up to five minutes: a plan is not a measurement. */
const roundUp = (minutes: number): number => Math.ceil(minutes / 5 - 1e-9) * 5 * 60_000;

function newestEvent(histories: readonly UnitCourse[]): number | null {
  return histories.reduce<number | null>(
    (newest, { newest_event: at }) => (at !== null && (newest === null || at > newest) ? at : newest),
    null,
  );
}

/** The calendar day some days after the newest event, in the wall time of its unit. */
function dayAfterNewest(histories: readonly UnitCourse[]): Day {
  const days = histories.map(({ clock, newest_event: at }) =>
    at === null ? Number.NEGATIVE_INFINITY : Math.floor(clock.wallOf(at) / DAY) + LEAD_DAYS,
  );
  return Math.max(Number.NEGATIVE_INFINITY, ...days);
}
