import { describe, expect, it } from 'vitest';
import { cleaning, leak, service, test_ } from '../../transform/build.ts';
import { DAYS, dateOf, dayOf, notesOf, watched } from './watched.ts';

const ALARMS = ['moving', 'near_limit', 'stepped'];

describe('values that say less than they seem to', () => {
  it('takes whole minutes for what they are', () => {
    const { evacuation, probe } = watched((_, plain, noise) => ({
      ...plain,
      evacuation_s: 60 * Math.round((400 * (1 + 0.02 * noise())) / 60),
      heat_up_s: 60 * Math.round((150 * (1 + 0.05 * noise())) / 60),
    }));
    for (const of of [evacuation, probe('A', 'heat_up_time')]) {
      expect(notesOf(of)).toContain('whole_minutes');
      expect(ALARMS).not.toContain(of.state);
    }
  });

  it('leaves out a sensor that stands still, and judges nothing from it', () => {
    const { evacuation } = watched((day, plain) => (day < 110 ? plain : { ...plain, evacuation_s: 431 }));
    expect(evacuation.state).toBe('not_enough_data');
    const stuck = evacuation.notes.find((note) => note.code === 'stuck')!;
    expect(Math.abs(dayOf(stuck.since!) - 110)).toBeLessThanOrEqual(1);
    expect(evacuation.series.left_out.length).toBeGreaterThan(60);
    expect(evacuation.series.left_out.every((of) => of.value === 431 && of.why === 'stuck')).toBe(true);
  });

  it('judges again from where a stuck sensor has come free', () => {
    const { evacuation } = watched((day, plain) =>
      day < 60 || day >= 90 ? plain : { ...plain, evacuation_s: 431 },
    );
    expect(evacuation.state).toBe('steady');
    expect(notesOf(evacuation)).toContain('stuck');
  });

  it.each([
    ['seconds to minutes', 1 / 60],
    ['tenths', 10],
  ])('begins anew where the measure changes: %s', (_, factor) => {
    const { evacuation } = watched((day, plain) =>
      day < 100 ? plain : { ...plain, evacuation_s: plain.evacuation_s! * factor },
    );
    const note = evacuation.notes.find((of) => of.code === 'measure_changed')!;
    expect(dayOf(note.since!)).toBe(100);
    expect(note.number! / factor).toBeCloseTo(1, 1);
    expect(ALARMS).not.toContain(evacuation.state);
  });

  // 31.5 and 3.15 bar for 315 kPa: residuals that no steam can have.
  it('drops residuals that no steam can have, where pressure changes from kPa to mbar', () => {
    const { probe } = watched((day, plain, noise) => ({
      ...plain,
      exposure_temperature_min_c: 134.6 + 0.1 * noise(),
      exposure_temperature_max_c: 135.2 + 0.1 * noise(),
      exposure_pressure_kpa: (315 + 0.5 * noise()) * (day < 120 ? 1 : 10),
    }));
    const residual = probe('A', 'saturation_residual');
    expect(ALARMS).not.toContain(residual.state);
    expect(dayOf(residual.notes.find((of) => of.code === 'measure_changed')!.since!)).toBe(120);
  });

  it('begins anew at a new controller, whose times are others', () => {
    const { drift, evacuation } = watched(
      (day, plain) => (day < 110 ? plain : { ...plain, evacuation_s: plain.evacuation_s! + 60 }),
      {
        service: [
          service('controller_replaced', `${dateOf(110)} 01:00`, `${dateOf(110)} 04:00`, { unit: 'A' }),
        ],
      },
    );
    expect(evacuation).toMatchObject({ state: 'steady', era: { opened_by: 'controller_replaced' } });
    expect(notesOf(evacuation)).toContain('controller_replaced');
    expect(evacuation.level_now).toBeGreaterThan(440);
    const old = drift.probes.find(
      (of) => of.unit === 'A' && of.probe === 'evacuation_time' && !of.era.current,
    )!;
    expect(old.state).toBe('steady');
    expect(drift.units.find((of) => of.unit === 'A')!.events.map((of) => of.kind)).toContain(
      'controller_replaced',
    );
  });

  it('says how many durations are missing, and takes 0 s for missing', () => {
    const { evacuation } = watched((day, plain) => (day % 2 === 0 ? plain : { ...plain, evacuation_s: 0 }));
    expect(evacuation.state).toBe('steady');
    const note = evacuation.notes.find((of) => of.code === 'missing_values')!;
    expect(note.number).toBeCloseTo(0.5, 2);
  });
});

describe('a saw-tooth', () => {
  const flushes = Array.from({ length: Math.floor(DAYS / 7) }, (_, week) =>
    cleaning('drain_flush', `${dateOf(7 * week)} 05:00`, { unit: 'A' }),
  );
  const climbing = (fallsBack: boolean) =>
    watched(
      (day, plain, noise) => ({
        ...plain,
        exhaust_s: Math.round((80 + (fallsBack ? 2 * (day % 7) : 0)) * (1 + 0.02 * noise())),
      }),
      { cleanings: flushes },
    );

  it('is named with the cleaning at which it falls back, and is no movement', () => {
    const exhaust = climbing(true).probe('A', 'exhaust_time');
    expect(exhaust.saw_tooth?.falls_back_at).toBe('drain_flush');
    expect(exhaust.saw_tooth!.cleanings).toBeGreaterThan(15);
    // Six days at 2 s a day.
    expect(exhaust.saw_tooth!.fall).toBeLessThan(-8);
    expect(exhaust.saw_tooth!.fall).toBeGreaterThan(-15);
    expect(exhaust.state).toBe('steady');
  });

  it('is not seen where cleaning changes nothing', () => {
    expect(climbing(false).probe('A', 'exhaust_time').saw_tooth).toBeNull();
  });
});

describe('leak tests and passes in doubt', () => {
  const weeks = Array.from({ length: Math.floor(DAYS / 7) }, (_, week) => 7 * week);

  it('shows a leak test soon after a cleaning and judges it not', () => {
    // Every fourth leak test comes two hours after a cleaning of the chamber and reads high.
    const { drift, probe } = watched((_, plain) => plain, {
      leak_tests: weeks.map((day, i) =>
        leak(`${dateOf(day)} 06:40`, i % 4 === 3 ? 0.12 : 0.04 + 0.001 * (i % 3), { unit: 'A' }),
      ),
      cleanings: weeks
        .filter((_, i) => i % 4 === 3)
        .map((day) => cleaning('chamber', `${dateOf(day)} 04:40`, { unit: 'A' })),
    });
    const rate = probe('A', 'leak_rate');
    expect(drift.leak_tests_after_cleaning).toHaveLength(6);
    for (const test of drift.leak_tests_after_cleaning)
      expect(test).toMatchObject({ unit: 'A', task: 'chamber', hours: 2, leak_rate_kpa_min: 0.12 });
    expect(rate.notes.find((of) => of.code === 'after_cleaning')!.number).toBe(6);
    expect(rate.series.left_out.map((of) => of.why)).toEqual(Array(6).fill('after_cleaning'));
    expect(rate.level_now).toBeLessThan(0.045);
    expect(ALARMS).not.toContain(rate.state);
  });

  it('shows a pass whose heat-up was outside the unit’s own limits, and no failed test', () => {
    const slow = new Set([100, 130, 140]);
    const tests = Array.from({ length: DAYS }, (_, day) =>
      test_(`${dateOf(day)} 07:26`, day === 130 ? 'fail' : 'pass', { unit: 'A' }),
    );
    const { drift } = watched((day, plain) => (slow.has(day) ? { ...plain, heat_up_s: 240 } : plain), {
      air_removal_tests: tests,
    });
    const seen = drift.heat_up_passes.filter((of) => of.heat_up_s === 240);
    expect(seen.map((of) => [of.unit, dayOf(of.date), of.slow])).toEqual([
      ['A', 100, true],
      ['A', 140, true],
    ]);
    for (const { low_s, high_s } of seen) {
      expect(low_s).toBeLessThan(150);
      expect(high_s).toBeGreaterThan(150);
      expect(high_s).toBeLessThan(240);
    }
  });
});
