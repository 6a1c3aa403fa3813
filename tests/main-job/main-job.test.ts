import { beforeAll, describe, expect, it } from 'vitest';
import {
  type ComparisonFamily,
  comparisonFamily,
} from '../../pipeline/findings/comparisons/comparison-family.ts';
import { countedUnit } from '../../pipeline/findings/comparisons/mostly-reactive.ts';
import type { Reading } from '../../pipeline/ingest/reading.ts';
import { formatDay } from '../../pipeline/site/day.ts';
import type { Site } from '../../pipeline/site/site.ts';
import type { Transformed } from '../../pipeline/transform/transform.ts';
import { DAY_COLUMNS, type Expected, type ExpectedComparison, readDays, readExpected } from './expected.ts';
import { near, within } from './near.ts';
import { FLEETS, folderOf, readFleet } from './read-fleet.ts';

/**
 * The main job from exports to verdicts, against R 4.2.2 (stats; survival 3.5-3), which read the same exports by itself: see recompute.R and README.md.
 *
 * Tolerances, relative unless said: counts none. Ratios and bounds 1e-9 (both sides solved to 1e-12 and better). R's own fisher.test and
 * mantelhaen.test(exact) look for their roots with uniroot's default tolerance, about 1e-4 on a ratio or its inverse: 1e-2. Shift p: none where all shifts are taken; where they are drawn, the
 * margin that R states (five standard errors of both draws); the adjusted p-values of that margin's ends enclose the adjusted p. Variance inflation where shifts are drawn: 0.1, some five standard errors
 * of a variance of 9999 draws.
 */
const EXACT = 1e-9;
const ROOT_SEARCH = 1e-2;
const INFLATION = 0.1;

describe.each(FLEETS)('%s, as R has it', (fleet) => {
  const expected: Expected = readExpected(folderOf(fleet));
  let site: Site;
  let reading: Reading;
  let transformed: Transformed;
  let family: ComparisonFamily;

  beforeAll(async () => {
    ({ site, reading, transformed } = await readFleet(fleet, expected.settings.until));
    family = comparisonFamily(transformed.panel, transformed.histories.map(countedUnit), site.rules);
  });

  const pairs = () =>
    expected.comparisons.map((of) => {
      const own = family.comparisons.find(({ id }) => id === of.id);
      if (!own) throw new Error(`no comparison ${of.id}`);
      return { of, own };
    });

  it('was read without a problem, under the settings that R had', () => {
    expect(reading.problems).toEqual([]);
    const chamber = site.policyOf('U01', 'chamber')!;
    const { comparison, purge, ...rules } = site.rules;
    expect({
      zone: site.declared.sites[0]!.zone,
      day_starts: site.declared.sites[0]!.day_starts,
      until: formatDay(transformed.until),
      interval: chamber.every,
      grace: chamber.grace_days,
      stratum_days: comparison.stratum_days,
      window: comparison.strainer_window_days,
      level: comparison.level,
      alpha: comparison.alpha,
      power: comparison.power,
      ratio_of_interest: comparison.ratio_of_interest,
      shifts: comparison.shifts,
      least_days: comparison.least_days_each_side,
      reactive_share: comparison.reactive_share,
      reactive_days: rules.reactive_within_days,
      cool_down_h: rules.cool_down_hours,
      purge_minutes: purge.under_minutes,
      purge_hours: purge.within_hours_after_cleaning,
    }).toEqual(expected.settings);
  });

  it('has the same days of use, and on each the same results, exposures and counts', () => {
    const own = transformed.panel.map((row) => DAY_COLUMNS.map((column) => row[column]));
    const wanted = readDays(folderOf(fleet));
    expect(own.length).toBe(wanted.length);
    const differing = own.flatMap((row, index) => {
      const other = wanted[index]!;
      return DAY_COLUMNS.flatMap((column, at) =>
        row[at] === other[at]
          ? []
          : [`${row[0]} ${formatDay(Number(row[1]))} ${column}: ${row[at]}, R ${other[at]}`],
      );
    });
    expect(differing).toEqual([]);
  });

  it('has the same counts for each unit', () => {
    const own = transformed.histories.map((of) => {
      const done = (task: string) =>
        of.cleanings.filter((cleaning) => cleaning.task === task && cleaning.done);
      const results = of.tests.filter((test) => test.role === 'day_result');
      return {
        unit: of.unit,
        days_of_use: of.use_days.length,
        eras: of.eras.length,
        day_results: results.length,
        failed_days: results.filter((test) => test.result === 'fail').length,
        purges: of.cycles.filter((cycle) => cycle.standing === 'purge').length,
        early_stops: of.cycles.filter((cycle) => cycle.standing === 'early_stop').length,
        chamber_done: done('chamber').length,
        chamber_contradicted: done('chamber').filter((cleaning) => cleaning.contradicted).length,
        chamber_reactive: done('chamber').filter((cleaning) => cleaning.reactive).length,
        strainer_done: done('drain_strainer').length,
        strainer_reactive: done('drain_strainer').filter((cleaning) => cleaning.reactive).length,
      };
    });
    expect(own).toEqual(expected.units);
  });

  it('makes the same comparisons, with the same days, chances and events on each side', () => {
    expect(family.comparisons.map(({ id }) => id).sort()).toEqual(
      expected.comparisons.map(({ id }) => id).sort(),
    );
    expect(family.size).toBe(expected.comparisons.filter(({ p }) => p !== null).length);
    for (const { of, own } of pairs()) {
      const sides = (from: typeof of | typeof own) => ({
        exposed: from.exposed,
        unexposed: from.unexposed,
        control_exposed: from.control.exposed,
        control_unexposed: from.control.unexposed,
        strata: from.strata,
      });
      expect(sides(own), of.id).toEqual(sides(of));
      expect(own.days_left_out, of.id).toEqual({
        not_at_risk: of.not_at_risk,
        exposure_unknown: of.exposure_unknown,
        unit_not_comparable: of.unit_not_comparable,
      });
    }
  });

  it('has the ratios, intervals and conditional p-values of R', () => {
    for (const { of, own } of pairs()) {
      near(own.ratio, of.ratio, EXACT, `${of.id} ratio`);
      near(own.low, of.low, EXACT, `${of.id} low`);
      near(own.high, of.high, EXACT, `${of.id} high`);
      near(own.p_conditional, of.p_conditional, EXACT, `${of.id} p`);
      near(own.control.ratio, of.control.ratio, EXACT, `${of.id} control ratio`);
      near(own.control.low, of.control.low, EXACT, `${of.id} control low`);
      near(own.control.high, of.control.high, EXACT, `${of.id} control high`);
      if (of.kind !== 'not computable')
        expect(own.method.startsWith(of.kind), `${of.id}: ${own.method}`).toBe(true);
      if (of.by_r === null) continue;
      const search = of.by_r.by === 'mantelhaen.test' ? EXACT : ROOT_SEARCH;
      near(own.ratio, of.by_r.ratio, search, `${of.id} ratio by ${of.by_r.by}`);
      near(own.low, of.by_r.low, search, `${of.id} low by ${of.by_r.by}`);
      near(own.high, of.by_r.high, search, `${of.id} high by ${of.by_r.by}`);
      near(own.p_conditional, of.by_r.p, EXACT, `${of.id} p by ${of.by_r.by}`);
    }
  });

  it('has the shift p-values of R, and the p-values adjusted over the family', () => {
    for (const { of, own } of pairs()) {
      expect(own.shifts, of.id).toBe(of.shifts);
      within(own.p, of.p, of.p_error, `${of.id} p`);
      within(own.control.p, of.control.p, of.control.p_error, `${of.id} control p`);
      expect(own.control.moved, of.id).toBe(of.control.moved);
      expect(own.adjusted_p === null, of.id).toBe(of.adjusted_p === null);
      if (own.adjusted_p === null) continue;
      expect(own.adjusted_p, of.id).toBeGreaterThanOrEqual(of.adjusted_p_least! - 1e-9);
      expect(own.adjusted_p, of.id).toBeLessThanOrEqual(of.adjusted_p_most! + 1e-9);
    }
  });

  it('has the variance inflation and the smallest detectable ratio of R', () => {
    for (const { of, own } of pairs()) {
      near(own.variance_inflation, of.variance_inflation, of.drawn ? INFLATION : EXACT, `${of.id} inflation`);
      // Inflation below 1 is not used, so no draws enter the ratio then.
      const surelyOne = of.variance_inflation !== null && of.variance_inflation < 1 - INFLATION;
      const tolerance = of.drawn && !surelyOne ? INFLATION : EXACT;
      const logOf = (ratio: number | null) => (ratio === null ? null : Math.log(ratio));
      near(
        logOf(own.smallest_detectable_ratio),
        logOf(of.smallest_detectable_ratio),
        tolerance,
        `${of.id} detectable`,
      );
    }
  });

  it('comes to the same verdicts', () => {
    const verdicts = (from: { id: string; verdict: string; verdict_all_records?: string | null }[]) =>
      Object.fromEntries(from.map((of) => [of.id, [of.verdict, of.verdict_all_records ?? null]]));
    expect(verdicts(family.comparisons)).toEqual(verdicts(expected.comparisons));
  });

  it('sets the same exposures beside each other, and finds the same', () => {
    for (const { of, own } of pairs()) {
      expect(own.beside.length, of.id).toBe(of.beside === undefined ? 0 : 1);
      if (of.beside === undefined) continue;
      const { exposure, finding, ...numbers } = of.beside;
      const [beside] = own.beside;
      expect([beside!.exposure, beside!.finding], of.id).toEqual([exposure, finding]);
      for (const [name, value] of Object.entries(numbers))
        near(beside![name as keyof typeof numbers], value, EXACT, `${of.id} beside ${name}`);
    }
  });
});

it('the fleets hold what they are for', () => {
  const all = FLEETS.flatMap((fleet): ExpectedComparison[] => readExpected(folderOf(fleet)).comparisons);
  const by = new Set(all.map((of) => of.by_r?.by));
  for (const name of ['fisher.test', 'mantelhaen.test, exact', 'mantelhaen.test', 'poisson.test'])
    expect(by, name).toContain(name);
  const verdicts = new Set(all.map((of) => of.verdict));
  for (const verdict of ['shown', 'suggested', 'cannot_tell', 'not_comparable'])
    expect(verdicts, verdict).toContain(verdict);
  expect(all.some((of) => of.beside !== undefined)).toBe(true);
  expect(all.some((of) => of.drawn)).toBe(true);
  expect(all.some((of) => !of.drawn && of.p !== null)).toBe(true);
});
