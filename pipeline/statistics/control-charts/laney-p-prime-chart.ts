import type { Outcome } from '../result.ts';
import { type AttributeChart, type AttributeChartInput, attributeChart } from './attribute-chart.ts';

/**
 * Laney's p' chart: a p chart whose limits also hold the spread from period to period that the binomial law
 * leaves out.
 *
 * z_i = (p_i - centre) / sqrt(centre (1 - centre) / n_i); sigma_z = mean moving range of z over the baseline
 * / 1.128; limits centre +- 3 sqrt(centre (1 - centre) / n_i) sigma_z, clipped to [0, 1]. The `z` of a
 * returned point is z_i / sigma_z, so that run rules read it as they read any chart.
 *
 * Conventions: sigma_z is not floored at 1 (some software does), so limits may also be narrower than the
 * plain chart's; d2 is the table value 1.128 (2/sqrt(pi) = 1.128379 is 0.03 % larger).
 *
 * Assumes no trend inside the baseline and little autocorrelation: positive autocorrelation makes neighbours
 * alike, sigma_z too small and the limits too narrow.
 *
 * Edges: as `pChart`; a moving range is taken only between direct neighbours that both have a denominator; a
 * baseline whose neighbours never differ (sigma_z = 0) or has no such pair is a stated outcome.
 * `movingRanges` says how many sigma_z rests on: with m of them its relative standard error is about
 * sqrt(0.83 / m), 20 % for 20.
 *
 * @param input.counts cases with the event, whole numbers, one per period in time order
 * @param input.denominators cases, whole numbers, same length
 * @param input.baseline 0-based positions, both ends included, that set centre, sigma_z and limits; default
 * all points
 * @throws RangeError as `pChart`
 *
 * Source: Laney, "Improved control charts for attributes", Quality Engineering 14 (2002) 531-537.
 */
export function laneyPPrimeChart(input: AttributeChartInput): Outcome<AttributeChart> {
  return attributeChart(
    {
      caller: 'laneyPPrimeChart',
      method: "Laney's p' chart, sigma_z by moving range / 1.128, not floored",
      kind: 'proportion',
      widen: 'laney',
    },
    input,
  );
}
