import { Matrix, pseudoInverse, SVD } from 'ml-matrix';
import { chiSquareTail } from '../distributions/gamma.ts';
import { computed, notComputable, type Outcome } from '../result.ts';
import { checkSurvivalData, riskTable, type SurvivalData } from './survival-data.ts';

export interface SurvivalGroup extends SurvivalData {
  name: string;
  /** Stratum of each subject; groups are then compared within strata only. Default: all in one. */
  strata?: readonly string[];
}

export interface LogRank {
  groups: { name: string; n: number; observed: number; expected: number }[];
  chiSquare: number;
  degreesOfFreedom: number;
  pValue: number;
  /** Variance of observed - expected of the first group. */
  variance: number;
}

/**
 * Log-rank test that two or more groups have the same hazard at all times.
 *
 * At each event time the events of a group are compared with its share of those at risk (hypergeometric
 * variance). Best against hazards in proportion; weak where the curves cross. `peto-peto` weights each time
 * by the pooled survival just before it, so that early events count more.
 *
 * Assumes censoring and late entry unrelated to the event. Right censoring, left truncation and strata
 * allowed.
 *
 * Edges: the degrees of freedom are the groups less the sets of groups that were ever at risk together
 * (usually one set). No event, or no two groups at risk together, is a stated outcome.
 *
 * @param input.groups by name; flags 0 or 1
 * @param input.weight default 'log-rank'
 * @returns observed and expected (weighted) events, chi-square and its degrees of freedom
 * @throws RangeError as `checkSurvivalData`, or if strata differ in length from durations
 *
 * Source: Mantel, Cancer Chemotherapy Reports 50 (1966) 163-170; Peto and Peto, Journal of the Royal
 * Statistical Society A 135 (1972) 185-207; Klein and Moeschberger, Survival Analysis, 2nd ed. (2003),
 * sections 7.3 and 7.5.
 */
export function logRank(input: {
  groups: readonly SurvivalGroup[];
  weight?: 'log-rank' | 'peto-peto';
}): Outcome<LogRank> {
  const { groups, weight = 'log-rank' } = input;
  const method = weight === 'log-rank' ? 'log-rank test' : 'Peto-Peto test';
  for (const group of groups) {
    checkSurvivalData(`logRank, group ${group.name}`, group);
    if (group.strata !== undefined && group.strata.length !== group.durations.length) {
      throw new RangeError(`logRank: strata of group ${group.name} must be as many as its durations.`);
    }
  }
  const k = groups.length;
  const observed = new Array<number>(k).fill(0);
  const expected = new Array<number>(k).fill(0);
  const covariance = Matrix.zeros(k, k);
  const strata = new Set(groups.flatMap((g) => g.durations.map((_, i) => g.strata?.[i] ?? '')));
  for (const stratum of strata) {
    const parts = groups.map((group) => partOf(group, stratum));
    addStratum(parts, weight, observed, expected, covariance);
  }
  if (observed.every((o) => o === 0)) return notComputable(method, 'No event was observed in any group.');
  // Differences add up to 0 within each set of groups that were at risk together, so the covariance has lower
  // rank than groups.
  const singular = new SVD(covariance).diagonal;
  const tolerance = 1e-10 * singular[0]!;
  const degreesOfFreedom = singular.filter((value) => value > tolerance).length;
  if (degreesOfFreedom === 0)
    return notComputable(method, 'At no event time were two groups at risk together.');
  const differences = Matrix.columnVector(groups.map((_, g) => observed[g]! - expected[g]!));
  const inverse = pseudoInverse(covariance, tolerance);
  const chiSquare = differences.transpose().mmul(inverse).mmul(differences).get(0, 0);
  return computed(method, {
    groups: groups.map((group, g) => ({
      name: group.name,
      n: group.durations.length,
      observed: observed[g]!,
      expected: expected[g]!,
    })),
    chiSquare,
    degreesOfFreedom,
    pValue: chiSquareTail(chiSquare, degreesOfFreedom, 'upper'),
    variance: covariance.get(0, 0),
  });
}

function partOf(group: SurvivalGroup, stratum: string): SurvivalData {
  const keep = group.durations.map((_, i) => i).filter((i) => (group.strata?.[i] ?? '') === stratum);
  const { entry } = group;
  return {
    durations: keep.map((i) => group.durations[i]!),
    observed: keep.map((i) => group.observed[i]!),
    ...(entry ? { entry: keep.map((i) => entry[i]!) } : {}),
  };
}

function addStratum(
  parts: readonly SurvivalData[],
  weight: 'log-rank' | 'peto-peto',
  observed: number[],
  expected: number[],
  covariance: Matrix,
): void {
  const pooled: SurvivalData = {
    durations: parts.flatMap((p) => p.durations),
    observed: parts.flatMap((p) => p.observed),
    entry: parts.flatMap((p) => p.entry ?? p.durations.map(() => 0)),
  };
  let survivalBefore = 1;
  for (const { time, atRisk, events } of riskTable(pooled)) {
    const w = weight === 'log-rank' ? 1 : survivalBefore;
    survivalBefore *= 1 - events / atRisk;
    const risk = parts.map((part) => countAtRisk(part, time));
    const spread = atRisk > 1 ? (w * w * events * (atRisk - events)) / (atRisk - 1) : 0;
    for (const [g, part] of parts.entries()) {
      const share = risk[g]! / atRisk;
      observed[g]! += w * part.durations.filter((d, i) => d === time && part.observed[i] === 1).length;
      expected[g]! += w * events * share;
      for (let h = 0; h < parts.length; h += 1) {
        const other = risk[h]! / atRisk;
        const term = spread * (g === h ? share * (1 - share) : -share * other);
        covariance.set(g, h, covariance.get(g, h) + term);
      }
    }
  }
}

function countAtRisk(part: SurvivalData, time: number): number {
  return part.durations.filter(
    (d, i) => d >= time && ((part.entry?.[i] ?? 0) < time || (part.entry?.[i] ?? 0) === 0),
  ).length;
}
