import { fitsOneCause } from './cause-pattern.ts';
import type { Judgement } from './judge-series.ts';
import type { Probe } from './probes.ts';

/** How one probe of a unit stands by itself. */
export interface OwnJudgement {
  probe: Probe;
  judgement: Judgement;
}

/** Gain of a slope that is not enough for a call and yet speaks for that of another probe. */
const LEAST_GAIN = 9;
/** Two movements are one where they began so many days apart at most. */
const SAME_BEGINNING_DAYS = 30;

/**
 * Whether another probe of the unit seems to move too, since about the same time, and both as one of the causes has it. A clog, a leak or a worn pump shows in several probes; what noise
 * or the site's movement leave behind shows in one.
 */
export function isCorroborated(of: OwnJudgement, others: readonly OwnJudgement[]): boolean {
  const { slope } = of.judgement.scan ?? {};
  if (!slope || of.judgement.state === 'moving') return false;
  return others.some((other) => {
    const theirs = other.judgement.scan?.slope;
    return (
      other.probe !== of.probe &&
      theirs &&
      other.judgement.slopeGain >= LEAST_GAIN &&
      Math.abs(theirs.knot - slope.knot) <= SAME_BEGINNING_DAYS &&
      fitsOneCause([of.probe, slope.slope], [other.probe, theirs.slope])
    );
  });
}
