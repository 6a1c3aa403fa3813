import { groupBy } from '../../group-by.ts';
import type { Rules } from '../../site/rules.ts';
import { conditionalLogistic } from '../../statistics/regression/conditional-logistic.ts';
import { conditionalPoisson } from '../../statistics/regression/conditional-poisson.ts';
import type { RegressionFit } from '../../statistics/regression/regression-result.ts';
import type { Outcome } from '../../statistics/result.ts';
import type { UnitDay } from '../../transform/panel/unit-day.ts';
import { EXPOSURES, type Exposure, OUTCOMES, type Review } from '../review-schema.ts';
import { exposureOf } from './exposure.ts';

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
  const varying = EXPOSURES.filter((exposure) => {
    const held = panel.filter((row) => row.at_risk === 1).map((row) => exposureOf(row, exposure, 'site'));
    return [0, 1].every((side) => held.filter((of) => of === side).length >= rules.least_days_each_side);
  });
  if (varying.length < 2) return [];
  const comparable = panel.filter((row) =>
    varying.every((exposure) => !leftOut.get(exposure)?.has(row.unit)),
  );
  const rows = knownRows(comparable, varying);
  return OUTCOMES.map((outcome) => {
    const fit = outcome === 'failed_test' ? fitTests(rows, varying, rules) : fitAborts(rows, varying, rules);
    return { outcome, days: rows.length, ...describe(fit, varying) };
  });
}

/** A day. Those of one stratum share its name, and those of the same exposures their list: there may be millions. */
interface ModelRow {
  unit: string;
  stratum: string;
  x: readonly number[];
  failed: number;
  aborts: number;
  cycles: number;
}

function knownRows(panel: readonly UnitDay[], exposures: readonly Exposure[]): ModelRow[] {
  const lists = new Map<string, readonly number[]>();
  return [...groupBy(panel, (row) => row.unit).values()].flatMap((ofUnit) => {
    const strata = new Map<string, string>();
    const due = exposures.map((exposure) => ofUnit.some((row) => exposureOf(row, exposure, 'site') !== null));
    return ofUnit.flatMap((row) => {
      if (row.at_risk === 0) return [];
      const x = exposures.map((exposure, index) => (due[index] ? exposureOf(row, exposure, 'site') : 0));
      if (x.some((held) => held === null)) return [];
      return [
        {
          unit: row.unit,
          stratum: sharedIn(strata, `${row.unit}/${row.era}/${row.stratum}`, (name) => name),
          x: sharedIn(lists, x.join(), () => x as number[]),
          failed: row.failed ?? 0,
          aborts: row.cleanliness_aborts,
          cycles: row.production_cycles,
        },
      ];
    });
  });
}

function sharedIn<Value>(known: Map<string, Value>, key: string, make: (key: string) => Value): Value {
  const old = known.get(key);
  if (old !== undefined) return old;
  const value = make(key);
  known.set(key, value);
  return value;
}

function fitTests(
  rows: readonly ModelRow[],
  names: readonly Exposure[],
  rules: Rules['comparison'],
): Outcome<RegressionFit> {
  return conditionalLogistic(
    {
      covariates: rows.map((row) => row.x),
      names: [...names],
      cases: rows.map((row) => row.failed),
      strata: rows.map((row) => row.stratum),
      clusters: rows.map((row) => row.unit),
    },
    { level: rules.level },
  );
}

/** One row for each stratum and combination of exposures: the likelihood needs no more. */
function fitAborts(
  rows: readonly ModelRow[],
  names: readonly Exposure[],
  rules: Rules['comparison'],
): Outcome<RegressionFit> {
  const cells = [...groupBy(rows, (row) => row.stratum).values()].flatMap((stratum) =>
    [...groupBy(stratum, (row) => row.x).values()].map((cell) => ({
      ...cell[0]!,
      events: cell.reduce((sum, row) => sum + row.aborts, 0),
      exposure: cell.reduce((sum, row) => sum + row.cycles, 0),
    })),
  );
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
