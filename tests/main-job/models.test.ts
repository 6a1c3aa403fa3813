import { beforeAll, describe, expect, it } from 'vitest';
import { doses } from '../../pipeline/findings/comparisons/dose.ts';
import { jointModels } from '../../pipeline/findings/comparisons/joint-model.ts';
import type { Site } from '../../pipeline/site/site.ts';
import { conditionalLogistic } from '../../pipeline/statistics/regression/conditional-logistic.ts';
import type { Transformed } from '../../pipeline/transform/transform.ts';
import { computedOrFail } from '../statistics/computed-or-fail.ts';
import { readExpected } from './expected.ts';
import { near } from './near.ts';
import { FLEETS, folderOf, readFleet } from './read-fleet.ts';

/**
 * Models with both exposures at once and trends over dose, from exports, against survival's clogit (exact likelihood) and stats' glm: see models.R and
 * README.md. Tolerance 1e-7, relative: clogit stops at a relative change of the likelihood of 1e-9, so its estimates are good to some 2e-8 here.
 */
const REGRESSION = 1e-7;

describe.each(FLEETS)('%s, as R has it', (fleet) => {
  const expected = readExpected(folderOf(fleet));
  let site: Site;
  let transformed: Transformed;

  beforeAll(async () => {
    ({ site, transformed } = await readFleet(fleet, expected.settings.until));
  });

  it.each(expected.conditional_logistic.map((of) => [of.unit ?? 'all units', of] as const))(
    'fits the conditional logistic model of clogit: %s',
    (_, of) => {
      const rows = transformed.panel.filter(
        (row) =>
          row.at_risk === 1 &&
          row.chamber_overdue !== null &&
          row.strainers_missed !== null &&
          (of.unit === null || row.unit === of.unit),
      );
      expect([rows.length, rows.filter((row) => row.failed === 1).length]).toEqual([of.days, of.failed]);
      const fit = conditionalLogistic({
        names: ['chamber overdue', 'strainer missed'],
        covariates: rows.map((row) => [row.chamber_overdue!, row.strainers_missed! > 0 ? 1 : 0]),
        cases: rows.map((row) => row.failed!),
        strata: rows.map((row) => `${row.unit} ${row.era} ${row.stratum}`),
      });
      if (!of.finite) {
        // clogit warns that a coefficient may be infinite.
        expect(fit.computable).toBe(false);
        return;
      }
      const own = computedOrFail(fit);
      for (const [at, coefficient] of own.coefficients.entries()) {
        near(coefficient.estimate, of.estimate[at]!, REGRESSION, `${coefficient.name} estimate`);
        near(coefficient.standardError, of.standard_error[at]!, REGRESSION, `${coefficient.name} error`);
        near(coefficient.pValue, of.p[at]!, REGRESSION, `${coefficient.name} p`);
      }
      near(own.covariance[0]![1]!, of.covariance, REGRESSION, 'covariance');
      near(own.logLikelihood, of.log_likelihood, REGRESSION, 'log-likelihood');
      near(own.nullLogLikelihood, of.null_log_likelihood, REGRESSION, 'log-likelihood of no effect');
      for (const [test, wanted] of [
        [own.likelihoodRatio, of.likelihood_ratio],
        [own.score, of.score],
        [own.wald, of.wald],
      ] as const) {
        near(test.chiSquare, wanted.chi_square, REGRESSION, 'chi-square');
        near(test.pValue, wanted.p, REGRESSION, 'p of chi-square');
      }
    },
  );

  it('has the models of clogit and glm with both exposures, errors robust to clusters included', () => {
    const [tests, aborts] = jointModels(transformed.panel, site.rules.comparison);
    const fit = expected.conditional_logistic.find((of) => of.unit === null)!;
    if (!fit.finite) throw new Error('clogit found no finite estimate');
    expect([tests!.days, tests!.terms.length, aborts!.terms.length]).toEqual([fit.days, 2, 2]);
    for (const at of [0, 1] as const) {
      near(tests!.terms[at]!.ratio, Math.exp(fit.estimate[at]!), REGRESSION, 'ratio of failed tests');
      near(tests!.terms[at]!.p, fit.p[at]!, REGRESSION, 'p of failed tests');
      const [own, of] = [aborts!.terms[at]!, expected.poisson];
      near(own.ratio, of.ratio[at]!, REGRESSION, 'ratio of aborts');
      near(own.low, of.wald.low[at]!, REGRESSION, 'low of aborts');
      near(own.high, of.wald.high[at]!, REGRESSION, 'high of aborts');
      near(own.p, of.p[at]!, REGRESSION, 'p of aborts');
      near(own.robust_low, of.robust.low[at]!, REGRESSION, 'robust low of aborts');
      near(own.robust_high, of.robust.high[at]!, REGRESSION, 'robust high of aborts');
      near(own.robust_p, of.robust_p[at]!, REGRESSION, 'robust p of aborts');
    }
  });

  it('has the days and failures by dose, and the trend as the score test of clogit', () => {
    const own = doses(transformed.panel);
    expect(
      own.map(({ exposure, classes }) => ({
        exposure,
        days: classes.map((of) => of.days),
        failed: classes.map((of) => of.failed),
      })),
    ).toEqual(expected.doses.map(({ exposure, days, failed }) => ({ exposure, days, failed })));
    for (const [at, of] of expected.doses.entries()) {
      near(own[at]!.statistic, of.statistic, REGRESSION, `${of.exposure} trend`);
      near(own[at]!.p, of.p, REGRESSION, `${of.exposure} p of trend`);
    }
  });
});
