import { computed, notComputable, type Outcome } from '../result.ts';
import { type BaselineRange, type ChartPoint, meanMovingRange } from './chart-result.ts';
import { type ReferenceUsed, resolveReference, type Series } from './reference-level.ts';

/**
 * D4 for ranges of two: upper 3-sigma limit of the moving range as a multiple of its mean (ASTM table value,
 * three decimals).
 */
const D4_OF_TWO = 3.267;

export interface IndividualsChart {
  points: ChartPoint[];
  reference: ReferenceUsed;
  /** |value - value before|, null at the first point and next to a missing one. */
  movingRanges: (number | null)[];
  movingRangeCentre: number;
  movingRangeUpper: number;
}

/**
 * Individuals and moving-range chart (XmR): single values, limits mean +- 3 sigma with sigma = mean moving
 * range / 1.128, and the moving range with its upper limit 3.267 times its mean. Limits are frozen on the
 * stated baseline.
 *
 * Assumes roughly normal, independent values in control: the chart is sensitive to skew, and under positive
 * autocorrelation the moving range is too small and false alarms abound. Neither is checked here.
 *
 * Edges: null is a missing value, plotted as such; no moving range crosses it. A baseline with fewer than two
 * values, without two neighbours, or without any change is a stated outcome.
 *
 * @param input.values one value per period in time order, any unit, null where missing
 * @param input.baseline 0-based positions, both ends included; default all points
 * @throws RangeError if a value isn't finite or null, or the baseline lies outside
 *
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2; Montgomery, Introduction to Statistical
 * Quality Control, section 6.4.
 */
export function individualsChart(input: {
  values: Series;
  baseline?: BaselineRange;
}): Outcome<IndividualsChart> {
  const method = 'individuals and moving-range chart, sigma by moving range / 1.128';
  const { values, baseline } = input;
  const reference = resolveReference(
    'individualsChart',
    values,
    baseline ? { baseline } : {},
    'moving-range',
  );
  if (typeof reference === 'string') return notComputable(method, reference);
  const { centre, sigma } = reference;
  const lower = centre - 3 * sigma;
  const upper = centre + 3 * sigma;
  const points = values.map((value, index): ChartPoint => {
    if (value === null) return { index, value, centre, lower, upper, sigma, z: null, missing: 'no value' };
    return { index, value, centre, lower, upper, sigma, z: (value - centre) / sigma };
  });
  const movingRanges = values.map((value, i) => {
    const before = values[i - 1] ?? null;
    return value === null || before === null ? null : Math.abs(value - before);
  });
  const range = reference.baseline!;
  const movingRangeCentre = meanMovingRange(values, range.first, range.last).mean!;
  return computed(method, {
    points,
    reference,
    movingRanges,
    movingRangeCentre,
    movingRangeUpper: D4_OF_TWO * movingRangeCentre,
  });
}
