import { normalMultiplier } from '../distributions/normal.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { checkSurvivalData, type RiskRow, riskTable, type SurvivalData } from './survival-data.ts';

export interface SurvivalStep extends RiskRow {
  /** Probability of no event up to and including this time. */
  survival: number;
  /** Greenwood's; null once survival is 0. */
  standardError: number | null;
  /** Interval by `intervalBy`; null once survival is 0. */
  interval: Interval | null;
}

export interface KaplanMeier {
  /** One step per time with an event. Before the first, survival is 1. */
  steps: SurvivalStep[];
  /** Null where survival stays above a half; the ends are null where their band does. */
  median: number | null;
  medianInterval: { low: number | null; high: number | null; level: number };
  n: number;
  events: number;
  /**
   * With entries: the risk set was emptied by events before the last one, so the curve is 0 from there on and
   * says nothing after.
   */
  emptied: boolean;
}

/**
 * Kaplan-Meier survival curve, right censoring and left truncation allowed.
 *
 * Estimates P(no event by t). Assumes that censoring and late entry say nothing about the event to come, and
 * independent subjects.
 *
 * Conventions: a subject censored at t is still at risk at t; Greenwood's variance; log-log interval
 * S^exp(+-z se / (S ln S)), which stays inside 0 and 1. Median: first time with survival at or under a half,
 * and the midpoint to the next event where it is a half exactly; its interval from the band in the same way
 * (Brookmeyer and Crowley), as R survival does.
 *
 * Edges: no subject or no event is a stated outcome (the curve would be 1 without an interval). With late
 * entries a small early risk set can take the curve to 0 for good: `emptied` says so.
 *
 * @param data durations with flags 0 or 1, and entries where watching began late
 * @param data.level of the intervals, default 0.95
 * @param data.intervalBy default 'log-log'; 'log', R's default, is cut at 1
 * @throws RangeError as `checkSurvivalData`, or if level isn't in (0, 1)
 *
 * Source: Kaplan and Meier, Journal of the American Statistical Association 53 (1958) 457-481; Klein and
 * Moeschberger, Survival Analysis, 2nd ed. (2003), sections 4.2, 4.3 and 4.6; Brookmeyer and Crowley,
 * Biometrics 38 (1982) 29-41.
 *
 * @example
 * kaplanMeier({ durations: [6, 6, 6, 6, 7], observed: [1, 1, 1, 0, 1] }); // survival 0.4 at 6, 0 at 7; median 6
 */
export function kaplanMeier(
  data: SurvivalData & { level?: number; intervalBy?: 'log-log' | 'log' },
): Outcome<KaplanMeier> {
  const { level = 0.95, intervalBy = 'log-log' } = data;
  const method = `Kaplan-Meier, Greenwood variance, ${intervalBy} interval`;
  checkSurvivalData('kaplanMeier', data);
  if (!(level > 0 && level < 1))
    throw new RangeError(`kaplanMeier: level must be between 0 and 1, found ${level}.`);
  const rows = riskTable(data);
  if (rows.length === 0)
    return notComputable(method, 'No event was observed, so survival stays at 1 without an interval.');
  const z = normalMultiplier(level);
  let survival = 1;
  let greenwood = 0;
  const steps = rows.map((row): SurvivalStep => {
    survival *= 1 - row.events / row.atRisk;
    greenwood += row.events / (row.atRisk * (row.atRisk - row.events));
    if (survival === 0) return { ...row, survival, standardError: null, interval: null };
    if (intervalBy === 'log') {
      const factor = Math.exp(z * Math.sqrt(greenwood));
      const interval = { low: survival / factor, high: Math.min(1, survival * factor), level };
      return { ...row, survival, standardError: survival * Math.sqrt(greenwood), interval };
    }
    const half = (z * Math.sqrt(greenwood)) / Math.log(survival);
    // The logarithm of survival is negative, so the positive exponent gives the upper end.
    const interval = { low: survival ** Math.exp(-half), high: survival ** Math.exp(half), level };
    return { ...row, survival, standardError: survival * Math.sqrt(greenwood), interval };
  });
  const events = rows.reduce((sum, row) => sum + row.events, 0);
  return computed(method, {
    steps,
    median: firstAtHalf(steps, (step) => step.survival),
    medianInterval: {
      low: firstAtHalf(steps, (step) => step.interval?.low ?? 0),
      high: firstAtHalf(steps, (step) => step.interval?.high ?? null),
      level,
    },
    n: data.durations.length,
    events,
    emptied: steps.slice(0, -1).some((step) => step.survival === 0),
  });
}

/**
 * First time at which a falling curve is at or under a half; midway to the next step where it is a half
 * exactly; null where it never is (a null value is no statement).
 */
function firstAtHalf(
  steps: readonly SurvivalStep[],
  curve: (step: SurvivalStep) => number | null,
): number | null {
  const at = steps.findIndex((step) => (curve(step) ?? 1) <= 0.5 + 1e-12);
  if (at < 0) return null;
  const value = curve(steps[at]!)!;
  const next = steps[at + 1];
  return Math.abs(value - 0.5) < 1e-12 && next !== undefined
    ? (steps[at]!.time + next.time) / 2
    : steps[at]!.time;
}
