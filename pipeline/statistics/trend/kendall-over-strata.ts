import { normalTail, normalTwoSided } from '../distributions/normal.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { kendallVariance, tieSizes } from './kendall-variance.ts';

/** Pairs of numbers of one stratum; arrays of one length. */
export interface PairedStratum {
  x: readonly number[];
  y: readonly number[];
}

export interface KendallOverStrata {
  /** Pairs within strata that go the same way less pairs that go opposite ways. */
  s: number;
  variance: number;
  /** (S -+ 1) / sqrt(variance), 0 where S is 0. */
  z: number;
  pValue: number;
  pIncreasing: number;
  /** S over the pairs that are tied in neither: share that goes up less share that goes down. */
  gamma: number;
  n: number;
  strataUsed: number;
  strataGiven: number;
}

/**
 * Kendall's rank test of association within strata: S and its variance are summed over strata, as
 * Mann-Kendall's are over seasons.
 *
 * Tested: that within each stratum y does not depend on x, against a monotone association that goes the same
 * way in all; strata may differ in level. Assumed: pairs of a stratum are independent. Ties of both are
 * allowed for in the variance; continuity correction of 1.
 *
 * Edges: strata of under two pairs, or with x or y all equal, say nothing and are left out; none left is not
 * computable. The normal limit wants about ten pairs in all.
 *
 * @throws RangeError where x and y differ in length or hold a value that is not finite
 *
 * Source: M. G. Kendall, Rank Correlation Methods, 4th ed. (1970) chapters 3 and 4; sums over strata: R. M.
 * Hirsch, J. R. Slack & R. A. Smith, Water Resources Research 18 (1982) 107-121; gamma: L. A. Goodman & W. H.
 * Kruskal, JASA 49 (1954) 732-764.
 */
export function kendallOverStrata(strata: readonly PairedStratum[]): Outcome<KendallOverStrata> {
  const method = 'Kendall rank test within strata, ties in both, continuity corrected';
  let [s, variance, untied, n, strataUsed] = [0, 0, 0, 0, 0];
  for (const [index, { x, y }] of strata.entries()) {
    if (x.length !== y.length || ![...x, ...y].every(Number.isFinite)) {
      throw new RangeError(
        `kendallOverStrata: stratum ${index} must hold as many finite x as y, found ${x.length} and ${y.length}.`,
      );
    }
    const [tiesX, tiesY] = [tieSizes(x), tieSizes(y)];
    if (x.length < 2 || tiesX.includes(x.length) || tiesY.includes(y.length)) continue;
    for (let i = 1; i < x.length; i++) {
      for (let j = 0; j < i; j++) {
        const sign = Math.sign(x[i]! - x[j]!) * Math.sign(y[i]! - y[j]!);
        s += sign;
        untied += Math.abs(sign);
      }
    }
    variance += kendallVariance(x.length, tiesX, tiesY);
    n += x.length;
    strataUsed++;
  }
  if (strataUsed === 0 || !(variance > 0))
    return notComputable(method, 'No stratum has pairs that differ in both.');
  const z = s === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  return computed(method, {
    s,
    variance,
    z,
    pValue: normalTwoSided(z),
    pIncreasing: normalTail((s - 1) / Math.sqrt(variance), 'upper'),
    gamma: untied === 0 ? 0 : s / untied,
    n,
    strataUsed,
    strataGiven: strata.length,
  });
}
