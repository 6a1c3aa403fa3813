import { Matrix } from 'ml-matrix';
import type { SurvivalData } from './survival-data.ts';

export interface CoxProblem extends SurvivalData {
  /** Covariates, one row per subject. */
  rows: readonly (readonly number[])[];
  strata: readonly string[];
  ties: 'efron' | 'breslow';
}

export interface CoxDerivatives {
  logLikelihood: number;
  score: number[];
  /** Minus the second derivatives. */
  information: Matrix;
}

/** Sums of weight, weight x covariate and weight x covariate x covariate over a set of subjects. */
interface Moments {
  zero: number;
  one: number[];
  two: number[][];
}

/**
 * Partial log-likelihood, score and information at coefficients.
 *
 * Efron's handling of ties: of d events at one time the l-th sees the risk set less l/d of the tied subjects.
 * Breslow's leaves all of them in. Time is events x subjects x covariates^2.
 */
export function coxDerivatives(problem: CoxProblem, coefficients: readonly number[]): CoxDerivatives {
  const { durations, observed, entry, rows, strata, ties } = problem;
  const p = coefficients.length;
  const linear = rows.map((row) => row.reduce((sum, x, j) => sum + x * coefficients[j]!, 0));
  const weights = linear.map(Math.exp);
  const result: CoxDerivatives = {
    logLikelihood: 0,
    score: new Array<number>(p).fill(0),
    information: Matrix.zeros(p, p),
  };
  const times = new Map<string, { stratum: string; time: number; tied: number[] }>();
  for (const [i, time] of durations.entries()) {
    if (observed[i] !== 1) continue;
    const key = `${strata[i]} ${time}`;
    const known = times.get(key);
    if (known) known.tied.push(i);
    else times.set(key, { stratum: strata[i]!, time, tied: [i] });
  }
  for (const { stratum, time, tied } of times.values()) {
    const risk: number[] = [];
    for (let i = 0; i < durations.length; i += 1) {
      const from = entry?.[i] ?? 0;
      if (strata[i] === stratum && durations[i]! >= time && (from < time || from === 0)) risk.push(i);
    }
    const all = moments(risk, rows, weights, p);
    const of = moments(tied, rows, weights, p);
    for (const i of tied) {
      result.logLikelihood += linear[i]!;
      for (let j = 0; j < p; j += 1) result.score[j]! += rows[i]![j]!;
    }
    for (let l = 0; l < tied.length; l += 1) {
      const share = ties === 'efron' ? l / tied.length : 0;
      subtractRiskSet(result, all, of, share);
    }
  }
  return result;
}

function moments(
  members: readonly number[],
  rows: readonly (readonly number[])[],
  weights: readonly number[],
  p: number,
): Moments {
  const sums: Moments = { zero: 0, one: new Array<number>(p).fill(0), two: [] };
  for (let j = 0; j < p; j += 1) sums.two.push(new Array<number>(p).fill(0));
  for (const i of members) {
    const w = weights[i]!;
    const row = rows[i]!;
    sums.zero += w;
    for (let j = 0; j < p; j += 1) {
      sums.one[j]! += w * row[j]!;
      for (let k = 0; k <= j; k += 1) sums.two[j]![k]! += w * row[j]! * row[k]!;
    }
  }
  return sums;
}

function subtractRiskSet(result: CoxDerivatives, all: Moments, tied: Moments, share: number): void {
  const zero = all.zero - share * tied.zero;
  const mean = all.one.map((sum, j) => (sum - share * tied.one[j]!) / zero);
  result.logLikelihood -= Math.log(zero);
  for (const [j, m] of mean.entries()) {
    result.score[j]! -= m;
    for (let k = 0; k <= j; k += 1) {
      const term = (all.two[j]![k]! - share * tied.two[j]![k]!) / zero - m * mean[k]!;
      result.information.set(j, k, result.information.get(j, k) + term);
      if (k !== j) result.information.set(k, j, result.information.get(j, k));
    }
  }
}
