import { UNRELATED_CLASSES } from '../../pipeline/site/vocabulary.ts';
import { drawAbort, steamLost } from './aborts.ts';
import { afterFailure, drawFailure, runTest } from './air-removal.ts';
import { cleanChamber, purge, recordChamber, shiftEnd, strainer, weeklyFlush } from './cleaning-work.ts';
import { at, HOUR, MINUTE, toMinute, weekday } from './clock.ts';
import type { Cycle, DayTruth } from './history.ts';
import { free, type Run, runCycle, runEarlyStop } from './run.ts';
import { CHAMBER_INTERVAL } from './scenario.ts';
import { INVALID_TESTS, LONG_HEAT_UP, REPEATED_HOUR } from './single-days.ts';
import { CONTRADICTED, leakLevel, UNEXPLAINED_STOPS, UTILITY_DAYS } from './unit-stories.ts';

/** One day of use: cleaning, warm-up, leak test where due, air-removal test, production, and what goes wrong. */
export function useDay(run: Run, truth: DayTruth): void {
  const { plan, zone } = run;
  const { day } = truth;
  const draw = run.draws.day;
  truth.use = true;
  const opens = at(zone, day, plan.opens) + draw.int(-6, 18) * MINUTE + draw.int(0, 59) * 1000;
  const chamberDue = run.nextChamber !== undefined && day >= run.nextChamber;
  const contradict =
    chamberDue && plan.id === CONTRADICTED.unit && run.draws.chamber.chance(CONTRADICTED.share);
  let ready = opens;
  if (chamberDue && !contradict) ready = Math.max(opens, cleanChamber(run, day, opens, plan.id === 'T2'));
  truth.overdue = run.lastChamber === undefined ? undefined : day - run.lastChamber > CHAMBER_INTERVAL;
  ready = Math.max(ready, weeklyFlush(run, day, ready));
  strainer(run, truth, ready);
  const warm = runCycle(run, truth, { kind: 'warm_up', start: free(run, ready, 2) });
  let next = leakTest(run, truth, warm.end);
  const habit = draw.float();
  if (habit < 0.004) truth.result = 'missing';
  else if (habit < 0.0075 && run.failingDays === 0) {
    const first = runProduction(run, truth, next, 0);
    runTest(run, truth, free(run, first.end, 6), 'pass', 'day');
    truth.late = true;
    next = run.idleSince;
  } else {
    const tested = dayTest(run, truth, next, habit);
    if (tested === undefined) return;
    next = tested;
  }
  production(run, truth, next);
  if (contradict) contradicted(run, truth);
}

function leakTest(run: Run, truth: DayTruth, after: number): number {
  if (truth.day - run.lastLeakTest < 7) return after;
  run.lastLeakTest = truth.day;
  const cycle = runCycle(run, truth, { kind: 'leak_test', start: free(run, after, 3) });
  const wet = run.lastChamber === truth.day ? 0.02 : 0;
  const rate = leakLevel(run.plan.id, run.plan.leak, truth.day) + wet + 0.0035 * run.draws.leak.normal();
  run.history.leaks.push({
    unit: run.plan.id,
    time: toMinute(cycle.end),
    rate: Math.max(0.004, rate),
    cycle: cycle.number,
  });
  return cycle.end;
}

/** The day's test before production; undefined where the unit then stays out of use. */
function dayTest(run: Run, truth: DayTruth, after: number, habit: number): number | undefined {
  const key = `${run.plan.id} ${truth.day}`;
  let start = free(run, after, 4);
  if (INVALID_TESTS.has(key)) start = free(run, runTest(run, truth, start, 'invalid', 'day'), 5);
  const failed = drawFailure(run, truth);
  const heatUp = LONG_HEAT_UP.has(key) ? { heatUp: 1.55 } : {};
  const recorded = habit > 0.0095 || failed;
  if (!recorded) truth.result = 'missing';
  const read = runTest(run, truth, start, failed ? 'fail' : 'pass', 'day', { recorded, ...heatUp });
  return failed ? afterFailure(run, truth, read) : read;
}

function production(run: Run, truth: DayTruth, from: number): void {
  const draw = run.draws.day;
  const { plan, zone } = run;
  const key = `${plan.id} ${truth.day}`;
  const night = REPEATED_HOUR === key;
  const cycles = Math.max(2, Math.round(plan.production + 1.1 * draw.normal()));
  const rewarm = draw.chance(0.45) ? draw.int(2, 3) : -1;
  let next = free(run, from, 8);
  if (weekday(truth.day) === 3 && draw.chance(0.9)) {
    next = runCycle(run, truth, { kind: 'other', start: next }).end + 6 * MINUTE;
  }
  const last = at(zone, truth.day, plan.opens > 900 ? 1440 + 160 : plan.opens + 720);
  for (let index = 0; index < cycles + (night ? 9 : 0); index++) {
    if (index === rewarm && !night) {
      const start = free(run, next, draw.int(45, 100));
      next = runCycle(run, truth, { kind: 'warm_up', start }).end + 4 * MINUTE;
    }
    if (next > last) break;
    const cycle = runProduction(run, truth, next, index);
    const pause = night ? draw.int(4, 9) : 4 + Math.round(14 * -Math.log(1 - 0.95 * draw.float()));
    next = cycle.end + pause * MINUTE + draw.int(0, 59) * 1000;
  }
  if (plan.id === UNEXPLAINED_STOPS.unit && UNEXPLAINED_STOPS.days.includes(truth.day))
    unexplainedStop(run, truth);
}

function runProduction(run: Run, truth: DayTruth, start: number, index: number): Cycle {
  const { plan } = run;
  const draw = run.draws.day;
  const kind = draw.chance(plan.liquids) ? 'liquids' : 'production';
  const lost = UTILITY_DAYS[plan.site].includes(truth.day) && index === 1;
  const drawn = drawAbort(plan.id, plan.site, truth.overdue ?? false, run.draws.abort);
  const abort = lost ? steamLost(plan.site) : drawn;
  const program = draw.chance(0.7) ? 'wrapped' : 'fabrics';
  const cycle = runCycle(run, truth, {
    kind,
    start: free(run, start, 2),
    program,
    abort,
    ...(lost ? { tag: 'utility_day' as const } : {}),
  });
  truth.production++;
  if (abort && abort.class !== 'unclassified') {
    if (UNRELATED_CLASSES.includes(abort.class)) truth.unrelatedAborts++;
    else truth.cleanlinessAborts++;
  }
  return cycle;
}

/** A stop or two by hand in the afternoon, then a warm-up: as after a cleaning, but nobody wrote of one. */
function unexplainedStop(run: Run, truth: DayTruth): void {
  const start = Math.max(run.idleSince + 4.5 * HOUR, at(run.zone, truth.day, 1050));
  const stop = runEarlyStop(run, start, 'production', 'unexplained_stop', '');
  runCycle(run, truth, { kind: 'warm_up', start: free(run, stop.end, 5) });
}

/** A chamber cleaning record that the cycle log contradicts: a cycle ran meanwhile, or the chamber was hot. */
function contradicted(run: Run, truth: DayTruth): void {
  const draw = run.draws.chamber;
  const support = run.contradictNext;
  run.contradictNext = support === 'running' ? 'hot' : 'running';
  const today = run.history.cycles.slice(-4).filter((cycle) => cycle.program !== '');
  const cycle = support === 'running' ? today[0]! : today.at(-1)!;
  const start = toMinute(support === 'running' ? cycle.start : cycle.end) + draw.int(8, 25) * MINUTE;
  const end = start + draw.int(35, 60) * MINUTE;
  recordChamber(run, truth.day, start, end, support, false);
  if (support === 'hot') purge(run, Math.max(end, run.idleSince), 1);
  if (end > shiftEnd(run, truth.day) + 8 * HOUR) throw new Error('contradicted cleaning past the day');
}
