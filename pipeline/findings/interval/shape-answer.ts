import { percentiles } from './bootstrap.ts';
import type { Intensities } from './expected.ts';
import type { IntervalCase, Reason, ShapeFit } from './interval-schema.ts';
import { SHAPE_OF_INTEREST } from './shape-fit.ts';

export type Answer = IntervalCase['answer']['code'];

/**
 * Whether a rise with the clock is supported, not shown, or not to be told: the likelihood interval of the shape lies above 1 (and with it p at or under alpha), and so does the bootstrap
 * interval, which knows of bad spells and units that the likelihood takes as independent days. Where it is not, the record must have been able to show the shape of interest,
 * or exclude it: with fewer failures nothing can be told.
 */
export function answerOf(
  fit: ShapeFit,
  samples: readonly Intensities[],
  outcome: 'failures' | 'aborts',
  level: number,
): { code: Answer; because: Reason[]; low: number | null; high: number | null } {
  const robust = percentiles(
    samples.filter((sample) => sample[outcome].rate > 0).map((sample) => sample[outcome].shape),
    level,
  );
  if (fit.shape === null || fit.low === null) return { code: 'cannot_tell', because: ['no_fit'], ...robust };
  if (fit.low <= 1 && !couldShow(fit))
    return { code: 'cannot_tell', because: ['too_few_to_show'], ...robust };
  if (fit.shape <= 1) return { code: 'not_supported', because: ['shape_at_or_below_1'], ...robust };
  if (fit.low <= 1) return { code: 'not_supported', because: ['shape_not_above_1_beyond_chance'], ...robust };
  if (robust.low !== null && robust.low <= 1)
    return { code: 'not_supported', because: ['not_above_1_between_units'], ...robust };
  return { code: 'supported', because: ['shape_above_1'], ...robust };
}

/** Whether the record would have shown the shape of interest with the power asked for, or its interval lies below that shape. */
const couldShow = ({ smallest_detectable_shape: smallest, high }: ShapeFit): boolean =>
  (smallest !== null && smallest <= SHAPE_OF_INTEREST) || (high !== null && high < SHAPE_OF_INTEREST);
