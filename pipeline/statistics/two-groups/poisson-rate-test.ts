import { binomialCount } from '../distributions/conditional-count.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { checkRateStratum, isInformative, type RateStratum } from '../stratified/rate-stratum.ts';
import { type TwoGroupOptions, type TwoGroupRatio, twoGroupRatio } from './two-sided.ts';

/**
 * Exact comparison of two Poisson rates: test, rate ratio and interval, given the total count.
 *
 * Estimated: events per time in the exposed group over that in the unexposed group. Assumed: independent
 * Poisson counts. Given their total, the exposed count is binomial, and the binomial interval of its share
 * gives that of the ratio. By default the two-sided p-value is central, so it is below 1 - level exactly when
 * the interval leaves out 1.
 *
 * Edges: a group without time, or no event at all, is not computable. No exposed event gives 0 and an
 * interval from 0, no unexposed event Infinity. Swapped groups give the reciprocal; the unit of time changes
 * nothing.
 *
 * @param groups - events (whole numbers) and time (any unit, the same for both)
 * @param options - see `TwoGroupOptions`; mid-p also applies to the interval and the one-sided p-values
 * @throws RangeError for events, times or levels that can't be, and for mid-p-of-ties with the central rule
 *
 * Source: Przyborowski & Wilenski, Biometrika 31 (1940) 313-323; Rothman, Greenland & Lash, Modern
 * Epidemiology, 3rd ed. (2008) ch. 14.
 *
 * @example Boice & Monson's breast cancers: estimate 1.855759, interval 1.005684 to 3.609300, pValue 0.04766
 * poissonRateTest({ exposedEvents: 41, exposedTime: 28010, unexposedEvents: 15, unexposedTime: 19017 })
 */
export function poissonRateTest(groups: RateStratum, options: TwoGroupOptions = {}): Outcome<TwoGroupRatio> {
  const method = `exact conditional rate ratio, ${options.twoSided ?? 'central'}, ${options.discreteness ?? 'exact'}`;
  checkRateStratum(groups, 'poissonRateTest');
  if (!isInformative(groups))
    return notComputable(method, 'Both groups need time, and one of them an event.');
  const events = groups.exposedEvents + groups.unexposedEvents;
  const count = binomialCount(events, groups.exposedTime, groups.unexposedTime);
  const ratio = twoGroupRatio(count, groups.exposedEvents, options, 'poissonRateTest');
  return ratio === undefined
    ? notComputable(method, 'Too many events for the exact distribution.')
    : computed(method, ratio);
}
