import { computed, notComputable, type Outcome } from '../result.ts';
import { type BaselineRange, type ChartPoint, D2_OF_TWO, resolveBaseline } from './chart-result.ts';
import { type ReferenceUsed, resolveReference } from './reference-level.ts';

/** Power that makes an exponential time nearly normal (Nelson 1994): y = t^(1/3.6). */
const POWER = 1 / 3.6;

export interface TChart {
  /** Value, centre and limits in the unit of the times; z on the transformed scale. */
  points: ChartPoint[];
  reference: ReferenceUsed;
  /**
   * Times of 0 (two events at the same moment): the transformation puts them at the far low end. Many of them
   * mean that the unit of time is too coarse for this chart; use the g chart.
   */
  zeros: number;
}

/**
 * t chart: time between rare events, transformed by y = t^(1/3.6) to near normality, charted as individuals
 * with sigma = mean moving range / 1.128, and limits (mean +- 3 sigma of y) taken back to time.
 *
 * Assumes exponential times in control (a constant rate of events); y is then close to a normal variable
 * (Weibull of shape 3.6). More trouble gives SHORTER times: the alarm side is down. If the lower limit of y
 * is under 0 it is clipped to 0 and a single short time can't signal.
 *
 * Edges: fewer than two times in the baseline, or times that never differ, is a stated outcome. The time
 * still running after the last event isn't complete and isn't an input.
 *
 * @param input.times times between events, 0 or more, any unit, in time order
 * @param input.baseline 0-based positions, both ends included; default all
 * @throws RangeError if a time is negative or not finite, or the baseline lies outside
 *
 * Source: Nelson, "A control chart for parts-per-million nonconforming items", Journal of Quality Technology
 * 26 (1994) 239-240; Montgomery, Introduction to Statistical Quality Control, section 7.3.
 */
export function tChart(input: { times: readonly number[]; baseline?: BaselineRange }): Outcome<TChart> {
  const method = `t chart, y = t^(1/3.6), sigma by moving range / ${D2_OF_TWO}`;
  const { times } = input;
  for (const [i, time] of times.entries()) {
    if (!Number.isFinite(time) || time < 0) {
      throw new RangeError(`tChart: times[${i}] must be a number of 0 or more, found ${time}.`);
    }
  }
  const range = resolveBaseline('tChart', times.length, input.baseline);
  const transformed = times.map((t) => t ** POWER);
  const given = input.baseline ? { baseline: input.baseline } : {};
  const reference = resolveReference('tChart', transformed, given, 'moving-range');
  if (typeof reference === 'string') return notComputable(method, reference);
  const back = (y: number) => Math.max(0, y) ** 3.6;
  const centre = back(reference.centre);
  const lower = back(reference.centre - 3 * reference.sigma);
  const upper = back(reference.centre + 3 * reference.sigma);
  const points = transformed.map((y, index): ChartPoint => {
    const z = (y - reference.centre) / reference.sigma;
    return { index, value: times[index]!, centre, lower, upper, sigma: null, z };
  });
  const zeros = times.slice(range.first, range.last + 1).filter((t) => t === 0).length;
  return computed(method, { points, reference, zeros });
}
