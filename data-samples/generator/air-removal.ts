import { recordFlush, shiftEnd } from './cleaning-work.ts';
import { HOUR, MINUTE, toMinute } from './clock.ts';
import type { DayTruth, Test } from './history.ts';
import { free, type Run, runCycle } from './run.ts';
import { typedAt } from './typing.ts';
import { EFFECT, NO_FAILURE, REACTIVE_ONLY } from './unit-stories.ts';

/** Air-removal tests: the day's test, the retest, what follows a failure. */

/** Whether the day's test fails: the unit's probability, its odds multiplied where an overdue chamber has an effect. */
export function drawFailure(run: Run, truth: DayTruth): boolean {
  const { plan } = run;
  const chance = run.draws.test.float();
  if (plan.id === NO_FAILURE.unit && truth.day >= NO_FAILURE.from) return false;
  if (run.failingDays > 0) {
    run.failingDays--;
    return true;
  }
  const odds = plan.failing / (1 - plan.failing);
  const raised = odds * (plan.id === EFFECT.unit && truth.overdue ? EFFECT.failureOdds : 1);
  return chance < raised / (1 + raised);
}

/** Runs a test cycle and writes its record some minutes after the end, when a person has read it. */
export function runTest(
  run: Run,
  truth: DayTruth,
  start: number,
  result: Test['result'],
  role: Test['role'],
  options: { recorded?: boolean; heatUp?: number } = {},
): number {
  const { recorded = true, heatUp } = options;
  const cycle = runCycle(run, truth, {
    kind: 'air_removal_test',
    start,
    ...(heatUp ? { heatUp, tag: 'long_heat_up' as const } : {}),
  });
  if (!recorded) return cycle.end;
  const time = toMinute(cycle.end) + run.draws.test.int(1, 4) * MINUTE;
  run.history.tests.push({
    unit: run.plan.id,
    time,
    result,
    cycle: cycle.number,
    note: remark(run, result),
    entered: typedAt(time, shiftEnd(run, truth.day), run.draws.typing),
    role,
  });
  if (role === 'day') truth.result = result;
  return time;
}

const REMARKS = {
  Quillhaven: {
    fail: ['pale in the middle', 'pale spot, centre', 'uneven'],
    pass: ['even'],
    invalid: ['pack was open'],
  },
  Tornfell: {
    fail: ['tache pâle au centre', 'virage inégal'],
    pass: ['virage égal'],
    invalid: ['paquet déjà ouvert'],
  },
};

function remark(run: Run, result: Test['result']): string {
  const words = REMARKS[run.plan.site][result];
  const word = run.draws.test.pick(words);
  return result !== 'pass' || run.draws.test.chance(0.15) ? word : '';
}

/** After a failed test: retest, or out of use until mended. Returns when production may start; undefined: not on this day. */
export function afterFailure(run: Run, truth: DayTruth, read: number): number | undefined {
  const draw = run.draws.test;
  if (run.plan.id === REACTIVE_ONLY) run.nextChamber = truth.day + 1;
  const chance = draw.float();
  const warm = runCycle(run, truth, { kind: 'warm_up', start: free(run, read, 6) });
  const start = free(run, warm.end, 3);
  if (chance < 0.6) return runTest(run, truth, start, 'pass', 'retest');
  if (chance < 0.85) runTest(run, truth, start, 'fail', 'retest');
  mend(run, truth);
  return undefined;
}

/** Out of use, mended, tested again; where that fails too, the next day's test fails as well. */
function mend(run: Run, truth: DayTruth): void {
  const draw = run.draws.test;
  const from = toMinute(run.idleSince) + 40 * MINUTE;
  const to = from + draw.int(90, 240) * MINUTE;
  const chance = draw.float();
  const kept = ['Q1', 'Q2', 'Q4', REACTIVE_ONLY].includes(run.plan.id);
  if (chance < 0.3 && run.plan.id !== REACTIVE_ONLY) drainCleaned(run, truth, to);
  else if (chance < 0.5 && !kept) note(run, from, to, 'repair');
  else note(run, from, to, 'maintenance');
  const warm = runCycle(run, truth, { kind: 'warm_up', start: to + 20 * MINUTE });
  const good = draw.chance(0.72);
  runTest(run, truth, free(run, warm.end, 3), good ? 'pass' : 'fail', 'after_repair');
  if (!good) run.failingDays = 1;
}

function drainCleaned(run: Run, truth: DayTruth, time: number): void {
  const entered = time + HOUR;
  const common = {
    unit: run.plan.id,
    state: 'done' as const,
    reason: 'reactive' as const,
    note: '',
    entered,
  };
  run.history.cleanings.push({ ...common, task: 'drain_strainer', time: time - 15 * MINUTE });
  recordFlush(run, truth.day, time, true);
}

function note(run: Run, from: number, to: number, kind: 'repair' | 'maintenance'): void {
  const words =
    run.plan.site === 'Quillhaven'
      ? { repair: 'Steam valve replaced', maintenance: 'Fittings tightened, check valve cleaned' }
      : { repair: 'Vanne vapeur remplacée', maintenance: 'Raccords resserrés, clapet nettoyé' };
  run.history.service.push({ unit: run.plan.id, from, to, kind, major: false, note: words[kind] });
}
