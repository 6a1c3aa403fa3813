import { at, HOUR, MINUTE, toMinute, weekday } from './clock.ts';
import type { Cleaning, DayTruth } from './history.ts';
import { free, type Run, runEarlyStop } from './run.ts';
import { CHAMBER_INTERVAL, FIRST_DAY, LAST_DAY } from './scenario.ts';
import { typedAt, typedLate } from './typing.ts';
import { REACTIVE_ONLY } from './unit-stories.ts';

/** Chamber cleanings, strainers and drain flushes: when they are done, and the records of them. */

/** Units whose chamber cleanings are sometimes written with a date and no time. */
const DATE_ONLY = ['T1', 'T4'];

const COOL_DOWN = 4 * HOUR + 5 * MINUTE;

export const shiftEnd = (run: Run, day: number): number => at(run.zone, day, run.plan.opens + 540);

/** The day of the next chamber cleaning, by the unit's habit of being late; undefined where nothing but a failure brings one. */
export function planNextChamber(run: Run, after: number | undefined): void {
  const { slack, slackDays, orderlyDays } = run.plan.lateness;
  const draw = run.draws.chamber;
  const late = draw.chance(slack) ? draw.int(...slackDays) : draw.int(...orderlyDays);
  if (run.plan.id === REACTIVE_ONLY) run.nextChamber = after === undefined ? FIRST_DAY + 9 : undefined;
  else if (after === undefined) run.nextChamber = FIRST_DAY + draw.int(1, 14);
  else {
    const due = after + CHAMBER_INTERVAL;
    run.nextChamber = due + late;
    if (late >= 8 && due <= LAST_DAY) recordMissed(run, due, 'chamber', at(run.zone, due, run.plan.opens));
  }
}

/**
 * Cleans the chamber in a quiet hour: before the day's first cycle, cooled for over 4 h; then stops one to three cycles short to empty the
 * rinse water. Returns the instant at which the unit is ready.
 */
export function cleanChamber(run: Run, day: number, opens: number, reactive: boolean): number {
  const draw = run.draws.chamber;
  const minutes = draw.int(35, 70);
  const start = toMinute(Math.max(opens - 85 * MINUTE, run.idleSince + COOL_DOWN));
  const end = start + minutes * MINUTE;
  recordChamber(run, day, start, end, 'supported', reactive);
  recordFlush(run, day, end, reactive);
  return purge(run, end, draw.int(1, 3));
}

export function purge(run: Run, after: number, count: number): number {
  const text = run.plan.site === 'Quillhaven' ? 'Stopped by operator' : "Arrêt par l'opérateur";
  let ready = after;
  for (let index = 0; index < count; index++) {
    const kind = run.draws.chamber.chance(0.5) ? 'warm_up' : 'production';
    const start = free(run, ready + run.draws.chamber.int(60, 200) * 1000, 1);
    ready = runEarlyStop(run, start, kind, 'purge', run.draws.chamber.chance(0.5) ? text : '').end;
  }
  return ready;
}

export function recordChamber(
  run: Run,
  day: number,
  start: number,
  end: number,
  support: NonNullable<Cleaning['support']>,
  reactive: boolean,
): void {
  const draw = run.draws.typing;
  const stated = reactive ? draw.chance(0.7) : draw.chance(0.8);
  const dateOnly = DATE_ONLY.includes(run.plan.id) && draw.chance(0.25);
  run.history.cleanings.push({
    unit: run.plan.id,
    task: 'chamber',
    time: end,
    start,
    minutes: Math.round((end - start) / MINUTE),
    state: 'done',
    ...(stated ? { reason: reactive ? ('reactive' as const) : ('routine' as const) } : {}),
    note: '',
    entered: typedLate(end, shiftEnd(run, day), draw),
    support,
    ...(dateOnly ? { dateOnly } : {}),
  });
  run.lastChamber = day;
  planNextChamber(run, day);
}

export function recordFlush(run: Run, day: number, time: number, reactive: boolean): void {
  run.lastFlush = day;
  run.history.cleanings.push({
    unit: run.plan.id,
    task: 'drain_flush',
    time,
    state: 'done',
    ...(reactive ? { reason: 'reactive' as const } : {}),
    note: '',
    entered: typedLate(time, shiftEnd(run, day), run.draws.typing),
  });
}

/** Drain flush each week on units that process liquids, about one in ten left out. Returns when the unit is ready. */
export function weeklyFlush(run: Run, day: number, before: number): number {
  if (run.plan.liquids === 0 || run.lastFlush === day || weekday(day) !== 1 + (run.plan.counter % 3))
    return before;
  const time = toMinute(before - 20 * MINUTE);
  if (run.draws.task.chance(0.1)) {
    recordMissed(run, day, 'drain_flush', time);
    return before;
  }
  recordFlush(run, day, time, false);
  return run.draws.task.chance(0.3) ? purge(run, time, 1) : before;
}

/** The strainer before the first cycle; misses come in bursts, few are done late. */
export function strainer(run: Run, truth: DayTruth, opens: number): void {
  const draw = run.draws.task;
  run.strainersSlack = draw.chance(run.strainersSlack ? 0.82 : 0.025);
  const chance = draw.float();
  const missed = chance < (run.strainersSlack ? 0.5 : 0.03);
  const late = !missed && chance > 0.97;
  truth.strainer = missed ? 'missed' : late ? 'late' : 'done';
  const time = toMinute(late ? opens + draw.int(50, 200) * MINUTE : opens - draw.int(6, 18) * MINUTE);
  if (missed) {
    recordMissed(run, truth.day, 'drain_strainer', time);
    return;
  }
  run.history.cleanings.push({
    unit: run.plan.id,
    task: 'drain_strainer',
    time,
    state: 'done',
    note: '',
    entered: typedAt(time, shiftEnd(run, truth.day), run.draws.typing),
  });
}

/** On some days without use Tornfell writes that no strainer was due. */
export function recordNotDue(run: Run, day: number): void {
  if (run.plan.site !== 'Tornfell' || !run.draws.typing.chance(0.5)) return;
  const time = at(run.zone, day, run.plan.opens);
  const common = { unit: run.plan.id, task: 'drain_strainer' as const, time, note: '' };
  run.history.cleanings.push({ ...common, state: 'not_due', entered: time + 3 * HOUR });
}

/** Tornfell writes what was not done; Quillhaven leaves it blank. */
export function recordMissed(run: Run, day: number, task: Cleaning['task'], time: number): void {
  if (run.plan.site !== 'Tornfell') return;
  const entered = typedAt(time, shiftEnd(run, day), run.draws.typing);
  run.history.cleanings.push({ unit: run.plan.id, task, time, state: 'missed', note: '', entered });
}
