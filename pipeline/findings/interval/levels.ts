import { groupBy } from '../../group-by.ts';
import { empiricalBayesRates } from '../../statistics/ranking/empirical-bayes-rates.ts';
import type { LevelRow } from './interval-schema.ts';
import { ownShapes } from './own-shapes.ts';
import { daysOf, type Fitted } from './shape-fit.ts';
import { countOf } from './spell-days.ts';

type Level = LevelRow['failures'];

/**
 * Levels of units and of sites beside the fleet's mean: events over what the fit expects at their clocks, so that a unit that is cleaned late is not taken for a bad one, shrunk
 * to the mean by the gamma-Poisson model. Where there is no fit the chances take the place of what it expects.
 */
export function levelsOf(failures: Fitted, aborts: Fitted, confidence: number): Omit<LevelRow, 'best'>[] {
  const rows = (level: 'unit' | 'site'): Omit<LevelRow, 'best'>[] => {
    const failed = groupLevels(failures, level, confidence);
    const aborted = groupLevels(aborts, level, confidence);
    const shapes = ownShapes(failures, level, confidence);
    const spells = groupBy(failures.clusters, (cluster) => cluster[level]);
    return [...spells].map(([scope, clusters], index) => ({
      level,
      scope,
      spells: clusters.reduce((sum, cluster) => sum + cluster.spells.length, 0),
      failures: failed[index]!,
      aborts: aborted[index]!,
      shape: shapes.get(scope) ?? null,
    }));
  };
  return [...rows('site'), ...rows('unit')];
}

function groupLevels({ clusters, outcome, fit }: Fitted, by: 'unit' | 'site', confidence: number): Level[] {
  const parts = clusters.map((cluster, index) => {
    const { events, chances } = countOf(daysOf(cluster), outcome);
    return {
      key: cluster[by],
      events,
      chances,
      expected: fit.computable ? fit.clusters[index]!.expected : chances,
    };
  });
  const groups = [...groupBy(parts, (part) => part.key).values()].map((of) => ({
    events: of.reduce((sum, part) => sum + part.events, 0),
    chances: of.reduce((sum, part) => sum + part.chances, 0),
    exposure: of.reduce((sum, part) => sum + part.expected, 0),
  }));
  const shrunk = empiricalBayesRates(groups, { level: confidence });
  const mean = shrunk.computable ? shrunk.mean : null;
  return groups.map((group, index) => {
    const unit = shrunk.computable ? shrunk.units[index]! : null;
    return {
      events: group.events,
      chances: group.chances,
      raw: group.chances === 0 ? null : group.events / group.chances,
      factor: unit ? unit.estimate / mean! : null,
      low: unit ? unit.interval.low / mean! : null,
      high: unit ? unit.interval.high / mean! : null,
    };
  });
}
