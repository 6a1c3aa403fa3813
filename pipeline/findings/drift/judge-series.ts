import type { Day } from '../../site/day.ts';
import { type ChangeScan, type SlopeFit, scanChanges } from './change-scan.ts';
import { chartSignal } from './chart-signal.ts';
import { EVIDENCE } from './evidence.ts';

/** A series ready for judgement: tamed, freed of the site's movement and of a saw-tooth, with its noise. */
export interface JudgeInput {
  t: readonly number[];
  y: readonly number[];
  w: readonly number[];
  /** Standard deviation of a value of weight 1, and the autocorrelation that matters for slow movements. */
  spread: number;
  autocorrelation: number;
  /** Smallest change of the level that counts, on the scale of y (coarse values can't show less). */
  leastChange: number;
  /** Fewest values for a judgement. */
  leastValues: number;
  /** Slowest slope that counts, in noise standard deviations a day. */
  leastRate: number;
}

export interface SeriesStep {
  day: Day;
  before: number;
  after: number;
}

export interface Judgement {
  state: 'steady' | 'moving' | 'stepped' | 'not_enough_data';
  /** Position of the first value since the last step. */
  from: number;
  slope: SlopeFit | null;
  scan: ChangeScan | null;
  signal: 'ewma' | 'cusum' | null;
  lastStep: SeriesStep | null;
  /** The charts signal, yet nothing tells a step from a slope so far. */
  undecided: boolean;
}

/**
 * Judges a series as it stands at its last value: steady, moving or stepped.
 *
 * Steps are looked for first, the largest first, and the series is then read from the last one on. A movement is called where the EWMA or CUSUM signals at the end of
 * the series and a slope explains the values so much better than a constant level that chance would not (EVIDENCE.moving, in units of the noise variance of a
 * slow movement), better than any step by a margin, and over enough values.
 */
export function judgeSeries(input: JudgeInput): Judgement {
  const { t, y, w, leastValues } = input;
  let from = 0;
  let lastStep: SeriesStep | null = null;
  for (;;) {
    const part = { t: t.slice(from), y: y.slice(from), w: w.slice(from) };
    const n = part.y.length;
    if (n < (lastStep ? Math.min(leastValues, EVIDENCE.valuesAfterStep) : leastValues)) {
      return {
        state: lastStep ? 'stepped' : 'not_enough_data',
        from,
        slope: null,
        scan: null,
        signal: null,
        lastStep,
        undecided: false,
      };
    }
    const scan = scanChanges(part, {
      before: Math.max(4, Math.min(8, Math.floor(leastValues / 3))),
      after: EVIDENCE.valuesAfterChange,
      wholeSlope: n >= leastValues && part.t[n - 1]! - part.t[0]! >= EVIDENCE.daysOfWholeSlope,
    });
    const unit = (input.spread * input.spread * (1 + input.autocorrelation)) / (1 - input.autocorrelation);
    const gain = (sse: number | undefined) => (sse === undefined ? 0 : (scan.constant.sse - sse) / unit);
    const stepGain = gain(scan.step?.sse);
    const slopeGain = gain(scan.slope?.sse);
    const { step, slope } = scan;
    const stepSize = step ? Math.abs(step.after - step.before) : 0;
    const isStep =
      step !== null &&
      stepGain >= EVIDENCE.step &&
      stepGain - slopeGain >= EVIDENCE.stepMargin &&
      stepSize >= Math.max(input.leastChange, EVIDENCE.leastStep * input.spread);
    if (isStep) {
      lastStep = { day: part.t[step.index]!, before: step.before, after: step.after };
      from += step.index;
      continue;
    }
    const rise = slope ? Math.abs(slope.slope) * (part.t[n - 1]! - slope.knot) : 0;
    const signal = chartSignal(part, input.spread, input.autocorrelation);
    const isSlope =
      slope !== null &&
      signal !== null &&
      slopeGain >= EVIDENCE.moving &&
      slopeGain - stepGain >= EVIDENCE.slopeMargin &&
      rise >= Math.max(input.leastChange, EVIDENCE.leastRise * input.spread) &&
      Math.abs(slope.slope) >= input.leastRate * input.spread;
    return {
      state: isSlope ? 'moving' : lastStep ? 'stepped' : 'steady',
      from,
      slope: isSlope ? slope : null,
      scan,
      signal: isSlope ? signal : null,
      lastStep,
      undecided:
        !isSlope &&
        signal !== null &&
        Math.max(stepGain, slopeGain) >= EVIDENCE.moving &&
        Math.abs(stepGain - slopeGain) < Math.max(EVIDENCE.slopeMargin, EVIDENCE.stepMargin),
    };
  }
}
