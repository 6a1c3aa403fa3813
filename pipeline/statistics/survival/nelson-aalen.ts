import { normalMultiplier } from '../distributions/normal.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { checkSurvivalData, type RiskRow, riskTable, type SurvivalData } from './survival-data.ts';

export interface HazardStep extends RiskRow {
  /** Cumulative hazard: expected events up to and including this time for a subject always at risk. */
  cumulativeHazard: number;
  standardError: number;
  /** On the logarithm of the hazard, so that it stays above 0. */
  interval: Interval;
}

export interface NelsonAalen {
  steps: HazardStep[];
  n: number;
  events: number;
}

/**
 * Nelson-Aalen cumulative hazard, right censoring and left truncation allowed. Its slope is the hazard: a
 * straight line means a constant one, a curve bent upward a rising one.
 *
 * Conventions: variance sum of d/n^2 (d(n - d)/n^3 is another); log interval H exp(+-z se/H). A subject
 * censored at t is still at risk at t.
 *
 * Edges: no event is a stated outcome. Assumptions and checks as `kaplanMeier`.
 *
 * @throws RangeError as `checkSurvivalData`, or if level isn't in (0, 1)
 *
 * Source: Nelson, Journal of Quality Technology 1 (1969) 27-52; Aalen, Annals of Statistics 6 (1978) 701-726;
 * Klein and Moeschberger, Survival Analysis, 2nd ed. (2003), formulae 4.2.3, 4.2.4 and section 4.3.
 *
 * @example
 * nelsonAalen({ durations: [6, 6, 6, 6, 7], observed: [1, 1, 1, 0, 1] }); // 0.6 at 6, 1.6 at 7
 */
export function nelsonAalen(data: SurvivalData & { level?: number }): Outcome<NelsonAalen> {
  const method = 'Nelson-Aalen, variance d/n^2, log interval';
  const { level = 0.95 } = data;
  checkSurvivalData('nelsonAalen', data);
  if (!(level > 0 && level < 1))
    throw new RangeError(`nelsonAalen: level must be between 0 and 1, found ${level}.`);
  const rows = riskTable(data);
  if (rows.length === 0)
    return notComputable(method, 'No event was observed, so the hazard stays at 0 without an interval.');
  const z = normalMultiplier(level);
  let hazard = 0;
  let variance = 0;
  const steps = rows.map((row): HazardStep => {
    hazard += row.events / row.atRisk;
    variance += row.events / row.atRisk ** 2;
    const standardError = Math.sqrt(variance);
    const factor = Math.exp((z * standardError) / hazard);
    return {
      ...row,
      cumulativeHazard: hazard,
      standardError,
      interval: { low: hazard / factor, high: hazard * factor, level },
    };
  });
  return computed(method, {
    steps,
    n: data.durations.length,
    events: rows.reduce((sum, row) => sum + row.events, 0),
  });
}
