import { describe, expect, it } from 'vitest';
import { intervalCaseSchema } from '../../../pipeline/findings/interval/interval-schema.ts';
import { readSiteFile } from '../../../pipeline/site/read-site-file.ts';
import { UserError } from '../../../pipeline/user-error.ts';
import { numbersIn } from '../../statistics/computed-or-fail.ts';
import { caseOf, every, risingUnits, type UnitPlan } from './fleet.ts';

const COSTS =
  'interval: { longest_by_instructions: 35, costs: { labour_hour: 40, repair_per_failure: 500, currency: EUR } }';
const answerOf = (units: readonly UnitPlan[], site = '') => {
  const { found } = caseOf(units, site);
  expect(intervalCaseSchema.safeParse(found).error?.issues ?? []).toEqual([]);
  expect(numbersIn(found).every((number) => Number.isFinite(number))).toBe(true);
  return found;
};

describe('the case for a cleaning interval', () => {
  it('fits its schema, holds no NaN and comes out the same twice', () => {
    const found = answerOf(risingUnits(4, 300), COSTS);
    expect(JSON.stringify(caseOf(risingUnits(4, 300), COSTS).found)).toBe(JSON.stringify(found));
    expect(found.clock).toBe('calendar_days');
    expect(found.in_force).toBe(28);
  });

  it('takes the median of the spells that ended with a cleaning', () => {
    // By hand: 20 and 40 days; the third spell ends with the record.
    const cleanings = [{ day: 10 }, { day: 30 }, { day: 70 }];
    const found = answerOf([{ unit: 'U1', days: 200, fails: every(15, 4, 200), cleanings }]);
    expect(found.spells.median_length).toBe(30);
  });

  it('supports cleaning earlier where failures come late in the spells, with a best interval inside its range', () => {
    const found = answerOf(risingUnits(12, 700), COSTS);
    expect(found.answer.code).toBe('supported');
    const best = found.best!;
    expect(best.low).toBeLessThanOrEqual(best.near_low);
    expect(best.near_low).toBeLessThanOrEqual(best.interval);
    expect(best.interval).toBeLessThanOrEqual(best.near_high);
    expect(best.high).toBeLessThanOrEqual(35);
    // The best of the curve is the best that is named.
    const least = Math.min(...found.curve.map((row) => row.value));
    expect(found.curve.find((row) => row.interval === best.interval)!.value).toBe(least);
    expect(found.objective).toBe('cost');
    expect(found.sensitivity[0]!.moves).toBeGreaterThan(0);
  });

  it('says in plain code that the record does not support it where failures do not depend on the clock', () => {
    const units = risingUnits(6, 500).map((unit, index) => ({
      ...unit,
      fails: every(37, 5 + 3 * index, 500),
    }));
    const found = answerOf(units, COSTS);
    expect(found.answer.code).toBe('not_supported');
    expect(found.answer.because[0]).toMatch(/^shape_/);
  });

  it('can’t tell where so few failures could not have shown a rise, and still compares candidates', () => {
    const cleanings = every(28, 2, 150).map((day) => ({ day }));
    const found = answerOf([{ unit: 'U1', days: 150, fails: [9, 50, 72, 111, 124, 146], cleanings }], COSTS);
    expect(found.answer).toMatchObject({ code: 'cannot_tell', because: ['too_few_to_show'] });
    const [fit] = found.fits;
    expect(fit!.smallest_detectable_shape).toBeGreaterThan(1.5);
    expect(fit!.high).toBeGreaterThan(1.5);
    expect(found.candidates.length).toBeGreaterThan(0);
  });

  it('takes the clock to start anew with a failure where most failures were followed by a cleaning', () => {
    const units = Array.from({ length: 6 }, (_, index): UnitPlan => {
      const fails = every(23, 7 + index, 500);
      return {
        unit: `U${index + 1}`,
        days: 500,
        fails,
        cleanings: [
          ...every(40, 1 + index, 500).map((day) => ({ day })),
          ...fails.map((day) => ({ day, how: 'reactive' as const })),
        ].sort((a, b) => a.day - b.day),
      };
    });
    const found = answerOf(units, COSTS);
    expect(found.notes).toContain('mostly_reactive');
    expect(found.after_failure).toMatchObject({ in_force: 'cleaned', origin: 'record' });
    const stated = answerOf(units, COSTS.replace('{ longest', '{ after_failure: clock_goes_on, longest'));
    expect(stated.after_failure).toMatchObject({ in_force: 'clock_goes_on', origin: 'site' });
  });
});

describe('bad input has a stated outcome', () => {
  const unit = (changes: Partial<UnitPlan>): UnitPlan[] => [
    { unit: 'U1', days: 200, fails: every(15, 4, 200), ...changes },
  ];
  const because = (units: readonly UnitPlan[], site = '') => {
    const found = answerOf(units, site);
    expect(found.answer.code).toBe('cannot_tell');
    expect(found.best).toBeNull();
    expect(found.candidates).toEqual([]);
    return found.answer.because;
  };

  it('no cleaning at all', () => {
    expect(because(unit({}))).toEqual(['no_cleaning_recorded']);
  });

  it('no records at all', () => {
    const found = answerOf([{ unit: 'U1', days: 0 }]);
    expect(found.answer).toMatchObject({ code: 'cannot_tell', because: ['no_cleaning_recorded'] });
    expect(found.notes).toContain('no_units_in_use');
    expect(found.schedule.not_planned).toBe('no_units_in_use');
    expect(found.record_from).toBeNull();
  });

  it('no cleaning twice in the record', () => {
    expect(because(unit({ cleanings: [{ day: 100 }] }))).toEqual(['no_cleaning_twice']);
  });

  it('all cleanings reactive', () => {
    const fails = every(25, 4, 200);
    const cleanings = fails.map((day) => ({ day, how: 'reactive' as const }));
    expect(because(unit({ fails, cleanings }))).toEqual(['all_reactive']);
  });

  it('all cleanings contradicted by the cycle log', () => {
    const cleanings = every(30, 2, 200).map((day) => ({ day, how: 'running' as const }));
    expect(because(unit({ cleanings }))).toEqual(['all_contradicted']);
  });

  it('all test days on the same clock', () => {
    const cleanings = every(1, 0, 200).map((day) => ({ day }));
    expect(because(unit({ cleanings }))).toEqual(['same_clock']);
  });

  it('too few failures', () => {
    const cleanings = every(28, 3, 200).map((day) => ({ day }));
    expect(because(unit({ fails: [40, 80], cleanings }))).toEqual(['too_few_failures']);
  });

  it('costs missing: hours and failures, and said so', () => {
    const found = answerOf(risingUnits(4, 300), 'interval: { costs: { labour_hour: 40 } }');
    expect(found.objective).toBe('hours');
    expect(found.notes).toContain('costs_missing');
    expect(found.candidates[0]!.year!.cost_total).toBeNull();
    expect(found.candidates[0]!.year!.hours_total.estimate).toBeGreaterThan(0);
    expect(found.inputs.find((row) => row.name === 'repair_per_failure')).toMatchObject({
      value: null,
      origin: 'not_given',
    });
  });

  it('costs below 0: the site file is refused with the line', () => {
    const text = 'sites: [{ zone: Etc/UTC }]\ninterval:\n  costs:\n    retest: -5\n';
    expect(() => readSiteFile(text, 'site.yaml')).toThrow(
      new UserError('site_file', 'site.yaml line 4, interval.costs.retest: must be at least 0, found -5'),
    );
  });

  it('hours of work with one end only, and a limit without a bound, are refused', () => {
    expect(() =>
      readSiteFile('sites: [{ zone: Etc/UTC }]\ninterval: { planning: { work_from: "06:00" } }', 'site.yaml'),
    ).toThrow(/work_from and work_to together/);
    expect(() =>
      readSiteFile(
        'sites: [{ zone: Etc/UTC }]\ninterval: { water: { limits: [{ kind: condensate, determinand: iron, measure: mg/L }] } }',
        'site.yaml',
      ),
    ).toThrow(/low or high/);
  });

  it('an interval longer than the record: no year for it', () => {
    const found = answerOf(
      risingUnits(4, 300),
      'cleaning: [{ task: chamber, every: 200 }]\ninterval: { longest_by_instructions: 365, candidates: [14, 28, 180] }',
    );
    expect(found.longest_observed).toBeLessThan(40);
    expect(found.notes).toEqual(expect.arrayContaining(['limit_beyond_record', 'in_force_beyond_record']));
    const standing = new Map(found.candidates.map((row) => [row.interval, row.standing]));
    expect(standing.get(28)).toBe('compared');
    expect(standing.get(180)).toBe('beyond_record');
    expect(standing.get(200)).toBe('beyond_record');
    expect(found.candidates.find((row) => row.interval === 180)!.year).toBeNull();
    expect(found.best!.value_in_force).toBeNull();
  });

  it('nothing lies beyond the instructions for use, nor beyond the interval in force where their limit is not given', () => {
    const limited = answerOf(risingUnits(4, 300), 'interval: { longest_by_instructions: 21 }');
    expect(limited.longest_considered).toBe(21);
    expect(limited.best!.high).toBeLessThanOrEqual(21);
    expect(limited.notes).toContain('in_force_beyond_instructions');
    expect(
      limited.candidates
        .filter((row) => row.interval > 21)
        .every((row) => row.standing === 'beyond_instructions'),
    ).toBe(true);
    const unlimited = answerOf(risingUnits(4, 300));
    expect(unlimited.longest_considered).toBe(28);
    expect(unlimited.notes).toContain('limit_not_given');
    expect(unlimited.candidates.filter((row) => row.interval > 28).map((row) => row.standing)).toEqual([
      'limit_not_given',
      'limit_not_given',
      'limit_not_given',
    ]);
  });

  it('no interval in force: stated, and the plan stands on none', () => {
    const found = answerOf(risingUnits(4, 300), 'cleaning: []');
    expect(found.notes).toContain('no_interval_in_force');
    expect(found.in_force).toBeNull();
    expect(found.best!.advice).toBe('none_in_force');
    expect(found.candidates.every((row) => row.break_even === null)).toBe(true);
  });

  it('other clocks: days of use and cycles', () => {
    for (const [counted_in, every_] of [
      ['days_of_use', 20],
      ['cycles', 90],
    ] as const) {
      const found = answerOf(
        risingUnits(6, 500).map((unit) => ({ ...unit, idle: every(7, 6, 500) })),
        `cleaning: [{ task: chamber, every: ${every_}, counted_in: ${counted_in} }]`,
      );
      expect(found.clock).toBe(counted_in);
      expect(found.clock_origin).toBe('policy');
      expect(found.fits[0]!.shape).not.toBeNull();
      expect(found.candidates.some((row) => row.in_force && row.year !== null)).toBe(true);
      expect(found.schedule.not_planned).toBeNull();
    }
  });
});
