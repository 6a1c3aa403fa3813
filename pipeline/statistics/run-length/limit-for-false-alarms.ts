import { normalMultiplier } from '../distributions/normal.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { type ChartKind, monitors } from './monitor.ts';
import { autoregressiveSeries, normalStream } from './normal-stream.ts';
import { checkSimulation } from './simulate-run-length.ts';
import { standardised } from './standardise.ts';

export interface FalseAlarmInput {
  chart: ChartKind;
  /** Number of values watched, for instance a year of days. */
  values: number;
  /** Accepted probability of at least one false alarm among them. */
  probability: number;
  /** Correlation of neighbouring values (AR(1)), in (-1, 1); default 0. */
  autocorrelation?: number;
  /** Centre and sigma come from so many in-control values just before; leave out where both are known. */
  baselineValues?: number;
  /** Default 4000. */
  runs?: number;
  seed: number;
}

export interface FalseAlarmLimit {
  /** L of the EWMA (in standard deviations of the EWMA) or h of the CUSUM (in sigma). */
  limit: number;
  /** Where the limit lies given the finite number of runs. */
  interval: Interval;
  runs: number;
}

/**
 * Limit of an EWMA or CUSUM chart under which an in-control series raises a false alarm within a stated
 * number of values with a stated probability, the uncertainty of its baseline included.
 *
 * The limit is the (1 - probability) quantile of the largest statistic over the values, in simulated normal
 * AR(1) series, each with a baseline of its own. Prefer this to an average run length where the baseline is
 * short: the average then mixes charts that alarm at once with charts that never do. The autocorrelation
 * itself is taken as known.
 *
 * Edges: where probability is so small that fewer than 10 runs lie beyond the limit, the outcome asks for
 * more runs.
 *
 * @throws RangeError if values isn't a whole number above 0, probability isn't in (0, 1), or as
 * `simulateRunLength`
 *
 * Source: quantile and its order-statistic interval: Conover, Practical Nonparametric Statistics, 3rd ed.
 * (1999), section 3.2. On the effect of estimated parameters: Jones, Champ and Rigdon, Technometrics 43
 * (2001) 156-167.
 */
export function limitForFalseAlarms(input: FalseAlarmInput): Outcome<FalseAlarmLimit> {
  const { chart, values, probability, autocorrelation = 0, baselineValues, runs = 4000, seed } = input;
  const method = 'limit for a probability of false alarm, by simulation of AR(1) values';
  checkSimulation('limitForFalseAlarms', runs, autocorrelation, baselineValues);
  if (!Number.isInteger(values) || values < 1) {
    throw new RangeError(`limitForFalseAlarms: values must be a whole number above 0, found ${values}.`);
  }
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`limitForFalseAlarms: probability must be between 0 and 1, found ${probability}.`);
  }
  if (probability * runs < 10 || (1 - probability) * runs < 10) {
    return notComputable(
      method,
      `With ${runs} runs and probability ${probability} fewer than 10 runs lie on one side of the limit.`,
    );
  }
  const newMonitor = monitors(chart, autocorrelation);
  const newSeries = autoregressiveSeries(normalStream(seed), autocorrelation);
  const largest = new Float64Array(runs);
  for (let run = 0; run < runs; run += 1) {
    const next = standardised(newSeries(), baselineValues);
    const monitor = newMonitor();
    let most = 0;
    for (let i = 0; i < values; i += 1) most = Math.max(most, monitor(next()));
    largest[run] = most;
  }
  largest.sort();
  const rank = (1 - probability) * runs;
  const spread = normalMultiplier(0.95) * Math.sqrt(runs * probability * (1 - probability));
  const at = (position: number) => largest[Math.min(runs - 1, Math.max(0, Math.ceil(position) - 1))]!;
  const interval = { low: at(rank - spread), high: at(rank + spread), level: 0.95 };
  return computed(method, { limit: at(rank), interval, runs });
}
