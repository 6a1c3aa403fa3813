import { isCorroborated } from './corroboration.ts';
import { ALONE, CORROBORATED, EVIDENCE } from './evidence.ts';
import { type JudgeInput, type Judgement, judgeSeries } from './judge-series.ts';
import type { Probe } from './probes.ts';
import { judgeStanding } from './standing.ts';

/** A probe of a unit in an era, ready for judgement beside the unit's others. */
export interface ProbeInput {
  probe: Probe;
  input: JudgeInput;
  /** Whether season and supply may move it and could not be taken out. */
  alone: boolean;
}

/**
 * Judges the probes of one unit in one era: each by itself, where a movement must stand, and then those again beside which others move, by a
 * lower threshold and at once: several probes don't err together. One judgement a probe, in the order given.
 */
export function judgeTogether(probes: readonly ProbeInput[]): Judgement[] {
  const own = probes.map((of) => ({
    ...of,
    judgement: judgeStanding(of.input, of.alone ? ALONE : EVIDENCE),
  }));
  return own.map((one) =>
    !one.alone && isCorroborated(one, own) ? judgeSeries(one.input, CORROBORATED) : one.judgement,
  );
}
