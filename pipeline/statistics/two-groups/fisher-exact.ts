import { hypergeometricCount } from '../distributions/conditional-count.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { checkTwoByTwo, isInformative, type TwoByTwo } from '../stratified/two-by-two.ts';
import { type TwoGroupOptions, type TwoGroupRatio, twoGroupRatio } from './two-sided.ts';

/**
 * Fisher's exact test of a two-by-two table, with the conditional odds ratio and its exact interval.
 *
 * Estimated: odds of an event in the exposed group over those in the unexposed group, by conditional maximum
 * likelihood (not the sample ratio ad / bc), solved to convergence. Assumed: independent trials; inference
 * given both margins. By default the two-sided p-value is central, so it is below 1 - level exactly when the
 * interval leaves out 1.
 *
 * Edges: a group without trials, no event, or nothing but events is not computable. A table at the end of its
 * range gives estimate 0 or Infinity and an interval open to that side. Swapped groups give the reciprocal.
 *
 * @param table - events and trials per group, whole numbers
 * @param options - see `TwoGroupOptions`; mid-p also applies to the interval and the one-sided p-values
 * @throws RangeError for counts or levels that can't be, and for mid-p-of-ties with the central rule
 *
 * Source: R. A. Fisher, JRSS 98 (1935) 39-82; mid-p H. O. Lancaster, JASA 56 (1961) 223-234; mid-p-of-ties M.
 * W. Fagerland, S. Lydersen & P. Laake, Statistical Analysis of Contingency Tables (2017) ch. 4.
 *
 * @example Tea tasting: estimate 6.4083, interval 0.21174 to 626.24, pValue 0.4857
 * fisherExact({ exposedEvents: 3, exposedTotal: 4, unexposedEvents: 1, unexposedTotal: 4 })
 */
export function fisherExact(table: TwoByTwo, options: TwoGroupOptions = {}): Outcome<TwoGroupRatio> {
  const method = `Fisher exact, ${options.twoSided ?? 'central'}, ${options.discreteness ?? 'exact'}`;
  checkTwoByTwo(table, 'fisherExact');
  if (!isInformative(table)) {
    return notComputable(method, 'Both groups, at least one event and at least one non-event are needed.');
  }
  const events = table.exposedEvents + table.unexposedEvents;
  const count = hypergeometricCount(events, table.exposedTotal, table.unexposedTotal);
  const ratio = twoGroupRatio(count, table.exposedEvents, options, 'fisherExact');
  return ratio === undefined
    ? notComputable(method, 'Too many events for the exact distribution.')
    : computed(method, ratio);
}
