import { chartLimits } from '../../pipeline/findings/drift/chart-limits.ts';
import type { DriftOperatingCharacteristics } from '../../pipeline/findings/drift/operating-characteristics.ts';
import { cusumChart } from '../../pipeline/statistics/control-charts/cusum-chart.ts';
import { ewmaChart } from '../../pipeline/statistics/control-charts/ewma-chart.ts';
import { dice } from './drift-simulate-site.ts';

type RunLength = DriftOperatingCharacteristics['run_lengths'][number];

const RUNS = 1000;
const LONGEST = 6000;
const AUTOCORRELATIONS = [0, 0.3, 0.6];

/**
 * Values to the first false signal of either chart, on autoregressive noise of standard deviation 1, normal and with heavy tails: the charts of the watch with the limits of the
 * watch. A run that reaches 6000 values counts as that long.
 */
export function runLengths(): RunLength[] {
  const rows: RunLength[] = [];
  for (const noise of ['normal', 'heavy tails'] as const) {
    for (const autocorrelation of AUTOCORRELATIONS) {
      const lengths = { ewma: [] as number[], cusum: [] as number[] };
      for (let run = 0; run < RUNS; run++) {
        const values = noiseOf(noise, autocorrelation, run + 1);
        for (const chart of ['ewma', 'cusum'] as const)
          lengths[chart].push(firstSignal(chart, values, autocorrelation));
      }
      for (const chart of ['ewma', 'cusum'] as const) {
        const mean = lengths[chart].reduce((sum, value) => sum + value, 0) / RUNS;
        const variance = lengths[chart].reduce((sum, value) => sum + (value - mean) ** 2, 0) / (RUNS - 1);
        const half = 1.96 * Math.sqrt(variance / RUNS);
        const round = (value: number) => Math.round(value);
        rows.push({
          chart,
          autocorrelation,
          noise,
          mean: round(mean),
          low: round(mean - half),
          high: round(mean + half),
        });
      }
    }
  }
  return rows;
}

/** Autoregression of order 1 from its stationary state; with heavy tails the innovations have them. */
function noiseOf(noise: RunLength['noise'], keep: number, seed: number): number[] {
  const draw = dice(seed * 6007 + Math.round(100 * keep) + (noise === 'normal' ? 0 : 50));
  const next = noise === 'normal' ? draw.normal : draw.heavy;
  const values = [next()];
  for (let i = 1; i < LONGEST; i++) values.push(keep * values[i - 1]! + Math.sqrt(1 - keep * keep) * next());
  return values;
}

function firstSignal(chart: RunLength['chart'], all: readonly number[], autocorrelation: number): number {
  const limits = chartLimits(autocorrelation);
  const reference = { centre: 0, sigma: 1 };
  // Most runs end early: a short stretch is tried first.
  for (const length of [1000, all.length]) {
    const values = all.slice(0, length);
    const made =
      chart === 'ewma'
        ? ewmaChart({ values, lambda: limits.lambda, limit: limits.ewma, reference, autocorrelation })
        : cusumChart({ values, allowance: limits.allowance, decision: limits.cusum, reference });
    if (!made.computable) throw new Error(made.reason);
    const first = made.signals[0];
    if (first !== undefined) return first + 1;
  }
  return all.length;
}
