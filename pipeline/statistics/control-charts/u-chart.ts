import type { Outcome } from '../result.ts';
import { type AttributeChart, type AttributeChartInput, attributeChart } from './attribute-chart.ts';

/**
 * u chart: events per unit of exposure, one point per period, 3-sigma limits that follow the exposure. With
 * all denominators 1 it is the c chart.
 *
 * Centre = events / exposure over the baseline; sigma of a point = sqrt(centre / denominator); limits centre
 * +- 3 sigma, the lower one clipped at 0. The limits are frozen on the stated baseline and carried over all
 * points.
 *
 * Assumes that events are independent with one rate in control (Poisson). Where they cluster the limits are
 * too narrow; then use `laneyUPrimeChart`.
 *
 * Edges: a period with exposure 0 is a point with value null and `missing` set (events in it are named there
 * and enter nothing). A baseline with fewer than two usable points or without an event is a stated outcome.
 * The limits are symmetric though the Poisson law isn't: with under about 9 expected events a period the
 * lower limit is 0 and false alarms upward exceed the nominal 0.00135.
 *
 * @param input.counts events, whole numbers, one per period in time order
 * @param input.denominators exposure (cycles, days, ...), any number of 0 or more, same length
 * @param input.baseline 0-based positions, both ends included, that set centre and limits; default all points
 * @throws RangeError if lengths differ, a count isn't a whole number of 0 or more, an exposure is negative,
 * or the baseline lies outside
 *
 * Source: Montgomery, Introduction to Statistical Quality Control, 7th ed. (2012), section 7.3.
 *
 * @example
 * uChart({ counts: [14, 12, 20, 11], denominators: [10, 8, 13, 10] });
 * // centre 1.3902; first point 1.4, limits 0.2717 to 2.5088
 */
export function uChart(input: AttributeChartInput): Outcome<AttributeChart> {
  return attributeChart(
    { caller: 'uChart', method: 'u chart, 3-sigma limits', kind: 'rate', widen: 'no' },
    input,
  );
}
