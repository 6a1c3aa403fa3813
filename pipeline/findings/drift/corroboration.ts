import { CAUSES, movesAs } from './cause-pattern.ts';
import type { Judgement } from './judge-series.ts';
import type { Probe } from './probes.ts';

/** How one probe of a unit stands by itself. */
export interface OwnJudgement {
  probe: Probe;
  judgement: Judgement;
}

/** What slopes of several probes must gain together, where each other probe counts with what it gains beyond chance. */
const TOGETHER = 22;
const BY_CHANCE = 2;
/** Slopes are of one movement where they begin so many days apart at most. */
const SAME_BEGINNING_DAYS = 20;

/**
 * Whether other probes of the unit move too, since about the same time, all as one of the causes has it, and enough of them all together. A clog, a leak or a worn pump shows in several probes;
 * what noise or the site's movement leave behind shows in one.
 *
 * Source: sums of what each stream gains beyond a threshold, for changes that reach an unknown few of many streams: Mei, Biometrika 97 (2010) 419-433.
 */
export function isCorroborated(of: OwnJudgement, others: readonly OwnJudgement[]): boolean {
  const { slope } = of.judgement.scan ?? {};
  if (!slope || of.judgement.state === 'moving') return false;
  return CAUSES.some((cause) => {
    if (!movesAs(cause, of.probe, slope.slope)) return false;
    let support = 0;
    for (const other of others) {
      const { scan, unit } = other.judgement;
      if (other.probe === of.probe || !scan) continue;
      let least = scan.constant.sse;
      for (const { knot, slope: rate, sse } of scan.slopes)
        if (Math.abs(knot - slope.knot) <= SAME_BEGINNING_DAYS && movesAs(cause, other.probe, rate))
          least = Math.min(least, sse);
      support += Math.max(0, (scan.constant.sse - least) / unit - BY_CHANCE);
    }
    return support > 0 && of.judgement.slopeGain + support >= TOGETHER;
  });
}
