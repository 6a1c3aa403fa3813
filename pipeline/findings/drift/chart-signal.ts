import { cusumChart } from '../../statistics/control-charts/cusum-chart.ts';
import { ewmaChart } from '../../statistics/control-charts/ewma-chart.ts';
import type { WeightedSeries } from './change-scan.ts';
import { chartLimits } from './chart-limits.ts';

/** Values of this many days before the end are watched against the values before them. */
const WATCHED_DAYS = 100;
const LEAST_BASELINE = 10;
/** The charts signal "now" where one of the last values does. */
const LAST_VALUES = 4;

/**
 * Whether an EWMA or CUSUM chart of the series signals at its end, and which one was first in this excursion.
 *
 * Centre: weighted mean of the values that are more than 100 days older than the last (at least a third of the series and ten values). Limits: the in-control run
 * length stated in `chart-limits.ts` at this autocorrelation. The charts only open the question; baseline and step are judged by `judgeSeries`.
 */
export function chartSignal(
  series: WeightedSeries,
  spread: number,
  autocorrelation: number,
): 'ewma' | 'cusum' | null {
  const { t, y, w } = series;
  const n = y.length;
  const least = Math.max(LEAST_BASELINE, Math.floor(n / 3));
  const old = t.findIndex((day) => day > t[n - 1]! - WATCHED_DAYS);
  const baseline = Math.min(n - 1, Math.max(least, old));
  let [sum, weight] = [0, 0];
  for (let i = 0; i < baseline; i++) {
    sum += w[i]! * y[i]!;
    weight += w[i]!;
  }
  const centre = sum / weight;
  const values = y
    .slice(baseline)
    .map((value, i) => ((value - centre) / spread) * Math.sqrt(w[baseline + i]!));
  const limits = chartLimits(autocorrelation);
  const reference = { centre: 0, sigma: 1 };
  const ewma = ewmaChart({
    values,
    lambda: limits.lambda,
    limit: limits.ewma,
    reference,
    autocorrelation: limits.autocorrelation,
  });
  const cusum = cusumChart({ values, allowance: limits.allowance, decision: limits.cusum, reference });
  const firsts = [
    { chart: 'ewma' as const, first: startOfLast(ewma.computable ? ewma.signals : [], values.length) },
    { chart: 'cusum' as const, first: startOfLast(cusum.computable ? cusum.signals : [], values.length) },
  ].filter((of) => of.first !== null);
  firsts.sort((a, b) => a.first! - b.first!);
  return firsts[0]?.chart ?? null;
}

/** First position of the run of signals that reaches the last values; null where none does. */
function startOfLast(signals: readonly number[], length: number): number | null {
  const last = signals.at(-1);
  if (last === undefined || last < length - LAST_VALUES) return null;
  let i = signals.length - 1;
  while (i > 0 && signals[i]! - signals[i - 1]! <= LAST_VALUES) i--;
  return signals[i]!;
}
