import { checkLevel } from '../intervals/check-proportion.ts';
import { notComputable, type Outcome } from '../result.ts';
import { type Covariates, centred, checkedNames } from './design.ts';
import { fitWithinStrata, type StratumRows } from './fit-within-strata.ts';
import type { LikelihoodPoint } from './maximise.ts';
import type { RegressionFit } from './regression-result.ts';
import { addOuter, dot, zeros } from './solve.ts';

/** Rows of a conditional Poisson regression, in any order. */
export interface ConditionalPoissonData extends Covariates {
  /** Events per row, whole numbers. */
  events: ArrayLike<number>;
  /** Time or chances per row, above 0 (its logarithm is the offset); a row with 0 and no events says nothing. */
  exposure: ArrayLike<number>;
  /** Stratum of each row. A cluster must hold whole strata. */
  strata: ArrayLike<string | number>;
}

/** Rows of one stratum: its events fall on them in proportion to exposure times rate. */
interface Stratum extends StratumRows {
  events: number[];
  offset: number[];
  total: number;
}

/**
 * Poisson regression of rates with a level for each stratum, which is removed by conditioning on the stratum's number of events.
 *
 * Estimated: log rate ratios per unit of each covariate, common to all strata. The same estimates and errors as Poisson regression with
 * an indicator for each stratum, also those robust to clusters, without an equation for each stratum, of which there may be thousands. Assumed: independent Poisson
 * counts (with `clusters`, independence between clusters only for the robust errors).
 *
 * Edges, each stated as not computable: no event; covariates that do not vary within strata with events, or are there linear combinations of
 * others (named); a covariate combination without any event, so that a coefficient has no finite estimate. Strata without an event say nothing and are left out.
 *
 * @param data - rows; see `ConditionalPoissonData`
 * @param options - `level` of the intervals, default 0.95
 * @throws RangeError for arrays that do not fit together, counts or exposures that can't be, events in no exposure, or a stratum in two clusters
 *
 * Source: B. G. Armstrong, A. Gasparrini & A. Tobias, BMC Medical Research Methodology 14 (2014) 122; Breslow & Day, Statistical
 * Methods in Cancer Research II (1987) ch. 4.
 *
 * @example British doctors, within age groups: exp(smoker) = 1.425519
 */
export function conditionalPoisson(
  data: ConditionalPoissonData,
  options: { level?: number } = {},
): Outcome<RegressionFit> {
  const { level = 0.95 } = options;
  const method = 'conditional Poisson regression with offset, maximum likelihood';
  checkLevel(level, 'conditionalPoisson');
  const names = checkedNames(data, data.events.length, 'conditionalPoisson');
  if (names.length === 0) throw new RangeError('conditionalPoisson: there must be at least one covariate');
  checkCounts(data);
  const used = strataOf(data).filter(({ total }) => total > 0);
  if (used.length === 0) return notComputable(method, 'There are no events.');
  return fitWithinStrata({
    method,
    names,
    level,
    used,
    likelihoodOf,
    recedes({ events }, along, slack) {
      const most = along.reduce((a, b) => Math.max(a, b));
      return events.every((count, i) => count === 0 || along[i]! >= most - slack);
    },
    clustered: data.clusters !== undefined,
  });
}

/** Multinomial log-likelihood of a stratum's events over its rows, less what does not depend on the coefficients, with its derivatives. */
function likelihoodOf({ rows, events, offset, total }: Stratum, beta: readonly number[]): LikelihoodPoint {
  const eta = rows.map((x, i) => offset[i]! + dot(x, beta));
  const most = eta.reduce((a, b) => Math.max(a, b));
  const sum = eta.reduce((all, of) => all + Math.exp(of - most), 0);
  const mean = beta.map(() => 0);
  const score = beta.map(() => 0);
  const information = zeros(beta.length);
  let logLikelihood = -total * (most + Math.log(sum));
  for (const [i, x] of rows.entries()) {
    const share = Math.exp(eta[i]! - most) / sum;
    logLikelihood += events[i]! * eta[i]!;
    for (let j = 0; j < x.length; j++) {
      mean[j]! += share * x[j]!;
      score[j]! += (events[i]! - total * share) * x[j]!;
    }
    addOuter(information, x, total * share);
  }
  addOuter(information, mean, -total);
  return { logLikelihood, score, information };
}

/** Rows with exposure by stratum, in order of first appearance. */
function strataOf(data: ConditionalPoissonData): Stratum[] {
  const groups = new Map<string | number, Stratum>();
  for (let i = 0; i < data.events.length; i++) {
    if (data.exposure[i] === 0) continue;
    const name = data.strata[i]!;
    const cluster = data.clusters?.[i];
    const group = groups.get(name) ?? { rows: [], events: [], offset: [], total: 0, cluster };
    if (group.cluster !== cluster)
      throw new RangeError(
        `conditionalPoisson: stratum ${name} must lie in one cluster, found ${group.cluster} and ${cluster}`,
      );
    group.rows.push([...data.covariates[i]!]);
    group.events.push(data.events[i]!);
    group.offset.push(Math.log(data.exposure[i]!));
    group.total += data.events[i]!;
    groups.set(name, group);
  }
  return [...groups.values()].map((group) => ({ ...group, rows: centred(group.rows) }));
}

function checkCounts(data: ConditionalPoissonData): void {
  for (const name of ['exposure', 'strata'] as const)
    if (data[name].length !== data.events.length)
      throw new RangeError(
        `conditionalPoisson: ${name} must have ${data.events.length} entries, found ${data[name].length}`,
      );
  for (let i = 0; i < data.events.length; i++) {
    const [k, time] = [data.events[i]!, data.exposure[i]!];
    const valid =
      Number.isSafeInteger(k) &&
      k >= 0 &&
      time >= 0 &&
      time < Number.POSITIVE_INFINITY &&
      (time > 0 || k === 0);
    if (!valid)
      throw new RangeError(`conditionalPoisson: row ${i} can't have ${k} events in exposure ${time}`);
  }
}
