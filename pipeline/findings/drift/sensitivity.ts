import type { AdjustedSeries } from './adjusted-series.ts';
import type { CommonMovement } from './common-movement.ts';
import { slowVariance } from './noise.ts';
import type { PooledNoise } from './pool-noise.ts';

/** How unlike units are in what the site's movement does to them: standard deviation of the sensitivity around 1. */
const USUAL_SPREAD = 0.15;
/** Values on either side that stand in for a day. */
const NEAR = 4;

/**
 * How strongly each series' unit feels the site's movement, 1 where it feels it as the others do: season, steam and water reach units unequally, and what is left of them looks like a drift.
 *
 * Regression of what is left of a unit's series (after the better of a step and a slope) on the movement, over all its eras in memory; drawn towards 1 by how unlike units usually are. The movement of
 * a day is known with an error that is in what is left as well; that of the days around it stands in for it.
 *
 * Source: ridge regression as a normal prior: Hoerl and Kennard, Technometrics 12 (1970) 55-67; another measurement in place of one with error: Durbin, Review of the International Statistical Institute 22 (1954) 23-32.
 */
export function sensitivities(
  adjusted: readonly AdjustedSeries[],
  commonOf: readonly CommonMovement[],
  noises: readonly PooledNoise[],
): number[] {
  const sums = new Map<string, { moved: number; together: number }>();
  for (const [i, { of, values, memory, noise, comparedWith }] of adjusted.entries()) {
    if (comparedWith === 'none') continue;
    const unit = slowVariance(noises[i]!);
    const own = values.slice(memory);
    const effects = own.map(({ day }) => commonOf[i]!.at(day) ?? 0);
    const middle = effects.reduce((sum, value) => sum + value, 0) / effects.length;
    const sum = sums.get(of.history.unit) ?? { moved: 1 / USUAL_SPREAD ** 2, together: 0 };
    for (const [j, { weight }] of own.entries()) {
      const near = neighbours(effects, j) - middle;
      sum.moved += (weight * near * (effects[j]! - middle)) / unit;
      sum.together += (Math.sqrt(weight) * near * noise.rest[j]!) / unit;
    }
    sums.set(of.history.unit, sum);
  }
  return adjusted.map(({ of }) => {
    const sum = sums.get(of.history.unit);
    return sum ? 1 + sum.together / sum.moved : 1;
  });
}

/** Mean of the effects of the days around one, without its own. */
function neighbours(effects: readonly number[], at: number): number {
  let [sum, count] = [0, 0];
  for (let i = Math.max(0, at - NEAR); i <= Math.min(effects.length - 1, at + NEAR); i++) {
    if (i === at) continue;
    sum += effects[i]!;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}
