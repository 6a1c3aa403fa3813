import { describe, expect, it } from 'vitest';
import { compare } from '../../../pipeline/findings/comparisons/compare.ts';
import { comparisonFamily } from '../../../pipeline/findings/comparisons/comparison-family.ts';
import { countedUnit } from '../../../pipeline/findings/comparisons/mostly-reactive.ts';
import { stratify } from '../../../pipeline/findings/comparisons/strata.ts';
import { formatDay } from '../../../pipeline/site/day.ts';
import { rulesSchema } from '../../../pipeline/site/rules.ts';
import type { UnitDay } from '../../../pipeline/transform/panel/unit-day.ts';
import type { UnitHistory } from '../../../pipeline/transform/unit-history.ts';

const rules = rulesSchema.parse({});

const dayOf = (changes: Partial<UnitDay> & { day: number }): UnitDay => ({
  unit: 'U1',
  site: 's',
  date: formatDay(changes.day),
  era: 0,
  stratum: 0,
  test_result: changes.failed ? 'fail' : 'pass',
  test_timing: 'in_time',
  inside_episode: 0,
  out_of_service: 0,
  at_risk: 1,
  failed: 0,
  production_cycles: 3,
  cleanliness_aborts: 0,
  unrelated_aborts: 0,
  unclassified_aborts: 0,
  purges: 0,
  early_stops: 0,
  chamber_overdue: 0,
  chamber_overdue_all_records: changes.chamber_overdue ?? 0,
  chamber_days_past_due: 0,
  chamber_clock_days: 1,
  strainers_missed: 0,
  flushes_missed_in_a_row: null,
  ...changes,
});
const historyOf = (unit: string): UnitHistory => ({ unit, cleanings: [] }) as unknown as UnitHistory;

/** A series of days; E exposed, e exposed and failed, u unexposed, f unexposed and failed, - not at risk, ? exposure not known. */
const series = (text: string, unit = 'U1', stratum = 0): UnitDay[] =>
  [...text].map((mark, index) =>
    dayOf({
      day: 20_000 + stratum * 1000 + index,
      unit,
      stratum,
      chamber_overdue: mark === '?' ? null : mark === 'E' || mark === 'e' ? 1 : 0,
      failed: mark === 'e' || mark === 'f' ? 1 : 0,
      at_risk: mark === '-' ? 0 : 1,
    }),
  );

describe('strata', () => {
  it('count days at risk with known exposure, and say what was left out', () => {
    const rows = [...series('EEe-uu?f'), ...series('Euu', 'U1', 1)];
    const { strata, notAtRisk, exposureUnknown } = stratify(rows, 'chamber_overdue', 'failed_test', 'site');
    expect(strata.map(({ exposed, unexposed }) => [exposed, unexposed])).toEqual([
      [
        { days: 3, trials: 3, events: 1 },
        { days: 3, trials: 3, events: 1 },
      ],
      [
        { days: 1, trials: 1, events: 0 },
        { days: 2, trials: 2, events: 0 },
      ],
    ]);
    expect([notAtRisk, exposureUnknown]).toEqual([1, 1]);
  });
});

describe('a comparison', () => {
  // Fisher's tea tasting as a unit's days: 3 of 4 exposed days failed, 1 of 4 others. Odds ratio 6.408 (0.2117 to 626.2), two-sided p 0.4857:
  // R. A. Fisher, The Design of Experiments (1935), by Agresti, Categorical Data Analysis, 2nd ed. p. 91; conditional estimate as in R's fisher.test, converged.
  it('of one unit and stratum is Fisher’s exact test', () => {
    const measured = compare(
      {
        scope: 'unit',
        unit: 'U1',
        exposure: 'chamber_overdue',
        outcome: 'failed_test',
        stratified: (outcome) => stratify(series('eeeEufuu'), 'chamber_overdue', outcome, 'site'),
        unitNotComparableDays: 0,
      },
      rules.comparison,
    );
    expect(measured.ratio).toBeCloseTo(6.40831966, 6);
    expect(measured.low).toBeCloseTo(0.2117356, 6);
    expect(measured.high).toBeCloseTo(626.24353, 3);
    expect(measured.p_conditional).toBeCloseTo(0.4857142857, 9);
    // All seven other places of the spell, counted here by themselves.
    const failed = [1, 1, 1, 0, 0, 1, 0, 0];
    const sums = Array.from({ length: 8 }, (_, shift) =>
      [0, 1, 2, 3].reduce((sum, i) => sum + failed[(i + shift) % 8]!, 0),
    );
    const extreme = sums.slice(1).filter((sum) => sum >= 3).length;
    expect(measured.shifts).toBe(7);
    expect(measured.p).toBeCloseTo(Math.min(1, (2 * (1 + extreme)) / 8), 12);
  });
});

describe('the family', () => {
  const long = 'u'.repeat(20) + 'E'.repeat(15);
  it('leaves out exposures that a unit never has, adjusts over those with a p, and is unmoved by the order of units', () => {
    const panel = [...series(`${long}eueuef${long}ff`, 'A'), ...series(`uf${long}eE${long}`, 'B')];
    const forward = comparisonFamily(panel, [historyOf('A'), historyOf('B')].map(countedUnit), rules);
    expect(forward.comparisons.some((of) => of.exposure === 'flush_missed')).toBe(false);
    expect(forward.size).toBe(forward.comparisons.filter((of) => of.p !== null).length);
    const swapped = [...panel.filter((row) => row.unit === 'B'), ...panel.filter((row) => row.unit === 'A')];
    const backward = comparisonFamily(swapped, [historyOf('B'), historyOf('A')].map(countedUnit), rules);
    const unitsOnly = (family: typeof forward) =>
      family.comparisons
        .filter((of) => of.unit !== null)
        .sort((a, b) => (a.id < b.id ? -1 : 1))
        .map(({ p, ratio, low }) => [p, ratio, low]);
    expect(unitsOnly(backward)).toEqual(unitsOnly(forward));
  });

  it('is not comparable where half of the cleanings are reactive', () => {
    const history = {
      unit: 'A',
      cleanings: [
        { task: 'chamber', done: true, reactive: true },
        { task: 'chamber', done: true, reactive: false },
      ],
    } as unknown as UnitHistory;
    const { comparisons } = comparisonFamily(series(long.repeat(2), 'A'), [countedUnit(history)], rules);
    expect(comparisons.find((of) => of.id === 'A/chamber_overdue/failed_test')!.verdict).toBe(
      'not_comparable',
    );
  });
});
