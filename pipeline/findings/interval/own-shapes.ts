import { groupBy } from '../../group-by.ts';
import { benjaminiHochberg } from '../../statistics/multiplicity/benjamini-hochberg.ts';
import { empiricalBayesNormal } from '../../statistics/ranking/empirical-bayes-normal.ts';
import { powerLawIntensity } from '../../statistics/recurrent/power-law-intensity.ts';
import { LEAST_FAILURES } from './answer.ts';
import type { LevelRow } from './interval-schema.ts';
import type { Fitted } from './shape-fit.ts';

export type OwnShape = NonNullable<LevelRow['shape']>;

/**
 * Shapes of the failures of each unit (or site) by itself, with p adjusted over them by Benjamini and Hochberg, and drawn to their mean on the log scale: one unit seldom has failures
 * enough, but all together say how far units differ. A unit with fewer than five failures has none.
 */
export function ownShapes(fitted: Fitted, by: 'unit' | 'site', level: number): Map<string, OwnShape> {
  const clusters = fitted.clusters.map((cluster, index) => ({ cluster, cells: fitted.cells[index]! }));
  const own = [...groupBy(clusters, ({ cluster }) => cluster[by])].flatMap(([scope, of]) => {
    const fit = powerLawIntensity(
      of.map(({ cells }) => cells),
      { level },
    );
    return fit.computable && fit.logShapeError !== null && fit.events >= LEAST_FAILURES
      ? [{ scope, fit, error: fit.logShapeError }]
      : [];
  });
  const { adjusted } = benjaminiHochberg(own.map(({ fit }) => fit.testOfShape1.pValue));
  const shrunk = empiricalBayesNormal(
    own.map(({ fit, error }) => ({ estimate: Math.log(fit.shape), standardError: error })),
    { level },
  );
  return new Map(
    own.map(({ scope, fit }, index): [string, OwnShape] => {
      const drawn = shrunk.computable ? shrunk.units[index]! : null;
      return [
        scope,
        {
          estimate: fit.shape,
          low: fit.interval.low,
          high: Number.isFinite(fit.interval.high) ? fit.interval.high : null,
          p: fit.testOfShape1.pValue,
          adjusted_p: adjusted[index]!,
          shrunk: drawn ? Math.exp(drawn.estimate) : null,
          shrunk_low: drawn ? Math.exp(drawn.interval.low) : null,
          shrunk_high: drawn ? Math.exp(drawn.interval.high) : null,
        },
      ];
    }),
  );
}
