import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import { chiSquareTail } from '../distributions/gamma.ts';
import { normalMultiplier, normalTwoSided } from '../distributions/normal.ts';
import { computed, type Interval, notComputable, type Outcome } from '../result.ts';
import { type CoxProblem, coxDerivatives } from './cox-likelihood.ts';
import { checkSurvivalData, type SurvivalData } from './survival-data.ts';

export interface CoxInput extends SurvivalData {
  /** Covariates by name, one number per subject. */
  covariates: Readonly<Record<string, readonly number[]>>;
  /** Stratum of each subject: each stratum has a baseline hazard of its own. Default one. */
  strata?: readonly string[];
  /** Default 'efron'. */
  ties?: 'efron' | 'breslow';
  /** Of the intervals, default 0.95. */
  level?: number;
}

export interface CoxCoefficient {
  name: string;
  /** Logarithm of the hazard ratio per unit of the covariate. */
  estimate: number;
  standardError: number;
  z: number;
  pValue: number;
  hazardRatio: number;
  /** Wald interval of the hazard ratio. */
  interval: Interval;
}

interface Test {
  statistic: number;
  degreesOfFreedom: number;
  pValue: number;
}

export interface Cox {
  coefficients: CoxCoefficient[];
  logLikelihood: { null: number; fitted: number };
  likelihoodRatio: Test;
  score: Test;
  wald: Test;
  subjects: number;
  events: number;
}

const MOST_STEPS = 50;

/**
 * Cox proportional hazards regression, right censoring, left truncation and strata allowed.
 *
 * Estimates hazard ratios without a form for the baseline hazard. Assumes that ratios don't change with time
 * on the clock, censoring and late entry say nothing about the event to come, and independent subjects
 * (repeated events of one unit aren't; stratify by unit at least).
 *
 * Conventions: Efron ties (Breslow's on request differ where many events share a time); observed information;
 * Wald intervals. Newton steps on standardised covariates, halved where the likelihood would fall.
 *
 * Edges, as stated outcomes: no event; a covariate that is constant or a mixture of others among those at
 * risk; a coefficient that grows without bound (one side of a covariate has no event, or all).
 *
 * @throws RangeError as `checkSurvivalData`; if a covariate or strata differ in length, a covariate isn't
 * finite, there is no covariate, or level isn't in (0, 1)
 *
 * Source: Cox, Journal of the Royal Statistical Society B 34 (1972) 187-220; Efron, Journal of the American
 * Statistical Association 72 (1977) 557-565; Therneau and Grambsch, Modeling Survival Data (2000), chapter 3.
 */
export function cox(input: CoxInput): Outcome<Cox> {
  const { durations, observed, covariates, ties = 'efron', level = 0.95 } = input;
  const method = `Cox proportional hazards, ${ties === 'efron' ? 'Efron' : 'Breslow'} ties`;
  checkInput(input, level);
  const names = Object.keys(covariates);
  const events = observed.filter((o) => o === 1).length;
  if (events === 0) return notComputable(method, 'No event was observed.');
  const scales = names.map((name) => spreadOf(covariates[name]!));
  const constant = names.find((_, j) => scales[j]!.sd === 0);
  if (constant !== undefined)
    return notComputable(method, `Covariate ${constant} is the same for all subjects.`);
  const problem: CoxProblem = {
    ...input,
    rows: durations.map((_, i) =>
      names.map((name, j) => (covariates[name]![i]! - scales[j]!.mean) / scales[j]!.sd),
    ),
    strata: input.strata ?? durations.map(() => ''),
    ties,
  };

  const start = names.map(() => 0);
  const atNull = coxDerivatives(problem, start);
  if (!isRegular(atNull.information)) {
    return notComputable(
      method,
      'The covariates do not vary apart from each other among those at risk at the events.',
    );
  }
  const fit = newton(problem, start);
  if (fit === null) {
    return notComputable(
      method,
      'A coefficient grows without bound: a covariate separates those with an event from those without.',
    );
  }
  const { beta, at } = fit;
  const covariance = inverse(at.information);
  const z = normalMultiplier(level);
  const coefficients = names.map((name, j): CoxCoefficient => {
    const estimate = beta[j]! / scales[j]!.sd;
    const standardError = Math.sqrt(covariance.get(j, j)) / scales[j]!.sd;
    const interval = {
      low: Math.exp(estimate - z * standardError),
      high: Math.exp(estimate + z * standardError),
      level,
    };
    const wald = estimate / standardError;
    const pValue = normalTwoSided(wald);
    return { name, estimate, standardError, z: wald, pValue, hazardRatio: Math.exp(estimate), interval };
  });
  const test = (statistic: number): Test => ({
    statistic,
    degreesOfFreedom: names.length,
    pValue: chiSquareTail(statistic, names.length, 'upper'),
  });
  return computed(method, {
    coefficients,
    logLikelihood: { null: atNull.logLikelihood, fitted: at.logLikelihood },
    likelihoodRatio: test(Math.max(0, 2 * (at.logLikelihood - atNull.logLikelihood))),
    score: test(quadratic(atNull.score, inverse(atNull.information))),
    wald: test(quadratic(beta, at.information)),
    subjects: durations.length,
    events,
  });
}

/**
 * Maximum of the partial likelihood; null where the steps don't die out, the sign of a maximum at infinity.
 */
function newton(problem: CoxProblem, start: readonly number[]) {
  let beta = [...start];
  let at = coxDerivatives(problem, beta);
  for (let round = 0; round < MOST_STEPS; round += 1) {
    if (!isRegular(at.information)) return null;
    const step = inverse(at.information).mmul(Matrix.columnVector(at.score)).to1DArray();
    let share = 1;
    let next = at;
    let moved = beta;
    for (let halving = 0; halving < 30; halving += 1) {
      moved = beta.map((b, j) => b + share * step[j]!);
      next = coxDerivatives(problem, moved);
      if (next.logLikelihood >= at.logLikelihood - 1e-12 * Math.abs(at.logLikelihood)) break;
      share /= 2;
    }
    beta = moved;
    at = next;
    if (Math.max(...step.map(Math.abs)) < 1e-9) return { beta, at };
  }
  return null;
}

/** Positive definite, and not by rounding alone (covariates have standard deviation 1). */
function isRegular(information: Matrix): boolean {
  const diagonal = information.diagonal();
  if (diagonal.some((d) => !(d > 1e-9))) return false;
  const scaled = Matrix.zeros(information.rows, information.rows);
  for (let j = 0; j < information.rows; j += 1) {
    for (let k = 0; k < information.rows; k += 1) {
      const off = j === k ? 1 - 1e-9 : information.get(j, k) / Math.sqrt(diagonal[j]! * diagonal[k]!);
      scaled.set(j, k, off);
    }
  }
  return new CholeskyDecomposition(scaled).isPositiveDefinite();
}

function quadratic(vector: readonly number[], matrix: Matrix): number {
  const column = Matrix.columnVector([...vector]);
  return column.transpose().mmul(matrix).mmul(column).get(0, 0);
}

function spreadOf(values: readonly number[]): { mean: number; sd: number } {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return { mean, sd: Math.sqrt(values.reduce((a, v) => a + (v - mean) ** 2, 0) / values.length) };
}

function checkInput(input: CoxInput, level: number): void {
  checkSurvivalData('cox', input);
  const { durations, covariates, strata } = input;
  if (!(level > 0 && level < 1)) throw new RangeError(`cox: level must be between 0 and 1, found ${level}.`);
  if (strata !== undefined && strata.length !== durations.length) {
    throw new RangeError(
      `cox: strata must be as many as durations, found ${strata.length} and ${durations.length}.`,
    );
  }
  const entries = Object.entries(covariates);
  if (entries.length === 0) throw new RangeError('cox: at least one covariate must be given.');
  for (const [name, values] of entries) {
    if (values.length !== durations.length) {
      throw new RangeError(`cox: covariate ${name} must be as long as durations, found ${values.length}.`);
    }
    const wrong = values.findIndex((v) => !Number.isFinite(v));
    if (wrong >= 0) throw new RangeError(`cox: covariate ${name}[${wrong}] must be a finite number.`);
  }
}
