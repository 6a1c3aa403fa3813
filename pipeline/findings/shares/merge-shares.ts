import { byCodeUnit } from '../../by-code-unit.ts';
import { groupBy } from '../../group-by.ts';
import type { Site } from '../../site/site.ts';
import type { JoinCount } from '../../transform/join-count.ts';
import { unitOrder } from '../../transform/unit-order.ts';
import type { Drift } from '../drift/drift-schema.ts';
import { inOrder } from '../drift/unit-drift.ts';
import { newestOf, type Share, sumOfTexts } from './share.ts';

/**
 * Puts the shares of different sites together: the same in whichever parts the records were taken. Rows of units come in the order of the units, rows of sites in that of
 * their first units, rows of sources in that of the site file.
 */
export function mergeShares(site: Site, shares: readonly Share[]): Share {
  const all = <Row>(of: (share: Share) => readonly Row[]): Row[] => shares.flatMap(of);
  const order = unitOrder(
    site,
    all((share) => share.units.map(({ unit }) => unit)),
  );
  const place = new Map(order.map((unit, index) => [unit, index]));
  const byUnit = <Row extends { unit: string }>(rows: Row[]): Row[] =>
    rows.sort((a, b) => place.get(a.unit)! - place.get(b.unit)!);
  const units = byUnit(all((share) => share.units));
  const sites = new Map([...new Set(units.map((unit) => unit.site))].map((id, index) => [id, index]));
  const bySite = <Row extends { site: string | null }>(rows: Row[]): Row[] =>
    rows.sort((a, b) => sites.get(a.site!)! - sites.get(b.site!)!);
  const sources = new Map(site.sources.map(({ name }, index) => [name, index]));
  const bySource = <Row extends { source: string }>(rows: Row[]): Row[] =>
    rows.sort((a, b) => sources.get(a.source)! - sources.get(b.source)!);
  const list = <Key extends keyof Share['lists']>(key: Key): Share['lists'][Key] =>
    byUnit(all<Share['lists'][Key][number]>((share) => share.lists[key])) as Share['lists'][Key];
  return {
    units,
    panel: byUnit(all((share) => share.panel)),
    joins: sumOfJoins(all((share) => share.joins)),
    summaries: byUnit(all((share) => share.summaries)),
    drift: mergeDrift(
      shares.map((share) => share.drift),
      byUnit,
      bySite,
    ),
    lists: {
      contradicted_records: list('contradicted_records'),
      incomplete_returns: list('incomplete_returns'),
      test_timing: list('test_timing'),
      look_backs: list('look_backs'),
      cycles_without_pass: list('cycles_without_pass'),
      requalifications: list('requalifications'),
      early_stops: list('early_stops'),
    },
    unclassified: sumOfTexts(all((share) => share.unclassified)),
    quality: {
      clock_differences: byUnit(bySource(all((share) => share.quality.clock_differences))).sort((a, b) =>
        byCodeUnit(a.kind, b.kind),
      ),
      cleaning_clocks: bySite(bySource(all((share) => share.quality.cleaning_clocks))),
      counters: byUnit(all((share) => share.quality.counters)),
      times: bySource(all((share) => share.quality.times)),
    },
    ahead: byUnit(all((share) => share.ahead)),
    missing: {
      source_days: all((share) => share.missing.source_days),
      logs: bySite(all((share) => share.missing.logs)),
      units: all((share) => share.missing.units).sort((a, b) => place.get(a.unit!)! - place.get(b.unit!)!),
    },
    newest: newestOf(shares.map((share) => share.newest)),
    later_records: shares.reduce((sum, share) => sum + share.later_records, 0),
  };
}

function mergeDrift(
  drifts: readonly Drift[],
  byUnit: <Row extends { unit: string }>(rows: Row[]) => Row[],
  bySite: <Row extends { site: string | null }>(rows: Row[]) => Row[],
): Drift {
  return {
    to: drifts[0]!.to,
    units: inOrder(byUnit(drifts.flatMap((of) => of.units))),
    probes: byUnit(drifts.flatMap((of) => of.probes)),
    sites: bySite(drifts.flatMap((of) => of.sites)),
    heat_up_passes: byUnit(drifts.flatMap((of) => of.heat_up_passes)),
    leak_tests_after_cleaning: byUnit(drifts.flatMap((of) => of.leak_tests_after_cleaning)),
  };
}

/** Each join's counts over all parts in which it was made. */
export function sumOfJoins(joins: readonly JoinCount[]): JoinCount[] {
  return [...groupBy(joins, ({ name }) => name).values()].map((parts) => {
    const sum = (of: 'left' | 'right' | 'matched' | 'unmatched_left' | 'unmatched_right') =>
      parts.reduce((total, part) => total + part[of], 0);
    return {
      name: parts[0]!.name,
      relationship: parts[0]!.relationship,
      left: sum('left'),
      right: sum('right'),
      matched: sum('matched'),
      unmatched_left: sum('unmatched_left'),
      unmatched_right: sum('unmatched_right'),
    };
  });
}
