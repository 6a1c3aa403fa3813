import { findRoot } from '../distributions/find-root.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { type PowerOptions, powerAt, powerSetting, type StratumMargins } from './conditional-power.ts';

/** Beyond this log ratio (e^12, about 160 000) no ratio is of interest. */
const LARGEST_LOG_RATIO = 12;

/**
 * The smallest ratio above 1 that a stratified comparison had the power to detect, given its margins.
 *
 * Estimated: the common odds ratio (trials) or rate ratio (time) at which the Mantel-Haenszel score test,
 * two-sided at alpha, rejects with the power asked for. The exposed events are taken as normal with the exact
 * means and variances of their (noncentral) hypergeometric or binomial distributions at ratio 1 and at the
 * ratio in question. Assumed: the margins as observed, strata independent, a common ratio; the variance
 * inflation accounts for days that are not independent. With under about 10 events the normal limit is rough.
 *
 * Edges: not computable without a stratum with both groups and an event; where even the most extreme outcome
 * would not be significant (exact one-sided p above alpha / 2); and where no ratio under 160 000 has that
 * power.
 *
 * @param strata - margins, one entry per stratum
 * @param options - see `PowerOptions`
 * @throws RangeError for margins or options that can't be
 *
 * Source: conditional moments, Breslow & Day, Statistical Methods in Cancer Research II (1987) ch. 7; J.
 * Wittes & S. Wallenstein, JASA 82 (1987) 1104-1109.
 */
export function detectableRatio(
  strata: readonly StratumMargins[],
  options: PowerOptions,
): Outcome<{ ratio: number; power: number; alpha: number; events: number; strataUsed: number }> {
  const setting = powerSetting(strata, options, 'detectableRatio');
  const { power, alpha, events, counts } = setting;
  const method = `detectable ratio, Mantel-Haenszel score test, two-sided ${alpha}, power ${power}, ${options.design}`;
  if (counts.length === 0)
    return notComputable(method, 'No stratum has both groups and an event that could fall to either.');
  if (!setting.attainable.above) {
    return notComputable(
      method,
      'There are too few events: even the most extreme outcome would not be significant.',
    );
  }
  const shortfall = (logRatio: number) => powerAt(setting, logRatio) - power;
  if (shortfall(LARGEST_LOG_RATIO) < 0) {
    return notComputable(method, 'There are too few events: no ratio, however large, had that power.');
  }
  const ratio = Math.exp(findRoot(shortfall, 0, LARGEST_LOG_RATIO, 1e-10));
  return computed(method, { ratio, power, alpha, events, strataUsed: counts.length });
}
