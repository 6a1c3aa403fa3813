import { runTest } from './air-removal.ts';
import { cleanChamber, planNextChamber, recordChamber, recordFlush, recordNotDue } from './cleaning-work.ts';
import { at, MINUTE, weekday } from './clock.ts';
import type { CommonMovement } from './common-movement.ts';
import type { DayTruth, UnitHistory } from './history.ts';
import { free, newRun, type Run, runCycle } from './run.ts';
import { CLOSED_DAYS, FIRST_DAY, LAST_DAY, type UnitPlan } from './scenario.ts';
import { type Stay, serviceRecords, staysOf } from './service-plan.ts';
import { LOST_LOG } from './unit-stories.ts';
import { useDay } from './use-day.ts';

/** Everything that happened to one unit from the first to the last operating day. */
export function simulateUnit(plan: UnitPlan, common: (day: number) => CommonMovement): UnitHistory {
  const run = newRun(plan, common);
  const stays = staysOf(plan);
  planNextChamber(run, undefined);
  for (let day = FIRST_DAY; day <= LAST_DAY; day++) {
    const truth = emptyDay(day);
    const stay = stays.find((each) => each.from <= day && day <= each.to);
    if (stay) stayDay(run, truth, stay);
    else if (isUsed(run, day)) useDay(run, truth);
    else restDay(run, day);
    run.history.days.push(truth);
  }
  if (plan.id === LOST_LOG.unit) loseLog(run.history);
  return run.history;
}

const emptyDay = (day: number): DayTruth => ({
  day,
  use: false,
  overdue: undefined,
  strainer: undefined,
  result: undefined,
  production: 0,
  cleanlinessAborts: 0,
  unrelatedAborts: 0,
  late: false,
});

function isUsed(run: Run, day: number): boolean {
  const idle = run.draws.day.chance(0.012);
  const closed = CLOSED_DAYS.includes(day) && run.plan.days.length < 7;
  return run.plan.days.includes(weekday(day)) && !closed && !idle;
}

/** A quiet day: a chamber cleaning that is due may be done in the forenoon. */
function restDay(run: Run, day: number): void {
  const due = run.nextChamber !== undefined && day >= run.nextChamber;
  recordNotDue(run, day);
  if (due && run.draws.chamber.chance(0.4))
    cleanChamber(run, day, at(run.zone, day, 640), run.plan.id === 'T2');
}

/** A day out of use; its last day ends with the records of the work and, after major work, the requalification. */
function stayDay(run: Run, truth: DayTruth, stay: Stay): void {
  if (truth.day < stay.to) return;
  run.history.service.push(...serviceRecords(run.plan, stay));
  const done = at(run.zone, truth.day, 870);
  if (stay.kind === 'professional_cleaning') {
    const common = { unit: run.plan.id, state: 'done' as const, reason: 'routine' as const, note: '' };
    recordChamber(run, truth.day, done - 240 * MINUTE, done - 60 * MINUTE, 'supported', false);
    recordFlush(run, truth.day, done - 30 * MINUTE, false);
    run.history.cleanings.push({ ...common, task: 'professional', time: done, entered: done + 35 * MINUTE });
  }
  if (stay.kind === 'controller_replaced') run.counter = 1;
  run.failingDays = 0;
  if (stay.major) requalify(run, truth, at(run.zone, truth.day, 930), stay.passes);
}

function requalify(run: Run, truth: DayTruth, from: number, passes: number): void {
  runCycle(run, truth, { kind: 'warm_up', start: free(run, from, 5) });
  for (let index = 0; index < 3; index++)
    runCycle(run, truth, { kind: 'qualification', start: free(run, run.idleSince, 5) });
  for (let index = 0; index < passes; index++)
    runTest(run, truth, free(run, run.idleSince, 6), 'pass', 'qualification');
}

/** The log of some days was lost: the work was done, the records are gone. */
function loseLog(history: UnitHistory): void {
  const from = LOST_LOG.from * 86_400_000;
  const to = (LOST_LOG.to + 1) * 86_400_000;
  history.cleanings = history.cleanings.filter(({ time }) => time < from || time >= to);
}
