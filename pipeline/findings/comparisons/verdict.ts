import type { Rules } from '../../site/rules.ts';
import type { Verdict } from '../review-schema.ts';

/** What a verdict is made from. */
export interface Evidence {
  ratio: number | null;
  low: number | null;
  p: number | null;
  adjustedP: number | null;
  smallestDetectableRatio: number | null;
  controlMoved: boolean;
  mostlyReactive: boolean;
  exposedDays: number;
  unexposedDays: number;
  knownDays: number;
}

export interface Judged {
  verdict: Verdict;
  /** Codes of the reasons, in the order in which they count. */
  because: string[];
}

/**
 * The verdict of a comparison.
 *
 * - `not_comparable`: half or more of the cleanings are reactive, or the exposure hardly varies.
 * - `shown`: interval above 1 and adjusted p at or under the line, control outcome still.
 * - `suggested`: the estimate lies above 1, and unadjusted p is at or under the line or one of the two conditions holds.
 * - `not_shown`: neither, though the record had the power to show the ratio of interest.
 * - `cannot_tell`: neither, and it had not.
 *
 * Where the control outcome moved the verdict falls by one step: from shown to suggested, from suggested to not shown (cannot tell without power).
 * A ratio below 1 is never "shown" or "suggested": the question is whether failures rise.
 */
export function judge(evidence: Evidence, rules: Rules['comparison']): Judged {
  if (evidence.mostlyReactive) return { verdict: 'not_comparable', because: ['mostly_reactive'] };
  if (evidence.knownDays === 0) return { verdict: 'cannot_tell', because: ['no_exposure_known'] };
  const { least_days_each_side: least, alpha } = rules;
  if (evidence.exposedDays < least || evidence.unexposedDays < least)
    return { verdict: 'not_comparable', because: ['hardly_varies'] };
  const without = judgeWithout(evidence.smallestDetectableRatio, rules, []);
  if (evidence.ratio === null || evidence.p === null) return without;

  const up = evidence.ratio > 1;
  const reasons = {
    interval_above_1: up && evidence.low !== null && evidence.low > 1,
    adjusted_p: up && evidence.adjustedP !== null && evidence.adjustedP <= alpha,
    unadjusted_p: up && evidence.p <= alpha,
  };
  const because = Object.entries(reasons).flatMap(([code, holds]) => (holds ? [code] : []));
  const shown = reasons.interval_above_1 && reasons.adjusted_p;
  if (because.length === 0)
    return { ...without, because: [...without.because, ...(up ? [] : ['points_down'])] };
  if (shown && !evidence.controlMoved) return { verdict: 'shown', because };
  if (shown) return { verdict: 'suggested', because: [...because, 'control_moved'] };
  if (!evidence.controlMoved) return { verdict: 'suggested', because };
  return { verdict: without.verdict, because: [...because, 'control_moved', ...without.because] };
}

/**
 * The verdict once the exposure was set beside the others that speak. Carried by another: not shown (cannot tell without power). Not told apart
 * from another: shown falls to suggested.
 *
 * @param findings what was found beside each of the others
 */
export function judgeBeside(
  judged: Judged,
  findings: readonly ('holds' | 'carried_by_other' | 'not_told_apart')[],
  smallestDetectableRatio: number | null,
  rules: Rules['comparison'],
): Judged {
  const because = (code: string) => [...judged.because, code];
  if (findings.includes('carried_by_other'))
    return judgeWithout(smallestDetectableRatio, rules, because('carried_by_other'));
  if (findings.includes('not_told_apart'))
    return { verdict: 'suggested', because: because('not_told_apart') };
  return judged;
}

/** Neither condition holds: not shown with power for the ratio of interest, cannot tell without. */
function judgeWithout(
  smallestDetectableRatio: number | null,
  rules: Rules['comparison'],
  because: string[],
): Judged {
  return smallestDetectableRatio !== null && smallestDetectableRatio <= rules.ratio_of_interest
    ? { verdict: 'not_shown', because: [...because, 'power'] }
    : { verdict: 'cannot_tell', because: [...because, 'too_little_data'] };
}
