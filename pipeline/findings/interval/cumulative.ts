import { nelsonAalen } from '../../statistics/survival/nelson-aalen.ts';
import type { Clock } from './clock-cells.ts';
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
  const days = spells.flatMap((spell) => spell.days);
  const hazard = nelsonAalen({
    durations: days.map((day) => day[clock] + (clock === 'cycles' ? Math.max(1, day.cycles_of_day) : 1)),
    observed: days.map((day) => (day.failed ? 1 : 0)),
    entry: days.map((day) => day[clock]),
    level,
  });
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
