import { nelsonAalen } from '../../statistics/survival/nelson-aalen.ts';
import { lengthOn } from './clock-cells.ts';
import type { Clock } from './clocks.ts';
import type { IntervalCase } from './interval-schema.ts';
import type { Fitted } from './shape-fit.ts';
import type { Spell } from './spells.ts';

/** Most points; a longer list is thinned. */
const MOST_POINTS = 60;
/** Fewest days at risk at a failure's clock; with fewer a single failure would make a cliff (our choice). */
const LEAST_AT_RISK = 5;

/**
 * Cumulative failures of a unit by clock, without a model: Nelson-Aalen over days at risk, each watched from its clock to the next (left truncated), so that
 * failures may recur in a spell. Beside it the fit at the mean level of the days.
 */
export function cumulativeFailures(
  spells: readonly Spell[],
  clock: Clock,
  { fit }: Fitted,
  level: number,
): IntervalCase['cumulative'] {
  const durations: number[] = [];
  const observed: (0 | 1)[] = [];
  const entry: number[] = [];
  for (const { columns, from, to } of spells.map((spell) => spell.days))
    for (let at = from; at < to; at++) {
      const begin = columns[clock][at]!;
      durations.push(begin + lengthOn(clock, columns, at));
      observed.push(columns.failed[at] === 1 ? 1 : 0);
      entry.push(begin);
    }
  const hazard = nelsonAalen({ durations, observed, entry, level });
  if (!hazard.computable) return [];
  const meanLevel = fit.computable ? levelOfDays(fit.clusters) : 1;
  const points = hazard.steps
    .filter((step) => step.atRisk >= LEAST_AT_RISK)
    .map((step) => ({
      at: step.time,
      observed: step.cumulativeHazard,
      low: step.interval.low,
      high: step.interval.high,
      fitted: fit.computable ? meanLevel * fit.rate * step.time ** fit.shape : null,
    }));
  const thin = Math.max(1, Math.ceil(points.length / MOST_POINTS));
  return points.filter((_, index) => index % thin === 0 || index === points.length - 1);
}

/** Mean frailty, weighted by what the fit expects of each cluster. */
function levelOfDays(clusters: readonly { expected: number; frailty: number }[]): number {
  const expected = clusters.reduce((sum, of) => sum + of.expected, 0);
  return expected === 0 ? 1 : clusters.reduce((sum, of) => sum + of.expected * of.frailty, 0) / expected;
}
