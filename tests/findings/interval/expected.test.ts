import { describe, expect, it } from 'vitest';
import { compareCandidates } from '../../../pipeline/findings/interval/candidates.ts';
import {
  cleanerMl,
  expectedYear,
  hoursPerCleaning,
  type Intensities,
} from '../../../pipeline/findings/interval/expected.ts';
import type { Inputs } from '../../../pipeline/findings/interval/inputs-in-force.ts';
import {
  bestOf,
  gridUpTo,
  type Setting,
  totalOf,
  yearAt,
} from '../../../pipeline/findings/interval/interval-grid.ts';
import { expectNear } from '../../statistics/computable.ts';

const NOTHING: Inputs = {
  cool_down_hours: 0,
  work_minutes: 0,
  warm_up_minutes: 0,
  test_minutes: 0,
  people: 0,
  sprayer_litres: 1.5,
  fillings: 1,
  cleaner_ml_per_litre: 3.90625,
  hours_out_of_use: 0,
  retests: 0,
  delayed_loads: 0,
  hours_per_abort: 0,
  labour_hour: 0,
  hour_out_of_use: 0,
  cleaner_litre: 0,
  other_per_cleaning: 0,
  retest: 0,
  repair_per_failure: 0,
  delayed_load: 0,
  abort: 0,
};
/** One unit that is tested once a tick and runs two production cycles a tick. */
const unit = (ticks: number) => ({
  pace: { unit: 'U', site: 's', ticks, test_days: ticks, cycles_at_risk: ticks, production: 2 * ticks },
  failures: 1,
  aborts: 1,
});
const weibull = (shape: number, scale: number): Intensities => ({
  failures: { shape, rate: scale ** -shape },
  aborts: { shape: 1, rate: 0 },
});

describe('expected year', () => {
  it('where each failure brings a cleaning is age replacement', () => {
    // "Optimum Replacement Time", ReliaWiki, System Analysis Reference: Weibull shape 2.5, scale 1000 h, preventive cost 1, failure cost 5: age 493.05 (as
    // the documentation of the library `reliability` prints it), cost 0.0035 an hour; further digits from the first-order condition solved in R 4.2.2.
    const inputs = { ...NOTHING, other_per_cleaning: 1, repair_per_failure: 4 };
    const cost = (age: number) =>
      expectedYear([unit(1000)], 'calendar_days', age, weibull(2.5, 1000), 'cleaned', inputs).cost.total /
      1000;
    expectNear(cost(493.0469576), 0.003462042739, 1e-9);
    const grid = Array.from({ length: 2001 }, (_, index) => 393 + index / 10);
    const { best } = bestOf(grid, grid.map(cost), 0);
    expect(best).toBeCloseTo(493.05, 0);
    // Run to failure by the same source: 0.005635302490 (ten scales on nothing survives).
    expectNear(cost(10_000), 0.00563530249, 1e-9);
    const year = expectedYear(
      [unit(1000)],
      'calendar_days',
      493.0469576,
      weibull(2.5, 1000),
      'cleaned',
      inputs,
    );
    expectNear(1 - year.failures / year.cleanings, 0.8430787035, 1e-9, 'share that reaches the age');
  });

  it('where the clock goes on is minimal repair, with its optimum in closed form', () => {
    // Barlow and Hunter (1960), policy II: T = scale (cp / ((shape - 1) cf))^(1 / shape).
    const inputs = { ...NOTHING, other_per_cleaning: 1, repair_per_failure: 4 };
    const cost = (age: number) =>
      expectedYear([unit(365.25)], 'calendar_days', age, weibull(2, 40), 'clock_goes_on', inputs).cost.total;
    const closed = 40 * (1 / 4) ** 0.5;
    const grid = Array.from({ length: 400 }, (_, index) => 1 + index / 10);
    expect(bestOf(grid, grid.map(cost), 0).best).toBeCloseTo(closed, 1);
    // And by hand at 20 ticks: 365.25 / 20 cleanings, each spell (20 / 40)^2 failures.
    const year = expectedYear([unit(365.25)], 'calendar_days', 20, weibull(2, 40), 'clock_goes_on', inputs);
    expectNear(year.cleanings, 18.2625, 1e-12);
    expectNear(year.failures, 18.2625 / 4, 1e-12);
    expectNear(year.cost.total, 18.2625 + 18.2625, 1e-12);
  });

  it('at shape 1 depends on the interval by its cleanings alone', () => {
    const at = (interval: number) =>
      expectedYear([unit(365)], 'calendar_days', interval, weibull(1, 50), 'clock_goes_on', NOTHING);
    expectNear(at(7).failures, at(70).failures, 1e-12);
    expectNear(at(7).failures, 365 / 50, 1e-12);
    const cleaned = expectedYear([unit(365)], 'calendar_days', 7, weibull(1, 50), 'cleaned', NOTHING);
    expectNear(cleaned.failures, 365 / 50, 1e-9);
  });

  it('takes aborts by production cycle and levels by unit', () => {
    const two = [unit(100), { ...unit(100), failures: 3, aborts: 0.5 }];
    const year = expectedYear(
      two,
      'calendar_days',
      4,
      { failures: { shape: 2, rate: 0.001 }, aborts: { shape: 1.5, rate: 0.01 } },
      'clock_goes_on',
      NOTHING,
    );
    expectNear(year.failures, 0.001 * 4 * 100 * (1 + 3), 1e-12);
    expectNear(year.aborts, 0.01 * 2 * 200 * 1.5, 1e-12);
  });

  it('doses 5.86 ml of cleaner in 1.5 l at half a US fluid ounce a US gallon', () => {
    // Common practice; 1 US fluid ounce is 29.5735295625 ml and 1 US gallon 3785.411784 ml (NIST Handbook 44, appendix C).
    expectNear(NOTHING.cleaner_ml_per_litre, (29.5735295625 / 2 / 3785.411784) * 1000, 1e-12);
    expect(cleanerMl(NOTHING)).toBeCloseTo(5.86, 2);
    expect(
      hoursPerCleaning({
        ...NOTHING,
        cool_down_hours: 4.5,
        work_minutes: 45,
        warm_up_minutes: 20,
        test_minutes: 25,
      }),
    ).toBe(6);
  });

  it('names the break-even of a failure by hand', () => {
    const inputs = { ...NOTHING, cool_down_hours: 5, work_minutes: 60, hours_out_of_use: 10 };
    const setting: Setting = {
      units: [unit(365.25)],
      clock: 'calendar_days',
      after: 'clock_goes_on',
      inputs,
      objective: 'hours',
    };
    const estimate = weibull(2, 40);
    const rows = compareCandidates(setting, estimate, [estimate, weibull(1, 40)], [10, 20, 30, 50, 90], {
      inForce: 20,
      byInstructions: 60,
      observed: 45,
      level: 0.95,
    });
    expect(rows.map((row) => row.standing)).toEqual([
      'compared',
      'compared',
      'compared',
      'beyond_record',
      'beyond_instructions',
    ]);
    expect(rows[1]!.break_even).toBeNull();
    // From 20 to 10 ticks: 18.2625 more cleanings of 6 h, and failures fall from 365.25 x 20 / 1600 to half.
    const avoided = (365.25 * 10) / 1600;
    expectNear(rows[0]!.break_even!.hours!, (18.2625 * 6) / avoided, 1e-12);
    expectNear(rows[0]!.break_even!.failures_avoided, avoided, 1e-12);
    // The other sample has shape 1 and avoids none: no upper bound.
    expect(rows[0]!.break_even!.hours_high).toBeNull();
    // At the break-even the two cost the same.
    const even = { ...setting, inputs: { ...inputs, hours_out_of_use: rows[0]!.break_even!.hours! } };
    expectNear(
      totalOf(yearAt(even, 10, estimate), 'hours'),
      totalOf(yearAt(even, 20, estimate), 'hours'),
      1e-12,
    );
  });

  it('looks at every whole interval up to the longest, thinned from 120 on', () => {
    expect(gridUpTo(5)).toEqual([1, 2, 3, 4, 5]);
    expect(gridUpTo(1)).toEqual([1]);
    expect(gridUpTo(365).length).toBeLessThanOrEqual(121);
    expect(gridUpTo(365).at(-1)).toBe(365);
    expect(bestOf([1, 2, 3, 4], [5, 1, 1.04, 2], 0.05)).toEqual({ best: 2, value: 1, low: 2, high: 3 });
    // Of equals the longest: a cleaning that gains nothing is not proposed.
    expect(bestOf([1, 2, 3], [1, 1, 1], 0).best).toBe(3);
  });
});
