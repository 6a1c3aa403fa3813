import type { Outcome } from '../result.ts';
import { type AttributeChart, type AttributeChartInput, attributeChart } from './attribute-chart.ts';

/**
 * p chart: proportions of cases with an event, one point per period, 3-sigma limits that follow the
 * denominator.
 *
 * Centre = events / cases over the baseline; sigma of a point = sqrt(centre (1 - centre) / denominator);
 * limits centre +- 3 sigma, clipped to [0, 1]. The limits are frozen on the stated baseline and carried over
 * all points.
 *
 * Assumes that cases are independent with one probability in control (binomial). With large denominators that
 * is seldom true of operational data and nearly all points fall outside; then use `laneyPPrimeChart`.
 *
 * Edges: a period with denominator 0 is a point with value null and `missing` set; it enters nothing. A
 * baseline with fewer than two usable points, without an event or with nothing but events is a stated
 * outcome. Where the lower limit is clipped at 0 no signal downward is possible from one point.
 *
 * @param input.counts cases with the event, whole numbers, one per period in time order
 * @param input.denominators cases, whole numbers, same length
 * @param input.baseline 0-based positions, both ends included, that set centre and limits; default all points
 * @throws RangeError if lengths differ, a number isn't a whole number of 0 or more, a count exceeds its
 * denominator, or the baseline lies outside
 *
 * Source: Montgomery, Introduction to Statistical Quality Control, 7th ed. (2012), section 7.2.
 *
 * @example
 * pChart({ counts: [12, 15, 8, 10], denominators: [50, 50, 50, 50] });
 * // centre 0.225, limits 0.0478 to 0.4022
 */
export function pChart(input: AttributeChartInput): Outcome<AttributeChart> {
  return attributeChart(
    { caller: 'pChart', method: 'p chart, 3-sigma limits', kind: 'proportion', widen: 'no' },
    input,
  );
}
