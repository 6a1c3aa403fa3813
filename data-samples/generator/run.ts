import type { CycleKind } from '../../pipeline/site/vocabulary.ts';
import type { AbortDraw } from './aborts.ts';
import { cutShort } from './aborts.ts';
import { MINUTE } from './clock.ts';
import type { CommonMovement } from './common-movement.ts';
import type { Cycle, DayTruth, Phases, Tag, UnitHistory } from './history.ts';
import { lengthOf, phasesOf } from './probes.ts';
import { type Stream, stream } from './random.ts';
import { type UnitPlan, ZONES } from './scenario.ts';
import { ROLLOVER } from './unit-stories.ts';

/** One unit on its way through the period: its state, its random streams and what has happened so far. */
export interface Run {
  plan: UnitPlan;
  zone: string;
  history: UnitHistory;
  common: (day: number) => CommonMovement;
  draws: Record<'probe' | 'day' | 'test' | 'abort' | 'chamber' | 'task' | 'typing' | 'leak', Stream>;
  counter: number;
  /** End of the last cycle. */
  idleSince: number;
  lastChamber: number | undefined;
  nextChamber: number | undefined;
  lastFlush: number;
  lastLeakTest: number;
  strainersSlack: boolean;
  /** Days on which the test will fail again, and what mends it. */
  failingDays: number;
  contradictNext: 'running' | 'hot';
}

export function newRun(plan: UnitPlan, common: Run['common']): Run {
  const named = (name: string) => stream(`${plan.id}/${name}`);
  return {
    plan,
    zone: ZONES[plan.site],
    history: { unit: plan.id, cycles: [], tests: [], leaks: [], cleanings: [], service: [], days: [] },
    common,
    draws: {
      probe: named('probe'),
      day: named('day'),
      test: named('test'),
      abort: named('abort'),
      chamber: named('chamber'),
      task: named('task'),
      typing: named('typing'),
      leak: named('leak'),
    },
    counter: plan.counter,
    idleSince: 0,
    lastChamber: undefined,
    nextChamber: undefined,
    lastFlush: 0,
    lastLeakTest: 0,
    strainersSlack: false,
    failingDays: 0,
    contradictNext: 'running',
  };
}

export interface CycleWish {
  kind: CycleKind;
  start: number;
  abort?: AbortDraw | undefined;
  program?: string;
  /** Factor on the heat-up time. */
  heatUp?: number;
  tag?: Tag;
}

/** Runs one cycle: draws its phases, cuts it where it aborts, numbers it. */
export function runCycle(run: Run, truth: DayTruth, wish: CycleWish): Cycle {
  const whole = phasesOf(
    run.plan,
    wish.kind,
    truth.day,
    truth.day - run.lastFlush,
    run.common(truth.day),
    run.draws.probe,
  );
  if (wish.heatUp) whole.heatUp = Math.round(whole.heatUp! * wish.heatUp);
  const cut = wish.abort ? cutShort(whole, wish.abort.class, run.draws.abort) : undefined;
  const phases: Phases = cut ? cut.phases : whole;
  const seconds = cut ? cut.seconds : lengthOf(wish.kind, whole);
  return push(run, {
    unit: run.plan.id,
    number: 0,
    kind: wish.kind,
    program: wish.program ?? '',
    start: wish.start,
    end: wish.start + seconds * 1000,
    outcome: cut ? cut.outcome : 'completed',
    ...(wish.abort ? { abort: wish.abort } : {}),
    ...(wish.tag ? { tag: wish.tag } : {}),
    ...phases,
  });
}

/** A stop by hand, minutes after the start and before exposure; the control prints a text or none. */
export function runEarlyStop(run: Run, start: number, kind: CycleKind, tag: Tag, text: string): Cycle {
  // At most 238 s: on a clock that shows minutes alone they still read as less than five.
  const seconds = run.draws.day.int(70, 238);
  const abort = { class: 'operator' as const, text };
  const end = start + seconds * 1000;
  return push(run, {
    unit: run.plan.id,
    number: 0,
    kind,
    program: '',
    start,
    end,
    outcome: 'aborted',
    abort,
    tag,
  });
}

function push(run: Run, cycle: Cycle): Cycle {
  cycle.number = run.counter;
  run.counter = run.plan.id === ROLLOVER.unit && run.counter === ROLLOVER.after ? 1 : run.counter + 1;
  if (cycle.start < run.idleSince)
    throw new Error(`${cycle.unit}: two cycles at once, number ${cycle.number}`);
  run.idleSince = cycle.end;
  run.history.cycles.push(cycle);
  return cycle;
}

/** The earliest start at or after an instant, minutes after the last cycle at the least. */
export const free = (run: Run, instant: number, minutes: number): number =>
  Math.max(instant, run.idleSince + minutes * MINUTE);
