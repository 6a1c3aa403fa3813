import { normalQuantile } from '../distributions/normal.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import {
  momentsOfSum,
  type PowerOptions,
  powerAt,
  powerSetting,
  type StratumMargins,
} from './conditional-power.ts';

/**
 * The factor by which a record would have to grow for a given ratio to be detected with the power asked for.
 *
 * Estimated: the number of copies (a fraction allowed; under 1 means that the record was larger than needed)
 * of the same strata, margins and all, that bring the Mantel-Haenszel score test to that power, and the power
 * the record had as it stands. Normal limit with exact conditional moments, as in `detectableRatio`; strata
 * are taken to be more of the same kind. Because more copies also make the normal limit better, the factor is
 * most trustworthy when above 1.
 *
 * Edges: not computable without a stratum with both groups and an event. Growth of 1 or less does not mean
 * significance is attainable in this record if it holds very few events: `attainable` says that (exact
 * one-sided p of the most extreme outcome).
 *
 * @param strata - margins, one entry per stratum
 * @param ratio - above 0 and not 1: odds ratio for trials, rate ratio for time
 * @param options - see `PowerOptions`
 * @throws RangeError for margins, options or a ratio that can't be
 *
 * Source: as `detectableRatio`.
 *
 * @example Growth 2.5 with 300 test days in the record: about 750 days like these are needed
 */
export function dataNeededForRatio(
  strata: readonly StratumMargins[],
  ratio: number,
  options: PowerOptions,
): Outcome<{
  growth: number;
  powerNow: number;
  attainable: boolean;
  ratio: number;
  events: number;
  strataUsed: number;
}> {
  if (!(ratio > 0 && ratio < Number.POSITIVE_INFINITY && ratio !== 1)) {
    throw new RangeError(`dataNeededForRatio: ratio must be above 0 and not 1, found ${ratio}`);
  }
  const setting = powerSetting(strata, options, 'dataNeededForRatio');
  const { power, alpha, events, counts } = setting;
  const method = `data needed for a ratio, Mantel-Haenszel score test, two-sided ${alpha}, power ${power}, ${options.design}`;
  if (counts.length === 0)
    return notComputable(method, 'No stratum has both groups and an event that could fall to either.');
  const there = momentsOfSum(counts, Math.log(ratio), setting.varianceInflation);
  const spread =
    setting.multiplier * Math.sqrt(setting.null.variance) +
    normalQuantile(power, 'lower') * Math.sqrt(there.variance);
  const growth = (spread / (there.mean - setting.null.mean)) ** 2;
  return computed(method, {
    growth,
    powerNow: powerAt(setting, Math.log(ratio)),
    attainable: ratio > 1 ? setting.attainable.above : setting.attainable.below,
    ratio,
    events,
    strataUsed: counts.length,
  });
}
