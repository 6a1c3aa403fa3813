import { findRoot } from '../distributions/find-root.ts';
import type { LikelihoodPoint } from './maximise.ts';
import { dot, zeros } from './solve.ts';

/** One matched set: rows with their covariates (centred in the set) and how many of them are cases. */
export interface ConditionalStratum {
  rows: number[][];
  isCase: boolean[];
  cases: number;
  /** The different lists among the rows, and for each row which of them is its own. */
  kinds: number[][];
  kindOf: Uint32Array;
}

/** Puts a set together. What depends on covariates alone is reckoned once for rows that share their list: a stratum may have hundreds of days and four lists. */
export function conditionalStratum(rows: number[][], isCase: boolean[]): ConditionalStratum {
  const kinds = [...new Set(rows)];
  const places = new Map(kinds.map((x, place) => [x, place]));
  return {
    rows,
    isCase,
    cases: isCase.filter(Boolean).length,
    kinds,
    kindOf: Uint32Array.from(rows, (x) => places.get(x)!),
  };
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
  const { isCase, cases, kinds, kindOf } = stratum;
  const width = beta.length;
  const eta = kinds.map((x) => dot(x, beta));
  const shift = shiftFor(eta, kindOf, cases);
  const of = kinds.map((x, kind) => ({
    x,
    eta: eta[kind]!,
    p: 1 / (1 + Math.exp(-eta[kind]! - shift)),
    q: 1 / (1 + Math.exp(eta[kind]! + shift)),
    logScale: Math.max(0, eta[kind]! + shift) + Math.log1p(Math.exp(-Math.abs(eta[kind]! + shift))),
  }));
  // chance[k]: k cases so far; first[k], second[k]: moments of the covariate sum of the cases, times that
  // chance. Those of no case stay 0.
  const chance = new Float64Array(cases + 1);
  chance[0] = 1;
  const first = Array.from({ length: cases + 1 }, () => new Float64Array(width));
  const second = Array.from({ length: cases + 1 }, () => new Float64Array(width * width));
  let logScale = 0;
  let observed = 0;
  const score = new Array<number>(width).fill(0);
  for (let i = 0; i < kindOf.length; i++) {
    const row = of[kindOf[i]!]!;
    const { x, p, q } = row;
    logScale += row.logScale;
    for (let k = Math.min(i + 1, cases); k > 0; k--) {
      const [f, s, fewerFirst, fewerSecond] = [first[k]!, second[k]!, first[k - 1]!, second[k - 1]!];
      const before = chance[k - 1]! * p;
      for (let a = 0; a < width; a++) {
        for (let b = 0; b < width; b++) {
          const added =
            p * (fewerSecond[a * width + b]! + x[a]! * fewerFirst[b]! + x[b]! * fewerFirst[a]!) +
            before * x[a]! * x[b]!;
          s[a * width + b] = q * s[a * width + b]! + added;
        }
      }
      for (let a = 0; a < width; a++) f[a] = q * f[a]! + (p * fewerFirst[a]! + before * x[a]!);
      chance[k] = q * chance[k]! + before;
    }
    chance[0] = q * chance[0]!;
    if (isCase[i]) {
      observed += row.eta;
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
function shiftFor(eta: readonly number[], kindOf: Uint32Array, cases: number): number {
  const chances = new Float64Array(eta.length);
  const excess = (shift: number) => {
    for (let kind = 0; kind < eta.length; kind++) chances[kind] = 1 / (1 + Math.exp(-eta[kind]! - shift));
    let sum = -cases;
    for (let i = 0; i < kindOf.length; i++) sum += chances[kindOf[i]!]!;
    return sum;
  };
  const low = eta.reduce((least, e) => Math.min(least, e), Number.POSITIVE_INFINITY);
  const high = eta.reduce((most, e) => Math.max(most, e), Number.NEGATIVE_INFINITY);
  const margin = Math.log(kindOf.length) + 1;
  return findRoot(excess, -high - margin, -low + margin, 1e-6);
}
