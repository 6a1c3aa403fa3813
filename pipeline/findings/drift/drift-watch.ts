import { groupBy } from '../../group-by.ts';
import { type Day, formatDay } from '../../site/day.ts';
import type { Rules } from '../../site/rules.ts';
import type { Site } from '../../site/site.ts';
import type { UnitHistory } from '../../transform/unit-history.ts';
import { type AdjustedSeries, standsAlone } from './adjusted-series.ts';
import type { Drift, ProbeDrift, SiteMovement } from './drift-schema.ts';
import { type EraSeries, eraSeries } from './era-series.ts';
import { heatUpPasses } from './heat-up-passes.ts';
import { judgeInput } from './judge-input.ts';
import type { Judgement } from './judge-series.ts';
import { judgeTogether } from './judge-together.ts';
import { wetBefore, wetWorks } from './leak-after-cleaning.ts';
import { alarmLimit, configuredLimit, movesBeforeFailure, type ProbeLimit } from './limit-of-probe.ts';
import { probeDrift } from './probe-drift.ts';
import { fromScale, PROBES } from './probes.ts';
import { median, rounded } from './robust.ts';
import { siteMovement } from './site-movement.ts';
import { type SiteSeries, siteSeries } from './site-series.ts';
import { inOrder, unitDrift } from './unit-drift.ts';

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
export function driftWatch(histories: readonly UnitHistory[], site: Site, until: Day): Drift {
  const rules = site.rules.drift;
  const probes: ProbeDrift[] = [];
  const sites: SiteMovement[] = [];
  for (const [siteId, ofSite] of groupBy(histories, (history) => history.site)) {
    const all = ofSite.flatMap((history) => eraSeries(history, until, rules.wet_hours));
    const together = PROBES.map((probe) => {
      const series = all.filter((of) => of.probe === probe);
      return { series, ...siteSeries(series, rules) };
    });
    const judged = judgements(together, rules);
    for (const [i, probe] of PROBES.entries()) {
      const row = siteMovement(siteId, probe, together[i]!.common);
      if (row) sites.push(row);
      probes.push(...judgeProbe(together[i]!, judged, site.rules, until));
    }
  }
  const unitOrder = new Map(histories.map((history, index) => [history.unit, index]));
  probes.sort((a, b) => unitOrder.get(a.unit)! - unitOrder.get(b.unit)!);
  return {
    to: formatDay(until - 1),
    units: inOrder(histories.map((history) => unitDrift(history, probes, until))),
    probes,
    sites,
    heat_up_passes:
      site.rules.heat_up_limits === 'off'
        ? []
        : histories.flatMap((history) => heatUpPasses(history, until, rules.heat_up_deviations)),
    leak_tests_after_cleaning: histories.flatMap((history) => wetLeakTests(history, until, rules.wet_hours)),
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
  { series, commonOf, adjusted, noises }: SiteSeries & { series: readonly EraSeries[] },
  judged: ReadonlyMap<AdjustedSeries, Judgement>,
  rules: Rules,
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
  const fixed = new Map<string, ProbeLimit[]>();
  for (const { history, probe } of series) {
    if (fixed.has(history.unit)) continue;
    const limits = [
      configuredLimit(history, probe, until, rules.leak_limit_kpa_min),
      alarmLimit(history, probe, until),
    ];
    fixed.set(
      history.unit,
      limits.filter((limit) => limit !== null),
    );
  }
  return adjusted.map((one, i) =>
    probeDrift({
      series: one,
      noise: noises[i]!,
      common: commonOf[i]!,
      judgement: judged.get(one)!,
      limits: [
        ...fixed.get(one.of.history.unit)!,
        ...failureLimits(one, moves.get(one.of.history.unit) ?? []),
      ],
      until,
      rules: rules.drift,
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

function wetLeakTests(history: UnitHistory, until: Day, hours: number): Drift['leak_tests_after_cleaning'] {
  const works = wetWorks(history);
  return history.leak_tests.flatMap((test) => {
    const wet = test.day < until ? wetBefore(works, test, hours) : null;
    return wet
      ? [
          {
            unit: history.unit,
            date: formatDay(test.day),
            leak_rate_kpa_min: rounded(test.leak_rate_kpa_min),
            ...wet,
          },
        ]
      : [];
  });
}
