import type { DriftOperatingCharacteristics } from '../../pipeline/findings/drift/operating-characteristics.ts';
import { PROBES } from '../../pipeline/findings/drift/probes.ts';
import { clopperPearsonInterval } from '../../pipeline/statistics/intervals/clopper-pearson-interval.ts';
import { garwoodInterval } from '../../pipeline/statistics/intervals/garwood-interval.ts';
import { medianInterval } from '../../pipeline/statistics/intervals/median-interval.ts';
import type { SiteResult } from './drift-run-site.ts';
import type { DriftScenario } from './drift-scenarios.ts';

type Summary = DriftOperatingCharacteristics['scenarios'][number];

/** Puts the sites of one scenario together. Intervals take calls and drifts as independent, which units of one site are nearly. */
export function summariseDrift(scenario: DriftScenario, results: readonly SiteResult[]): Summary {
  const sum = (value: (of: SiteResult) => number) => results.reduce((total, of) => total + value(of), 0);
  const years = sum((of) => of.quietYears);
  const calls = sum((of) => of.falseCalls);
  const rate = garwoodInterval(calls, years);
  if (!rate.computable) throw new Error(rate.reason);
  const drifts = results.flatMap((of) => of.drifts);
  const byProbe = PROBES.map((probe) => [probe, sum((of) => of.falseByProbe[probe] ?? 0)] as const);
  return {
    scenario: scenario.name,
    says: scenario.says,
    sites: results.length,
    unit_years: round(years),
    false_calls: {
      count: calls,
      per_unit_year: round(calls / years),
      low: round(rate.interval.low),
      high: round(rate.interval.high),
    },
    false_by_probe: Object.fromEntries(byProbe) as Summary['false_by_probe'],
    found: share(drifts.filter((of) => of.lead !== null).length, drifts.length),
    lead_share: medianOf(drifts.map((of) => (of.lead ?? 0) / of.length)),
    lead_days: medianOf(drifts.map((of) => of.lead ?? 0)),
    attention_share: medianOf(drifts.map((of) => (of.attention ?? 0) / of.length)),
    steps_called_slopes: share(
      sum((of) => of.stepsCalledSlope),
      sum((of) => of.steps),
    ),
    steps_named: share(
      sum((of) => of.stepsSeen),
      sum((of) => of.steps),
    ),
    first_intervals: share(
      sum((of) => of.firstCovered),
      sum((of) => of.firstIntervals),
    ),
    later_intervals: share(
      sum((of) => of.laterCovered),
      sum((of) => of.laterIntervals),
    ),
    teeth_named: share(
      sum((of) => of.teethNamed),
      sum((of) => of.teethLooks),
    ),
    teeth_invented: share(
      sum((of) => of.toothlessNamed),
      sum((of) => of.toothlessLooks),
    ),
  };
}

function share(count: number, of: number): Summary['found'] {
  if (of === 0) return null;
  const result = clopperPearsonInterval(count, of);
  if (!result.computable) throw new Error(result.reason);
  return { count, of, low: round(result.interval.low), high: round(result.interval.high) };
}

function medianOf(values: readonly number[]): Summary['lead_share'] {
  if (values.length === 0) return null;
  const found = medianInterval(values);
  return found.computable
    ? {
        of: values.length,
        median: round(found.estimate),
        low: round(found.interval.low),
        high: round(found.interval.high),
      }
    : null;
}

const round = (value: number): number => Math.round(value * 10_000) / 10_000;
