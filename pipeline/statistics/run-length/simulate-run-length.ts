import { computed, notComputable, type Outcome } from '../result.ts';
import { type ChartKind, monitors } from './monitor.ts';
import { autoregressiveSeries, normalStream } from './normal-stream.ts';
import { standardised } from './standardise.ts';

export interface SimulationInput {
  chart: ChartKind;
  /** L of the EWMA or h of the CUSUM. */
  limit: number;
  /** Start of both CUSUM sums as a share of h; default 0. */
  headStart?: number;
  /** Correlation of neighbouring values (AR(1)), in (-1, 1); default 0. */
  autocorrelation?: number;
  /** Shift of the mean from the first monitored value on, in standard deviations of a value; default 0. */
  shift?: number;
  /** Centre and sigma are estimated from so many in-control values just before; default: both known. */
  baselineValues?: number;
  runs: number;
  seed: number;
  /** A run stops here without a signal; default 100 000 values. */
  longest?: number;
}

export interface SimulatedRunLength {
  /** Mean over the runs; a lower bound where `censored` is above 0. */
  average: number;
  standardError: number;
  median: number;
  /** Runs that reached `longest` without a signal. */
  censored: number;
  runs: number;
}

/**
 * Run length of an EWMA (exact, time-varying limits) or CUSUM chart by simulation of normal AR(1) values.
 *
 * Slower and coarser than `ewmaRunLength` and `cusumRunLength`, which it checks; needed where centre and
 * sigma are estimated from a baseline. The standard error of the average is about average / sqrt(runs). With
 * an estimated baseline the run length is a mixture with a very long tail: read the median, not the average.
 *
 * Edges: where half of the runs or more are censored the outcome says so, since then not even the median is
 * known.
 *
 * @throws RangeError if runs isn't a whole number of 2 or more, baselineValues is under 2, limit isn't above
 * 0, or autocorrelation isn't in (-1, 1)
 */
export function simulateRunLength(input: SimulationInput): Outcome<SimulatedRunLength> {
  const {
    chart,
    limit,
    autocorrelation = 0,
    shift = 0,
    baselineValues,
    runs,
    seed,
    longest = 100_000,
  } = input;
  const method = 'run length by simulation of AR(1) values';
  checkSimulation('simulateRunLength', runs, autocorrelation, baselineValues);
  if (!(limit > 0)) throw new RangeError(`simulateRunLength: limit must be above 0, found ${limit}.`);
  const newMonitor = monitors(chart, autocorrelation, (input.headStart ?? 0) * limit);
  const newSeries = autoregressiveSeries(normalStream(seed), autocorrelation);
  const lengths = new Float64Array(runs);
  let censored = 0;
  for (let run = 0; run < runs; run += 1) {
    let shiftNow = 0;
    const series = newSeries();
    const next = standardised(() => series() + shiftNow, baselineValues);
    shiftNow = shift;
    const monitor = newMonitor();
    let length = 1;
    while (monitor(next()) <= limit && length < longest) length += 1;
    if (length === longest) censored += 1;
    lengths[run] = length;
  }
  if (censored * 2 >= runs) {
    return notComputable(method, `${censored} of ${runs} runs reached ${longest} values without a signal.`);
  }
  lengths.sort();
  const average = lengths.reduce((a, b) => a + b, 0) / runs;
  const variance = lengths.reduce((a, b) => a + (b - average) ** 2, 0) / (runs - 1);
  const median = lengths[Math.floor((runs - 1) / 2)]!;
  return computed(method, { average, standardError: Math.sqrt(variance / runs), median, censored, runs });
}

/** Shared checks of the simulations; `caller` is named in the message. */
export function checkSimulation(
  caller: string,
  runs: number,
  autocorrelation: number,
  baselineValues: number | undefined,
): void {
  if (!Number.isInteger(runs) || runs < 2) {
    throw new RangeError(`${caller}: runs must be a whole number of 2 or more, found ${runs}.`);
  }
  if (!(Math.abs(autocorrelation) < 1)) {
    throw new RangeError(`${caller}: autocorrelation must be in (-1, 1), found ${autocorrelation}.`);
  }
  if (baselineValues !== undefined && (!Number.isInteger(baselineValues) || baselineValues < 2)) {
    throw new RangeError(
      `${caller}: baselineValues must be a whole number of 2 or more, found ${baselineValues}.`,
    );
  }
}
