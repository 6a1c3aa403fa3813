import type { Outcome } from '../result.ts';
import { type AttributeChart, type AttributeChartInput, attributeChart } from './attribute-chart.ts';

/**
 * Laney's u' chart: a u chart whose limits also hold the spread from period to period that the Poisson law
 * leaves out.
 *
 * z_i = (u_i - centre) / sqrt(centre / a_i); sigma_z = mean moving range of z over the baseline / 1.128;
 * limits centre +- 3 sqrt(centre / a_i) sigma_z, the lower one clipped at 0. The `z` of a returned point is
 * z_i / sigma_z.
 *
 * Conventions, assumptions and edges: as `laneyPPrimeChart` (sigma_z not floored at 1; d2 = 1.128; a missing
 * period breaks the moving range).
 *
 * @param input.counts events, whole numbers, one per period in time order
 * @param input.denominators exposure, any number of 0 or more, same length
 * @param input.baseline 0-based positions, both ends included, that set centre, sigma_z and limits; default
 * all points
 * @throws RangeError as `uChart`
 *
 * Source: Laney, "Improved control charts for attributes", Quality Engineering 14 (2002) 531-537.
 */
export function laneyUPrimeChart(input: AttributeChartInput): Outcome<AttributeChart> {
  return attributeChart(
    {
      caller: 'laneyUPrimeChart',
      method: "Laney's u' chart, sigma_z by moving range / 1.128, not floored",
      kind: 'rate',
      widen: 'laney',
    },
    input,
  );
}
