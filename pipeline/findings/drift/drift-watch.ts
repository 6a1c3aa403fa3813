import { groupBy } from '../../group-by.ts';
import { type Day, formatDay } from '../../site/day.ts';
import type { Rules } from '../../site/rules.ts';
import type { Site } from '../../site/site.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { type AdjustedSeries, standsAlone } from './adjusted-series.ts';
import type { Drift, ProbeDrift, SiteMovement } from './drift-schema.ts';
import { judgeInput } from './judge-input.ts';
import type { Judgement } from './judge-series.ts';
import { judgeTogether } from './judge-together.ts';
import { movesBeforeFailure, type ProbeLimit } from './limit-of-probe.ts';
import { probeDrift } from './probe-drift.ts';
import { fromScale, PROBES } from './probes.ts';
import { median } from './robust.ts';
import { siteMovement } from './site-movement.ts';
import { type SiteSeries, siteSeries } from './site-series.ts';
import { inOrder, unitDrift } from './unit-drift.ts';
import { type WatchedUnit, watchedUnit } from './watched-unit.ts';

/**
 * Watches the empty daily cycles of all units: what is steady, moving, near its limit or stepped on the day before `until`. Pure.
 *
 * For each site and probe: values of the day by unit and era; the movement common to the site taken out, as strongly as the unit feels it; a saw-tooth that falls back at a cleaning
 * recognised and taken out; noise and its autocorrelation, partly borrowed from the site's other units; then EWMA and CUSUM, the step told from the slope, which must stand for a value (with
 * less asked of a probe beside which others of the unit move as one of the causes has it), the rate, and the days to the limit. Nothing after `until` is looked at, so that a past day can be judged again.
 *
 * Assumes that a unit is alike from day to day inside an era. A fault that comes at once gives no drift.
 *
 * @param until first operating day that is left out
 */
export const driftWatch = (histories: readonly UnitHistory[], site: Site, until: Day): Drift =>
  driftOfUnits(
    histories.map((history) => watchedUnit(history, site.rules, until)),
    site.rules,
    until,
  );

/** The same from what was taken of each unit, so that their histories need not be held at once. */
export function driftOfUnits(units: readonly WatchedUnit[], siteRules: Rules, until: Day): Drift {
  const rules = siteRules.drift;
  const probes: ProbeDrift[] = [];
  const sites: SiteMovement[] = [];
  for (const [siteId, ofSite] of groupBy(units, ({ site }) => site)) {
    const all = ofSite.flatMap(({ series }) => series);
    const limits = new Map(ofSite.map((of) => [of.unit, of.limits]));
    const together = PROBES.map((probe) => {
      const series = all.filter((of) => of.probe === probe);
      return { series, ...siteSeries(series, rules) };
    });
    const judged = judgements(together, rules);
    for (const [i, probe] of PROBES.entries()) {
      const row = siteMovement(siteId, probe, together[i]!.common);
      if (row) sites.push(row);
      probes.push(...judgeProbe(together[i]!, judged, limits, rules, until));
    }
  }
  const ofUnit = groupBy(probes, ({ unit }) => unit);
  return {
    to: formatDay(until - 1),
    units: inOrder(units.map((of) => unitDrift(of, ofUnit.get(of.unit) ?? [], of.events))),
    probes: units.flatMap(({ unit }) => ofUnit.get(unit) ?? []),
    sites,
    heat_up_passes: units.flatMap((of) => of.heat_up_passes),
    leak_tests_after_cleaning: units.flatMap((of) => of.leak_tests_after_cleaning),
  };
}

/** Judges the probes of each unit and era together. */
function judgements(
  together: readonly SiteSeries[],
  rules: Rules['drift'],
): ReadonlyMap<AdjustedSeries, Judgement> {
  const all = together.flatMap(({ adjusted, noises }) =>
    adjusted.map((series, i) => ({
      series,
      probe: series.of.probe,
      input: judgeInput(series, noises[i]!, rules),
      alone: standsAlone(series),
    })),
  );
  const byEra = groupBy(all, ({ series }) => series.of.era);
  return new Map(
    [...byEra.values()].flatMap((probes) => {
      const judged = judgeTogether(probes);
      return probes.map(({ series }, i) => [series, judged[i]!] as const);
    }),
  );
}

/** All units and eras of one probe of a site. */
function judgeProbe(
  { commonOf, adjusted, noises }: SiteSeries,
  judged: ReadonlyMap<AdjustedSeries, Judgement>,
  limits: ReadonlyMap<string, WatchedUnit['limits']>,
  rules: Rules['drift'],
  until: Day,
): ProbeDrift[] {
  const moves = new Map<string, number[]>();
  for (const [i, one] of adjusted.entries()) {
    const { history } = one.of;
    if (one.sawTooth) continue;
    const episodes = history.episodes.filter((of) => of.from < until && of.from <= one.of.to);
    const found = movesBeforeFailure(
      one.values,
      episodes.filter((of) => of.from >= one.of.from),
      noises[i]!.spread,
    );
    moves.set(history.unit, [...(moves.get(history.unit) ?? []), ...found]);
  }
  return adjusted.map((one, i) =>
    probeDrift({
      series: one,
      noise: noises[i]!,
      common: commonOf[i]!,
      judgement: judged.get(one)!,
      limits: [
        ...(limits.get(one.of.history.unit)!.get(one.of.probe) ?? []),
        ...failureLimits(one, moves.get(one.of.history.unit) ?? []),
      ],
      until,
      rules,
    }),
  );
}

/** Levels at which the unit failed before, the nearest on either side, carried over to the present era. */
function failureLimits({ of, values, memory }: AdjustedSeries, moves: readonly number[]): ProbeLimit[] {
  const level = median(values.slice(memory).map((value) => value.y));
  if (level === undefined) return [];
  return [moves.filter((move) => move > 0), moves.filter((move) => move < 0)].flatMap((side) => {
    if (side.length === 0) return [];
    const least = side.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
    return [{ value: fromScale(of.probe, level + least), source: 'failed_before', seen: side.length }];
  });
}
