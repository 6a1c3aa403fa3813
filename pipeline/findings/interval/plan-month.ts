import { type Day, formatDay, monthOf, monthSpan, weekday } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import { formatWall } from '../../site/wall-clock.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { Clock } from './clocks.ts';
import type { Inputs } from './inputs-in-force.ts';
import type { Pace } from './pace.ts';
import type { Proposal, Schedule } from './schedule-schema.ts';
import { type SiteWeek, type UnitWeek, weekPatterns } from './week-pattern.ts';
import { bestWindows, hoursOf, type Slot, type Spans, slotsOf } from './windows.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** Days before the due day in which a cleaning may be proposed: a week, but no more than a quarter of the interval (our choice). */
const FLEXIBLE_DAYS = 7;

/** What the plan stands on: the interval and what it counts. */
export interface PlanBasis {
  clock: Clock;
  every: number | null;
}

/**
 * Proposals of chamber cleanings for the month that begins with `until`, or that it lies in.
 *
 * Each unit in turn, the one due first before the others: in the days up to its due day (the first week of the month where it is overdue) the half hour at which
 * a cleaning displaces the fewest cycles, given the units that the site needs and those already proposed to be out. Never after the due day.
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
  const weeks = Math.min(site.declared.interval.planning.weeks, Math.floor((until - first) / 7));
  const frame = {
    interval: basis.every,
    month,
    from: formatDay(until),
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

  const { proposals, not_placed } = place(used, site, pace, basis as { clock: Clock; every: number }, {
    patterns,
    slots,
    spans,
    from: until,
    until: monthEnd,
  });
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

interface Board {
  patterns: readonly SiteWeek[];
  slots: ReadonlyMap<string, Slot[]>;
  spans: Spans;
  from: Day;
  until: Day;
}

type Task = { history: UnitCourse; due: Day | null; every: number };

function place(
  histories: readonly UnitCourse[],
  site: Site,
  pace: readonly Pace[],
  basis: { clock: Clock; every: number },
  board: Board,
): Pick<Schedule, 'proposals' | 'not_placed'> {
  const proposals: Proposal[] = [];
  const not_placed: Schedule['not_placed'] = [];
  const out: { site: string; from: number; to: number }[] = [];
  const queue: Task[] = histories.map((history) => {
    const own = site.policyOf(history.unit, 'chamber');
    const interval = own?.counted_in === basis.clock ? own.every : basis.every;
    const every = Math.max(
      1,
      Math.floor(daysOf(interval, basis.clock, pace.find((of) => of.unit === history.unit)!)),
    );
    const last = history.chamber_cleanings.findLast((cleaning) =>
      countsAsDone(cleaning, site.rules.contradicted_counts_as_done),
    );
    return { history, every, due: last === undefined ? null : last.day + every };
  });
  const rank = (task: Task) => task.due ?? Number.NEGATIVE_INFINITY;
  while (queue.length > 0) {
    queue.sort((a, b) => rank(a) - rank(b) || (a.history.unit < b.history.unit ? -1 : 1));
    const task = queue.shift()!;
    if (task.due !== null && task.due >= board.until) continue;
    const late = task.due === null || task.due < board.from;
    const flexible = Math.min(FLEXIBLE_DAYS, Math.floor(task.every / 4));
    const first = late ? board.from : Math.max(board.from, task.due! - flexible);
    const last = late ? Math.min(board.until - 1, board.from + FLEXIBLE_DAYS - 1) : task.due!;
    // Of equals the last day before the due one (an early cleaning wastes some of the interval), but the first where it is overdue.
    const ahead = Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => last - index);
    const found = search(task.history, late ? ahead.reverse() : ahead, board, out);
    if (found === null) {
      not_placed.push({
        unit: task.history.unit,
        site: task.history.site,
        due: formatDay(late ? board.from : task.due!),
        why: whyNot(board.slots.get(task.history.unit)!),
      });
      continue;
    }
    out.push({ site: task.history.site, from: found.wall.out, to: found.wall.back });
    proposals.push({
      ...proposalOf(task.history, found),
      due: task.due === null ? null : formatDay(task.due),
      state: task.due === null ? 'never_recorded' : late ? 'overdue' : 'due',
    });
    queue.push({ ...task, due: found.day + task.every });
  }
  proposals.sort((a, b) => a.work_at - b.work_at || (a.unit < b.unit ? -1 : 1));
  return { proposals, not_placed };
}

interface Found {
  day: Day;
  slot: Slot;
  wall: { out: number; work: number; workTo: number; back: number };
}

/** The slot of fewest displaced cycles on some days, of equals that of the day that stands first. */
function search(
  history: UnitCourse,
  days: readonly Day[],
  board: Board,
  out: readonly { site: string; from: number; to: number }[],
): Found | null {
  const pattern = board.patterns.find((of) => of.site === history.site)!;
  const { coolDown, work: length, back } = board.spans;
  let best: Found | null = null;
  for (const day of days) {
    const monday = (day - weekday(day) + 1) * DAY;
    for (const slot of board.slots.get(history.unit)!) {
      const work = monday + slot.work;
      if (Math.floor(work / DAY) !== day || slot.spare < 0 || !slot.worked) continue;
      if (best !== null && best.slot.displaced <= slot.displaced) continue;
      const wall = { out: work - coolDown, work, workTo: work + length, back: work + length + back };
      const others = out.filter((of) => of.site === history.site && of.from < wall.back && of.to > wall.out);
      const room = hoursOf(wall.out + 3 * DAY, wall.back + 3 * DAY).every(
        (hour) => pattern.units.length - 1 - others.length >= pattern.needed[hour]!,
      );
      if (room) best = { day, slot, wall };
    }
  }
  return best;
}

function proposalOf(history: UnitCourse, { slot, wall }: Found): Omit<Proposal, 'due' | 'state'> {
  const at = (wallMs: number) => history.clock.instantOf(wallMs).at;
  return {
    unit: history.unit,
    site: history.site,
    out_at: at(wall.out),
    work_at: at(wall.work),
    work_to_at: at(wall.workTo),
    back_at: at(wall.back),
    out: formatWall(wall.out),
    work: formatWall(wall.work),
    work_to: formatWall(wall.workTo),
    back: formatWall(wall.back),
    displaced: slot.displaced,
  };
}

const whyNot = (slots: readonly Slot[]): Schedule['not_placed'][number]['why'] => {
  if (!slots.some((slot) => slot.spare >= 0)) return 'units_needed';
  return slots.some((slot) => slot.spare >= 0 && slot.worked) ? 'units_needed' : 'work_hours';
};

/** Minutes as ms, rounded up to five minutes: a plan is not a measurement. */
const roundUp = (minutes: number): number => Math.ceil(minutes / 5 - 1e-9) * 5 * 60_000;

/** An interval in calendar days at a unit's pace. */
function daysOf(interval: number, clock: Clock, pace: Pace): number {
  return clock === 'calendar_days' ? interval : (interval * 365.25) / pace.ticks;
}

function newestEvent(histories: readonly UnitCourse[]): number | null {
  return histories.reduce<number | null>(
    (newest, { newest_event: at }) => (at !== null && (newest === null || at > newest) ? at : newest),
    null,
  );
}
