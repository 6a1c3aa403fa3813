export interface RunLength {
  /** Mean number of values up to and including the one that signals (ARL). */
  average: number;
  /** Smallest number of values within which at least half of the runs have signalled. */
  median: number;
}

/** Relative change of the hazard under which it counts as constant, and for how many values in a row. */
const STEADY = 1e-9;
const STEADY_FOR = 12;
/**
 * A hazard this small is lost in rounding; after so many values in a row the chart counts as never
 * signalling.
 */
const LOST = 1e-10;
const LOST_FOR = 500;

/**
 * Mean and median run length from the probabilities of no signal within 1, 2, 3, ... values (an endless
 * sequence).
 *
 * They are summed until the hazard is constant, when the chart has forgotten its start; from there the run
 * length is geometric and the rest is a closed sum. Relative error of the average under 1e-6 for averages up
 * to 1 million, and at worst in proportion above. Both are Infinity where no signal can be told from rounding
 * (hazard under 1e-10 for 500 values).
 */
export function runLengthOfSurvival(probabilities: Iterable<number>): RunLength {
  let survival = 1;
  let average = 1;
  let hazard = 0;
  let steady = 0;
  let lost = 0;
  let values = 0;
  let median: number | null = null;
  for (const now of probabilities) {
    values += 1;
    const hazardNow = 1 - now / survival;
    lost = hazardNow < LOST ? lost + 1 : 0;
    if (lost >= LOST_FOR) return { average: Number.POSITIVE_INFINITY, median: Number.POSITIVE_INFINITY };
    // The second term is what rounding of the probabilities leaves of a small hazard.
    const near = Math.abs(hazardNow - hazard) <= STEADY * hazardNow + 1e-14;
    steady = near && lost === 0 ? steady + 1 : 0;
    hazard = hazardNow;
    survival = now;
    average += survival;
    if (median === null && survival <= 0.5) median = values;
    if (steady >= STEADY_FOR || survival < 1e-14) break;
  }
  if (survival >= 1e-14) average += (survival * (1 - hazard)) / hazard;
  median ??= values + Math.ceil(Math.log(0.5 / survival) / Math.log1p(-hazard));
  return { average, median };
}
