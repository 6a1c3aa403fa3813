import type { ConditionalCount } from './conditional-count.ts';
import { findRoot } from './find-root.ts';

/** Probabilities smaller than this, relative to the mode, are left out of a tilted distribution. */
const NEGLIGIBLE = 1e-60;

/**
 * Part of a distribution on whole numbers: `probability[i]` belongs to `first + i`; what is left out is
 * negligible.
 */
export interface Mass {
  first: number;
  probability: Float64Array;
}

/**
 * A tilted distribution with log E[exp(logRatio K)] at ratio 1, which ties its probabilities to those of
 * ratio 1.
 */
export interface TiltedMass extends Mass {
  logRatio: number;
  logNorm: number;
}

/**
 * Distribution of one count at this log ratio: from the mode outwards by the ratio of neighbours, so that
 * nothing overflows and each kept probability has full relative precision.
 */
export function tiltedMass(count: ConditionalCount, logRatio: number): TiltedMass {
  const ratio = Math.exp(logRatio);
  // First k whose successor is no likelier: the mode, by bisection on a falling sequence.
  let [mode, end] = [count.low, count.high];
  while (mode < end) {
    const middle = Math.floor((mode + end) / 2);
    if (count.nextOverThis(middle) * ratio > 1) mode = middle + 1;
    else end = middle;
  }
  const down: number[] = [];
  for (let k = mode, w = 1; k > count.low; k--) {
    w /= count.nextOverThis(k - 1) * ratio;
    if (w < NEGLIGIBLE) break;
    down.push(w);
  }
  const up: number[] = [];
  for (let k = mode, w = 1; k < count.high; k++) {
    w *= count.nextOverThis(k) * ratio;
    if (w < NEGLIGIBLE) break;
    up.push(w);
  }
  const probability = Float64Array.from([...down.reverse(), 1, ...up]);
  const sum = probability.reduce((s, w) => s + w, 0);
  for (let i = 0; i < probability.length; i++) probability[i]! /= sum;
  return {
    first: mode - down.length,
    probability,
    logRatio,
    logNorm: count.logProbability(mode) + logRatio * mode + Math.log(sum),
  };
}

/** Mean and variance of one count at this log ratio. */
export function tiltedMoments(count: ConditionalCount, logRatio: number): { mean: number; variance: number } {
  const { first, probability } = tiltedMass(count, logRatio);
  let mean = 0;
  for (let i = 0; i < probability.length; i++) mean += i * probability[i]!;
  let variance = 0;
  for (let i = 0; i < probability.length; i++) variance += (i - mean) ** 2 * probability[i]!;
  return { mean: first + mean, variance };
}

/**
 * The log ratio at which independent counts together have this mean; `target` must lie strictly between the
 * sums of their low and high ends. This is also the maximum of the conditional likelihood where `target` is
 * the observed sum.
 */
export function logRatioOfMean(counts: ConditionalCount[], target: number): number {
  const excess = (logRatio: number) =>
    counts.reduce((sum, count) => sum + tiltedMoments(count, logRatio).mean, -target);
  const atNull = excess(0);
  if (atNull === 0) return 0;
  let [near, far] = [0, atNull > 0 ? -1 : 1];
  while (excess(far) * atNull > 0) [near, far] = [far, 2 * far];
  return findRoot(excess, near, far, 1e-14);
}

function convolve(a: Mass, b: Mass): Mass {
  const out = new Float64Array(a.probability.length + b.probability.length - 1);
  for (let i = 0; i < a.probability.length; i++) {
    const weight = a.probability[i]!;
    for (let j = 0; j < b.probability.length; j++) out[i + j]! += weight * b.probability[j]!;
  }
  let [start, end] = [0, out.length];
  const least = out.reduce((most, p) => Math.max(most, p), 0) * NEGLIGIBLE;
  while (out[start]! < least) start++;
  while (out[end - 1]! < least) end--;
  return { first: a.first + b.first + start, probability: out.slice(start, end) };
}

/**
 * Distribution of the sum of independent counts that share one log ratio, by direct convolution of the tilted
 * distributions: all terms are positive, so each probability keeps its relative precision.
 *
 * @param most - the greatest number of multiplications to spend
 * @returns undefined where the convolution would cost more than `most`
 */
export function tiltedSum(counts: ConditionalCount[], logRatio: number, most = 5e8): TiltedMass | undefined {
  const masses = counts
    .map((count) => tiltedMass(count, logRatio))
    .sort((a, b) => a.probability.length - b.probability.length || a.first - b.first);
  let sum: Mass = { first: 0, probability: Float64Array.of(1) };
  let logNorm = 0;
  let cost = 0;
  for (const mass of masses) {
    cost += sum.probability.length * mass.probability.length;
    if (cost > most) return undefined;
    sum = convolve(sum, mass);
    logNorm += mass.logNorm;
  }
  return { ...sum, logRatio, logNorm };
}
