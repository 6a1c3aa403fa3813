import { byCodeUnit } from '../../by-code-unit.ts';
import { type Day, formatDay, weekday } from '../../site/day.ts';
import type { Site } from '../../site/site.ts';
import type { Policy } from '../../site/site-schema.ts';
import { formatWall } from '../../site/wall-clock.ts';
import { countsAsDone } from '../../transform/cleaning/due-tasks.ts';
import type { IntervalClock } from '../../transform/cleaning/interval-clock.ts';
import { clockAhead } from '../next-month/clock-ahead.ts';
import type { UnitCourse } from '../shares/unit-course.ts';
import type { Clock } from './clocks.ts';
import type { Pace } from './pace.ts';
import type { Proposal, Schedule } from './schedule-schema.ts';
import type { SiteWeek } from './week-pattern.ts';
import { hoursOf, type Slot, type Spans } from './windows.ts';

const DAY = 86_400_000;
/** Days before the due day in which a cleaning may be proposed: a week, but no more than a quarter of the interval (our choice). */
const FLEXIBLE_DAYS = 7;

/** What the plan stands on: the interval and what it counts. */
export interface PlanBasis {
  clock: Clock;
  every: number | null;
}

/** What cleanings are placed on. Days: the month begins with `from`; no unit goes out of use before `earliest`. */
export interface Board {
  patterns: readonly SiteWeek[];
  slots: ReadonlyMap<string, Slot[]>;
  spans: Spans;
  from: Day;
  earliest: Day;
  until: Day;
}

/** A chamber cleaning to come: the day on which the interval ends (null where none is recorded), and the interval in days. */
interface Task {
  history: UnitCourse;
  clock: IntervalClock;
  due: Day | null;
  every: number;
}

/** A cleaning that was placed, wall times. */
interface Placed {
  site: string;
  out: number;
  work: number;
  workTo: number;
  back: number;
}

/** Each unit in turn, the one due first before the others, and again after its interval. One chamber is worked at a time at a site. */
export function placeCleanings(
  histories: readonly UnitCourse[],
  site: Site,
  pace: readonly Pace[],
  basis: PlanBasis & { every: number },
  board: Board,
): Pick<Schedule, 'proposals' | 'not_placed'> {
  const proposals: Proposal[] = [];
  const not_placed: Schedule['not_placed'] = [];
  const placed: Placed[] = [];
  const { from, earliest, until } = board;
  const queue = histories.map((history): Task => {
    const own = site.policyOf(history.unit, 'chamber');
    const policy = own?.counted_in === basis.clock ? own : policyOf(basis);
    const clock = clockAhead(policy, history, from, until);
    const every = daysOf(policy, pace.find((of) => of.unit === history.unit)!);
    const last = history.chamber_cleanings.findLast((cleaning) =>
      countsAsDone(cleaning, site.rules.contradicted_counts_as_done),
    );
    return { history, clock, every, due: last === undefined ? null : clock.reached(last.day, 1) };
  });
  const rank = (task: Task) => task.due ?? Number.NEGATIVE_INFINITY;
  while (queue.length > 0) {
    queue.sort((a, b) => Math.sign(rank(a) - rank(b)) || byCodeUnit(a.history.unit, b.history.unit));
    const task = queue.shift()!;
    if (task.due !== null && task.due >= until) continue;
    const late = task.due === null || task.due < earliest;
    const days = late
      ? daysBetween(earliest, Math.min(until, earliest + FLEXIBLE_DAYS))
      : daysBetween(Math.max(earliest, task.due! - flexibleDays(task)), task.due! + 1).reverse();
    const found = search(task.history, days, board, placed);
    if (found === null) {
      not_placed.push({
        unit: task.history.unit,
        site: task.history.site,
        due: formatDay(late ? earliest : task.due!),
        why: search(task.history, days, board, placed, 'several') ? 'work_taken' : whyNot(task, board),
      });
      continue;
    }
    placed.push({ site: task.history.site, ...found.wall });
    proposals.push({
      ...proposalOf(task.history, found),
      due: task.due === null ? null : formatDay(task.due),
      state: stateOf(task.due, board),
    });
    queue.push({ ...task, due: task.clock.reached(found.day, 1) });
  }
  proposals.sort((a, b) => a.work_at - b.work_at || byCodeUnit(a.unit, b.unit));
  return { proposals, not_placed };
}

function stateOf(due: Day | null, { from, earliest }: Board): Proposal['state'] {
  if (due === null) return 'never_recorded';
  if (due < from) return 'overdue';
  return due < earliest ? 'due_before_plan' : 'due';
}

/** Days in which a cleaning may come before its due day. Of equals the last is taken: an early cleaning wastes some of the interval. */
const flexibleDays = ({ every }: Task): number => Math.min(FLEXIBLE_DAYS, Math.floor(every / 4));

const daysBetween = (from: Day, until: Day): Day[] =>
  Array.from({ length: Math.max(0, until - from) }, (_, index) => from + index);

interface Found {
  day: Day;
  slot: Slot;
  wall: Omit<Placed, 'site'>;
}

/** The slot of fewest displaced cycles on some days, of equals that of the day that stands first. */
function search(
  history: UnitCourse,
  days: readonly Day[],
  { patterns, slots, spans, earliest }: Board,
  placed: readonly Placed[],
  works: 'one' | 'several' = 'one',
): Found | null {
  const pattern = patterns.find((of) => of.site === history.site)!;
  const here = placed.filter((of) => of.site === history.site);
  let best: Found | null = null;
  for (const day of days) {
    const monday = (day - weekday(day) + 1) * DAY;
    for (const slot of slots.get(history.unit)!) {
      const work = monday + slot.work;
      if (Math.floor(work / DAY) !== day || slot.spare < 0 || !slot.worked) continue;
      if (best !== null && best.slot.displaced <= slot.displaced) continue;
      const workTo = work + spans.work;
      const wall = { out: work - spans.coolDown, work, workTo, back: workTo + spans.back };
      if (wall.out < earliest * DAY) continue;
      if (works === 'one' && here.some((of) => of.work < workTo && of.workTo > work)) continue;
      const others = here.filter((of) => of.out < wall.back && of.back > wall.out).length;
      const room = hoursOf(wall.out + 3 * DAY, wall.back + 3 * DAY).every(
        (hour) => pattern.units.length - 1 - others >= pattern.needed[hour]!,
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

function whyNot({ history }: Task, { slots }: Board): Schedule['not_placed'][number]['why'] {
  const free = slots.get(history.unit)!.filter((slot) => slot.spare >= 0);
  return free.length === 0 || free.some((slot) => slot.worked) ? 'units_needed' : 'work_hours';
}

/** The policy that an interval makes where a unit has none in its clock. */
const policyOf = ({ clock, every }: PlanBasis & { every: number }): Policy => ({
  task: 'chamber',
  every,
  counted_in: clock,
  grace_days: 0,
  unrecorded_means: 'not_recorded',
});

/** An interval in calendar days at a unit's pace, at least one. */
function daysOf({ every, counted_in }: Policy, pace: Pace): number {
  return Math.max(1, counted_in === 'calendar_days' ? every : (every * 365.25) / pace.ticks);
}
