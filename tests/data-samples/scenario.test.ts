import { expect, test } from 'vitest';
import { simulateFleet } from '../../data-samples/generator/fleet.ts';
import { DRIFT, EFFECT } from '../../data-samples/generator/unit-stories.ts';
import { readTruth } from './truth-file.ts';

/** What was built in is there in what happened: checked on the generator's histories, with bounds that chance alone would seldom pass. */

const fleet = simulateFleet();
const { units } = readTruth();
const ids = [...fleet.keys()];

test.each(ids)('%s: test and other empty cycles are 30 to 39 % of all', (unit) => {
  const { cycles, production_cycles, purges } = units[unit]!;
  const share = 1 - production_cycles / (cycles - purges);
  expect(share).toBeGreaterThan(0.3);
  expect(share).toBeLessThan(0.39);
});

test.each(ids)('%s: production cycles abort in 1 to 2.2 % of cases', (unit) => {
  const { chamber_overdue: late, chamber_in_time: good, production_cycles } = units[unit]!;
  const aborts =
    late.cleanliness_aborts + late.unrelated_aborts + good.cleanliness_aborts + good.unrelated_aborts;
  expect(aborts / production_cycles).toBeGreaterThan(0.009);
  expect(aborts / production_cycles).toBeLessThan(0.022);
});

test.each(ids.filter((unit) => unit !== 'T2'))(
  '%s: the chamber is overdue on 15 to 40 %% of days',
  (unit) => {
    const { chamber_overdue: late, days_of_use } = units[unit]!;
    expect(late.days_of_use / days_of_use).toBeGreaterThan(0.15);
    expect(late.days_of_use / days_of_use).toBeLessThan(0.4);
  },
);

test('Q2 fails several times as often while its chamber is overdue', () => {
  const { chamber_overdue: late, chamber_in_time: good } = units[EFFECT.unit]!;
  const odds = (side: typeof late) => side.failed_days / (side.days_of_use - side.failed_days);
  expect(odds(late) / odds(good)).toBeGreaterThan(EFFECT.failureOdds / 2);
  expect(odds(late) / odds(good)).toBeLessThan(EFFECT.failureOdds * 2);
});

test('no two cycles of a unit overlap, and numbers go up by one', () => {
  for (const { cycles } of fleet.values()) {
    for (const [index, cycle] of cycles.entries()) {
      const before = cycles[index - 1];
      if (!before) continue;
      expect(cycle.start).toBeGreaterThanOrEqual(before.end);
      expect([before.number + 1, 1]).toContain(cycle.number);
    }
  }
});

test('a supported chamber cleaning starts four hours after the last cycle at the earliest', () => {
  for (const { cycles, cleanings } of fleet.values()) {
    for (const work of cleanings.filter(({ support }) => support === 'supported')) {
      const before = cycles.findLast((cycle) => cycle.end <= work.start!);
      const during = cycles.filter((cycle) => cycle.start < work.time && cycle.end > work.start!);
      if (before) expect(work.start! - before.end).toBeGreaterThanOrEqual(4 * 3_600_000);
      expect(during).toEqual([]);
    }
  }
});

test('about half of the chamber cleaning records of Q5 are contradicted', () => {
  const { supported, running, hot } = units.Q5!.chamber_cleanings;
  expect(running).toBeGreaterThanOrEqual(3);
  expect(hot).toBeGreaterThanOrEqual(3);
  expect((running + hot) / (supported + running + hot)).toBeGreaterThan(0.35);
  expect((running + hot) / (supported + running + hot)).toBeLessThan(0.65);
});

test('Q4 ends with evacuation about a quarter longer, and no failed day', () => {
  const { cycles, days } = fleet.get(DRIFT.unit)!;
  const mean = (from: number, to: number) => {
    const of = cycles.filter(
      ({ kind, start }) => kind === 'air_removal_test' && start >= from * 864e5 && start < to * 864e5,
    );
    return of.reduce((sum, { evacuation }) => sum + evacuation!, 0) / of.length;
  };
  const growth = mean(DRIFT.until - 6, DRIFT.until + 1) / mean(DRIFT.from - 28, DRIFT.from);
  expect(growth).toBeGreaterThan(1.18);
  expect(growth).toBeLessThan(1.32);
  expect(days.filter(({ day, result }) => day >= DRIFT.from && result === 'fail')).toEqual([]);
});
