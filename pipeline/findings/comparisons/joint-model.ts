import type { Rules } from '../../site/rules.ts';
import { conditionalLogistic } from '../../statistics/regression/conditional-logistic.ts';
import { conditionalPoisson } from '../../statistics/regression/conditional-poisson.ts';
import type { RegressionFit } from '../../statistics/regression/regression-result.ts';
import type { Outcome } from '../../statistics/result.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { EXPOSURES, type Exposure, OUTCOMES, type Review } from '../review-schema.ts';
import { exposureOf } from './exposure.ts';
import { type ModelDays, modelDays } from './model-days.ts';

type JointModel = Review['joint_models'][number];

/**
 * All exposures at once in one model of the fleet, for each outcome: each one's ratio with the others held. Failed tests by conditional logistic
 * regression within strata, aborts by conditional Poisson regression within strata with production cycles as offset; standard errors also robust to
 * clusters, which are the units. It stands beside the stratified comparisons as a second look and decides no verdict.
 *
 * A task that is never due on a unit counts there as not missed. Days on which an exposure that is due there is not known are left out.
 *
 * @param leftOut units left out for an exposure, because their cleanings are mostly reactive: out of the whole model
 */
export function jointModels(
  panel: readonly UnitDay[],
  rules: Rules['comparison'],
  leftOut: ReadonlyMap<Exposure, ReadonlySet<string>> = new Map(),
): JointModel[] {
  const varying = EXPOSURES.filter((exposure) => variesEnough(panel, exposure, rules.least_days_each_side));
  if (varying.length < 2) return [];
  const isLeftOut = (unit: string) => varying.some((exposure) => leftOut.get(exposure)?.has(unit));
  const days = modelDays(panel, varying, isLeftOut);
  return OUTCOMES.map((outcome) => {
    const fit = outcome === 'failed_test' ? fitTests(days, varying, rules) : fitAborts(days, varying, rules);
    return { outcome, days: days.exposures.length, ...describe(fit, varying) };
  });
}

/** Whether there are so many days at risk on each side. */
function variesEnough(panel: readonly UnitDay[], exposure: Exposure, least: number): boolean {
  const sides = [0, 0];
  for (const row of panel) {
    const held = row.at_risk === 1 ? exposureOf(row, exposure, 'site') : null;
    if (held !== null) sides[held]! += 1;
  }
  return sides.every((count) => count >= least);
}

function fitTests(
  days: ModelDays,
  names: readonly Exposure[],
  rules: Rules['comparison'],
): Outcome<RegressionFit> {
  return conditionalLogistic(
    {
      covariates: days.exposures,
      names: [...names],
      cases: days.failed,
      strata: days.stratum,
      clusters: days.unit,
    },
    { level: rules.level },
  );
}

interface Cell {
  x: readonly number[];
  unit: number;
  stratum: number;
  events: number;
  exposure: number;
}

/** One row for each stratum and combination of exposures: the likelihood needs no more. */
function fitAborts(
  days: ModelDays,
  names: readonly Exposure[],
  rules: Rules['comparison'],
): Outcome<RegressionFit> {
  const ofStratum: Cell[][] = [];
  for (const [at, x] of days.exposures.entries()) {
    const stratum = days.stratum[at]!;
    ofStratum[stratum] ??= [];
    const known = ofStratum[stratum].find((of) => of.x === x);
    const cell = known ?? { x, unit: days.unit[at]!, stratum, events: 0, exposure: 0 };
    if (!known) ofStratum[stratum].push(cell);
    cell.events += days.aborts[at]!;
    cell.exposure += days.cycles[at]!;
  }
  const cells = ofStratum.flat();
  return conditionalPoisson(
    {
      covariates: cells.map((cell) => cell.x),
      names: [...names],
      events: cells.map((cell) => cell.events),
      exposure: cells.map((cell) => cell.exposure),
      strata: cells.map((cell) => cell.stratum),
      clusters: cells.map((cell) => cell.unit),
    },
    { level: rules.level },
  );
}

function describe(
  fit: Outcome<RegressionFit>,
  exposures: readonly Exposure[],
): Omit<JointModel, 'outcome' | 'days'> {
  if (!fit.computable) return { method: fit.method, not_computable: fit.reason, terms: [] };
  const robust = fit.robust?.computable ? fit.robust.coefficients : undefined;
  const terms = exposures.map((exposure) => {
    const own = fit.coefficients.find((coefficient) => coefficient.name === exposure)!;
    const wide = robust?.find((coefficient) => coefficient.name === exposure);
    return {
      exposure,
      ratio: own.ratio,
      low: own.ratioInterval.low,
      high: own.ratioInterval.high,
      p: own.pValue,
      robust_low: wide?.ratioInterval.low ?? null,
      robust_high: wide?.ratioInterval.high ?? null,
      robust_p: wide?.pValue ?? null,
    };
  });
  return { method: fit.method, not_computable: null, terms };
}
