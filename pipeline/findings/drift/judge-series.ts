import type { Day } from '../../site/day.ts';
import { type ChangeScan, type SlopeFit, type StepFit, scanChanges } from './change-scan.ts';
import { chartSignal } from './chart-signal.ts';
import { EVIDENCE, type Evidence } from './evidence.ts';
import { slowVariance } from './noise.ts';

/** A series ready for judgement: tamed, freed of the site's movement and of a saw-tooth, with its noise. */
export interface JudgeInput {
  t: readonly number[];
  y: readonly number[];
  w: readonly number[];
  /** The same before the site's movement was taken out: a movement must show there too. */
  measured: readonly number[];
  /** Standard deviation of a value of weight 1, and the autocorrelation that matters for slow movements. */
  spread: number;
  autocorrelation: number;
  /** Smallest change of the level that counts, on the scale of y (coarse values can't show less). */
  leastChange: number;
  /** Fewest values for a judgement. */
  leastValues: number;
  /** Slowest slope that counts, in noise standard deviations a day. */
  leastRate: number;
  /** Share of a step that the values as measured must show for it to be named. */
  leastMeasuredStep: number;
}

export interface SeriesStep {
  /** Position and day of the first value of the new level. */
  index: number;
  day: Day;
  before: number;
  after: number;
  /** Change of the values as measured, as a share of the step. */
  measured: number;
}

export interface Judgement {
  state: 'steady' | 'moving' | 'stepped' | 'not_enough_data';
  /** Position of the first value since the last step. */
  from: number;
  slope: SlopeFit | null;
  scan: ChangeScan | null;
  signal: 'ewma' | 'cusum' | null;
  /** All steps that are named, in order of time. */
  steps: SeriesStep[];
  /** Gain of the best slope since the last step, whether it was called or not. */
  slopeGain: number;
  /** Variance in units of which gains are told. */
  unit: number;
  /** The charts signal, yet nothing tells a step from a slope so far. */
  undecided: boolean;
}

/**
 * Judges a series as it stands at its last value: steady, moving or stepped.
 *
 * Steps are looked for first, the largest first, on either side of those found, and the series is then read from the last one on. A movement is called where the EWMA or
 * CUSUM signals at the end of the series and a slope explains the values so much better than a constant level that chance would not (EVIDENCE.moving, in units of
 * the noise variance of a slow movement), better than any step by a margin, and over enough values. A step of the last few values competes with the slope before it
 * can be called itself.
 */
export function judgeSeries(input: JudgeInput, evidence: Evidence = EVIDENCE): Judgement {
  const { t, y, leastValues } = input;
  const steps: SeriesStep[] = [];
  findSteps(input, evidence, 0, y.length, steps);
  steps.sort((a, b) => a.index - b.index);
  const from = steps.at(-1)?.index ?? 0;
  const n = y.length - from;
  const named = steps.filter((step) => step.measured >= input.leastMeasuredStep);
  const level = named.length > 0 ? 'stepped' : 'steady';
  const none = {
    from,
    slope: null,
    scan: null,
    signal: null,
    steps: named,
    slopeGain: 0,
    unit: slowVariance(input),
    undecided: false,
  };
  if (n < (steps.length > 0 ? evidence.valuesOfNewLevel : leastValues))
    return { ...none, state: steps.length > 0 ? level : 'not_enough_data' };

  const part = partOf(input, from, y.length);
  const { scan, stepGain, slopeGain } = gains(input, evidence, from, y.length, true);
  const { slope } = scan;
  const rise = slope ? Math.abs(slope.slope) * (t.at(-1)! - slope.knot) : 0;
  const signal = chartSignal(part, input.spread, input.autocorrelation);
  const margin = marginOf(input, evidence, from, scan.step, slopeGain);
  const isSlope =
    slope !== null &&
    signal !== null &&
    slopeGain >= evidence.moving &&
    slopeGain - stepGain >= margin &&
    rise >= Math.max(input.leastChange, evidence.leastRise * input.spread) &&
    Math.abs(slope.slope) >= input.leastRate * input.spread &&
    shareMeasured(input, from, slope) >= evidence.leastMeasured;
  return {
    ...none,
    state: isSlope ? 'moving' : level,
    slope: isSlope ? slope : null,
    scan,
    slopeGain,
    signal: isSlope ? signal : null,
    undecided: !isSlope && signal !== null && Math.max(stepGain, slopeGain) >= evidence.moving,
  };
}

/**
 * By how much a slope must explain the values better than the best step. Less where the best step is small and some days old: a step is most often larger, while a slope looks like a
 * small step for its first half; that a small step is then called a movement is the price. Elsewhere the more, the more there is to explain: of a straight slope the best step
 * leaves a ninth unexplained.
 */
function marginOf(
  input: JudgeInput,
  evidence: Evidence,
  from: number,
  step: StepFit | null,
  slopeGain: number,
): number {
  if (step && isSmall(input, evidence, step, input.y.length - from)) return evidence.smallMargin;
  return Math.max(evidence.slopeMargin, evidence.slopeShare * slopeGain);
}

const isSmall = (input: JudgeInput, evidence: Evidence, step: StepFit, values: number): boolean =>
  Math.abs(step.after - step.before) < evidence.smallStep * input.spread &&
  values - step.index >= evidence.valuesOfSmallStep;

/**
 * Slope of the values as measured from the same place, as a share of the slope of the adjusted ones. Near 1 as a rule; near 0 where the adjusted series moves only because
 * the site's movement was misjudged (several other units stepped one after the other).
 */
export function shareMeasured({ t, w, measured }: JudgeInput, from: number, slope: SlopeFit): number {
  let [sw, sx, sy, sxx, sxy] = [0, 0, 0, 0, 0];
  for (let i = from; i < t.length; i++) {
    const x = Math.max(0, t[i]! - slope.knot);
    sw += w[i]!;
    sx += w[i]! * x;
    sy += w[i]! * measured[i]!;
    sxx += w[i]! * x * x;
    sxy += w[i]! * x * measured[i]!;
  }
  return (sxy - (sx * sy) / sw) / (sxx - (sx * sx) / sw) / slope.slope;
}

/** Steps between two positions, found one by one; each divides what is left. */
function findSteps(
  input: JudgeInput,
  evidence: Evidence,
  first: number,
  end: number,
  steps: SeriesStep[],
): void {
  if (end - first < input.leastValues) return;
  const { scan, stepGain, slopeGain } = gains(input, evidence, first, end);
  const { step } = scan;
  if (!step || end - first - step.index < evidence.valuesAfterStep) return;
  const least = Math.max(input.leastChange, evidence.leastStep * input.spread);
  if (stepGain < evidence.step) return;
  const margin = isSmall(input, evidence, step, end - first) ? evidence.smallStepMargin : evidence.stepMargin;
  if (stepGain - slopeGain < margin) {
    // Two steps one after the other look like a slope until both are taken.
    const both = stepGain + secondGain(input, evidence, first, first + step.index, end);
    if (both - slopeGain < evidence.twoStepsMargin) return;
  }
  if (Math.abs(step.after - step.before) < least) return;
  const index = first + step.index;
  const measured = stepMeasured(input, first, index, end) / (step.after - step.before);
  steps.push({ index, day: input.t[index]!, before: step.before, after: step.after, measured });
  findSteps(input, evidence, first, index, steps);
  findSteps(input, evidence, index, end, steps);
}

/** Change of the weighted mean of the values as measured. */
function stepMeasured({ w, measured }: JudgeInput, first: number, index: number, end: number): number {
  const mean = (from: number, to: number) => {
    let [sum, weight] = [0, 0];
    for (let i = from; i < to; i++) {
      sum += w[i]! * measured[i]!;
      weight += w[i]!;
    }
    return sum / weight;
  };
  return mean(index, end) - mean(first, index);
}

/** What a second step on either side of the first gains. */
function secondGain(
  input: JudgeInput,
  evidence: Evidence,
  first: number,
  middle: number,
  end: number,
): number {
  const side = (from: number, to: number) =>
    to - from < input.leastValues ? 0 : gains(input, evidence, from, to).stepGain;
  return Math.max(side(first, middle), side(middle, end));
}

const partOf = ({ t, y, w }: JudgeInput, first: number, end: number) => ({
  t: t.slice(first, end),
  y: y.slice(first, end),
  w: w.slice(first, end),
});

/** Best step and slope of a part, with their gains in units of the variance that a slow movement sees. */
export function gains(input: JudgeInput, evidence: Evidence, first: number, end: number, keepSlopes = false) {
  const part = partOf(input, first, end);
  const room = {
    before: Math.ceil(input.leastValues / 2),
    afterStep: 1,
    afterKnot: evidence.valuesAfterKnot,
    daysAfterKnot: evidence.daysAfterKnot,
    wholeSlope: end - first >= input.leastValues && part.t.at(-1)! - part.t[0]! >= evidence.daysOfWholeSlope,
  };
  const scan = scanChanges(part, room, keepSlopes);
  const unit = slowVariance(input);
  const gain = (sse: number | undefined) => (sse === undefined ? 0 : (scan.constant.sse - sse) / unit);
  return { scan, stepGain: gain(scan.step?.sse), slopeGain: gain(scan.slope?.sse) };
}

/**
 * What a series seems to have done, by position, 0 on its first level: steps and a slope by laxer rules than those of a call. For taking out of the site's common movement,
 * where a movement of one unit that is left in does more harm than one that is taken out in vain.
 */
export function likelyShape(input: JudgeInput): { shape: number[]; gain: number } | null {
  const { t, y } = input;
  if (y.length < input.leastValues) return null;
  const steps: SeriesStep[] = [];
  findSteps(input, LAX, 0, y.length, steps);
  const from = Math.max(0, ...steps.map((step) => step.index));
  const all = gains(input, LAX, 0, y.length);
  let gain = steps.length > 0 ? Math.max(all.stepGain, all.slopeGain) : 0;
  let slope: SlopeFit | null = null;
  if (y.length - from >= LAX.valuesOfNewLevel) {
    const { scan, stepGain, slopeGain } = gains(input, LAX, from, y.length);
    if (slopeGain >= LAX.moving && slopeGain >= stepGain) slope = scan.slope;
    else if (stepGain >= LAX.step) {
      const step = scan.step!;
      const index = from + step.index;
      steps.push({ index, day: t[index]!, before: step.before, after: step.after, measured: 1 });
    }
    gain = Math.max(gain, slope ? slopeGain : stepGain);
  }
  if (!slope && steps.length === 0) return null;
  const shape = t.map((day, i) => {
    let moved = slope && i >= from ? slope.slope * Math.max(0, day - slope.knot) : 0;
    for (const step of steps) if (i >= step.index) moved += step.after - step.before;
    return moved;
  });
  return { shape, gain };
}

const LAX: Evidence = { ...EVIDENCE, moving: 8, step: 12, stepMargin: 2, leastStep: 0, valuesAfterStep: 4 };
