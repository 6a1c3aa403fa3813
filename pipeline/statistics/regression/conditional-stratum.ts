import { findRoot } from '../distributions/find-root.ts';
import type { LikelihoodPoint } from './maximise.ts';
import { dot, zeros } from './solve.ts';

/** One matched set: rows with their covariates (centred in the set) and how many of them are cases. */
export interface ConditionalStratum {
  rows: number[][];
  isCase: boolean[];
  cases: number;
}

/**
 * Exact conditional log-likelihood of one stratum with its derivatives: given that m of n rows are cases, the
 * chance that it is these.
 *
 * The sum over all sets of m rows follows Gail, Lubin & Rubinstein's recursion over rows, with the first and
 * second moments of the covariate sum carried along. It is run on probabilities p = logistic(eta + shift),
 * the shift chosen so that m cases are expected: the recursion is then that of a sum of independent events,
 * and nothing overflows however many sets there are.
 */
export function stratumLikelihood(stratum: ConditionalStratum, beta: readonly number[]): LikelihoodPoint {
  const { rows, isCase, cases } = stratum;
  const width = beta.length;
  const eta = rows.map((x) => dot(x, beta));
  const shift = shiftFor(eta, cases);
  // chance[k]: k cases so far; first[k], second[k]: moments of the covariate sum of the cases, times that
  // chance.
  const chance = new Float64Array(cases + 1);
  chance[0] = 1;
  const first = Array.from({ length: cases + 1 }, () => new Float64Array(width));
  const second = Array.from({ length: cases + 1 }, () => new Float64Array(width * width));
  let logScale = 0;
  let observed = 0;
  const score = new Array<number>(width).fill(0);
  for (const [i, x] of rows.entries()) {
    const p = 1 / (1 + Math.exp(-eta[i]! - shift));
    const q = 1 / (1 + Math.exp(eta[i]! + shift));
    logScale += Math.max(0, eta[i]! + shift) + Math.log1p(Math.exp(-Math.abs(eta[i]! + shift)));
    for (let k = Math.min(i + 1, cases); k >= 0; k--) {
      const [f, s] = [first[k]!, second[k]!];
      const before = k === 0 ? 0 : chance[k - 1]! * p;
      for (let a = 0; a < width; a++) {
        for (let b = 0; b < width; b++) {
          const added =
            k === 0
              ? 0
              : p * (second[k - 1]![a * width + b]! + x[a]! * first[k - 1]![b]! + x[b]! * first[k - 1]![a]!) +
                before * x[a]! * x[b]!;
          s[a * width + b] = q * s[a * width + b]! + added;
        }
      }
      for (let a = 0; a < width; a++) {
        f[a] = q * f[a]! + (k === 0 ? 0 : p * first[k - 1]![a]! + before * x[a]!);
      }
      chance[k] = q * chance[k]! + before;
    }
    if (isCase[i]) {
      observed += eta[i]!;
      for (let a = 0; a < width; a++) score[a]! += x[a]!;
    }
  }
  const total = chance[cases]!;
  const mean = Array.from(first[cases]!, (value) => value / total);
  const information = zeros(width);
  for (let a = 0; a < width; a++) {
    score[a]! -= mean[a]!;
    for (let b = 0; b < width; b++) {
      information[a]![b] = second[cases]![a * width + b]! / total - mean[a]! * mean[b]!;
    }
  }
  return { logLikelihood: observed + cases * shift - (logScale + Math.log(total)), score, information };
}

/** The shift at which the expected number of cases is the observed one. */
function shiftFor(eta: number[], cases: number): number {
  const excess = (shift: number) => eta.reduce((sum, e) => sum + 1 / (1 + Math.exp(-e - shift)), -cases);
  const low = eta.reduce((least, e) => Math.min(least, e), Number.POSITIVE_INFINITY);
  const high = eta.reduce((most, e) => Math.max(most, e), Number.NEGATIVE_INFINITY);
  const margin = Math.log(eta.length) + 1;
  return findRoot(excess, -high - margin, -low + margin, 1e-6);
}
