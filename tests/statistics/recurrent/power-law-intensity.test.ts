import { describe, expect, it } from 'vitest';
import { powerLawIntensity } from '../../../pipeline/statistics/recurrent/power-law-intensity.ts';
import { powerLawRefit } from '../../../pipeline/statistics/recurrent/power-law-refit.ts';
import type { RecurrentCell } from '../../../pipeline/statistics/recurrent/recurrent-cells.ts';
import { weibull } from '../../../pipeline/statistics/survival/weibull.ts';
import { expectNear, value } from '../computable.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { readReference } from '../reference/read-reference.ts';

const cell = (entry: number, exit: number, events = 0, weight = 1): RecurrentCell => ({
  entry,
  exit,
  weight,
  events,
});
/** An event known to the point: a cell so short that where it fell in it does not matter. */
const eventAt = (from: number, time: number): RecurrentCell[] => [
  cell(from, time * (1 - 1e-8)),
  cell(time * (1 - 1e-8), time, 1),
];

describe('power-law intensity', () => {
  it('with first failures alone is the Weibull fit of NIST/SEMATECH e-Handbook section 8.4.1', () => {
    // Printed: shape 1.7207, scale 606.5280. Further digits, profile interval and likelihood ratio: R 4.2.2, survival 3.5-3 (survreg).
    const failures = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386];
    const cells = [...failures.flatMap((time) => eventAt(0, time)), cell(0, 500, 0, 10)];
    const fit = value(powerLawIntensity([cells]));
    expectNear(fit.shape, 1.720797261, 1e-6);
    expectNear(fit.scale, 606.527558, 1e-6);
    expectNear(fit.interval.low, 0.9056453588, 1e-6);
    expectNear(fit.interval.high, 2.885737866, 1e-6);
    expectNear(fit.testOfShape1.likelihoodRatio, 2.842144515, 1e-5);
    expectNear(fit.testOfShape1.pValue, 0.09182159224, 1e-5);
    expectNear(fit.logShapeError!, 0.2918127631, 1e-4);
  });

  it('with left truncation at each event is the power-law process of NIST/SEMATECH e-Handbook section 8.4.5.2', () => {
    // Failures of a system under test for 1500 hours; the handbook's formula of the maximum, n / sum of log(T / t), with n in the place of its n - 1.
    const times = [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478];
    const cells = times.flatMap((time, index) => eventAt(times[index - 1] ?? 0, time));
    cells.push(cell(1478, 1500));
    const expected = 10 / times.reduce((sum, time) => sum + Math.log(1500 / time), 0);
    const fit = value(powerLawIntensity([cells]));
    expectNear(fit.shape, expected, 1e-6);
    // Printed there, from memory: 1 - 0.5165 = 0.4835 with n - 1.
    expect(fit.shape * 0.9).toBeCloseTo(0.4835, 4);
    expectNear(fit.rate * 1500 ** fit.shape, 10, 1e-9, 'expected events');
  });

  it('in one cluster agrees with the Weibull distribution of late entries, also where events recur', () => {
    const times = [3, 9, 14, 30, 31, 55, 70];
    const spells = [times, [8, 40, 66], [12]].map((events, spell) => ({ events, end: [80, 75, 20][spell]! }));
    const rows = spells.flatMap(({ events, end }) => [
      ...events.map((time, index) => ({ entry: events[index - 1] ?? 0, exit: time, event: 1 as const })),
      { entry: events.at(-1)!, exit: end, event: 0 as const },
    ]);
    const direct = value(
      weibull({
        durations: rows.map((row) => row.exit),
        observed: rows.map((row) => row.event),
        entry: rows.map((row) => row.entry),
      }),
    );
    const cells = rows.flatMap(({ entry, exit, event }) =>
      event === 1 ? eventAt(entry, exit) : [cell(entry, exit)],
    );
    const fit = value(powerLawIntensity([cells]));
    expectNear(fit.shape, direct.shape, 1e-6);
    expectNear(fit.scale, direct.scales[0]!.scale!, 1e-6);
    expectNear(fit.interval.low, direct.shapeInterval.low, 1e-5);
    expectNear(fit.interval.high, direct.shapeInterval.high, 1e-5);
    expectNear(fit.testOfShape1.likelihoodRatio, direct.shapeOne.statistic, 1e-5);
  });

  it('with frailties agrees with the likelihood written out and integrated in R 4.2.2', () => {
    const [reference] = readReference<{
      clusters: RecurrentCell[][];
      shape: number;
      rate: number;
      spread: number;
      low: number;
      high: number;
      likelihood_ratio: number;
    }>('power-law-intensity');
    const fit = value(powerLawIntensity(reference!.clusters));
    // The optimiser there stops at a relative change of the likelihood of 1e-14, which leaves the place of the maximum known to about 1e-5.
    expectNear(fit.shape, reference!.shape, 2e-5);
    expectNear(fit.rate, reference!.rate, 2e-5);
    expectNear(fit.spread, reference!.spread, 5e-5);
    expectNear(fit.interval.low, reference!.low, 2e-5);
    expectNear(fit.interval.high, reference!.high, 2e-5);
    expectNear(fit.testOfShape1.likelihoodRatio, reference!.likelihood_ratio, 1e-5);

    const refit = powerLawRefit(reference!.clusters, fit.spread);
    const again = refit(reference!.clusters.map((_, index) => [index]))!;
    expectNear(again.shape, fit.shape, 2e-3, 'shape from the grid');
    expectNear(again.rate * 15 ** again.shape, fit.rate * 15 ** fit.shape, 2e-3, 'expectation from the grid');
  });

  it('does not take units that always fail more for a falling intensity', () => {
    // Both units fail at a constant rate; the bad one is cleaned early, the good one late. Pooled without frailty the rate seems to fall with the clock.
    const steady = (rate: number, length: number): RecurrentCell[] =>
      Array.from({ length }, (_, k) => cell(k, k + 1, Math.round(rate * 100), 100));
    const apart = value(powerLawIntensity([steady(0.3, 5), steady(0.02, 40)]));
    const pooled = value(powerLawIntensity([[...steady(0.3, 5), ...steady(0.02, 40)]]));
    expect(pooled.shape).toBeLessThan(0.6);
    expect(apart.shape).toBeCloseTo(1, 1);
    expect(apart.testOfShape1.pValue).toBeGreaterThan(0.5);
  });

  it('does not change with the order of cells or the unit of the clock', () => {
    const cells = [cell(0, 1, 1, 30), cell(1, 2, 2, 28), cell(2, 3, 2, 25), cell(3, 4, 5, 20)];
    const first = value(powerLawIntensity([cells]));
    const turned = value(powerLawIntensity([cells.toReversed()]));
    const hours = value(
      powerLawIntensity([cells.map((of) => ({ ...of, entry: of.entry * 24, exit: of.exit * 24 }))]),
    );
    expectNear(turned.shape, first.shape, 1e-7);
    expectNear(hours.shape, first.shape, 1e-7);
    expectNear(hours.scale, first.scale * 24, 1e-6);
    expectNear(hours.testOfShape1.likelihoodRatio, first.testOfShape1.likelihoodRatio, 1e-6);
  });

  it('p at a shape that bounds the interval is one minus the level', () => {
    const cells = [cell(0, 1, 1, 30), cell(1, 2, 2, 28), cell(2, 3, 2, 25), cell(3, 4, 5, 20)];
    const { pValue } = value(powerLawIntensity([cells])).testOfShape1;
    const { interval } = value(powerLawIntensity([cells], { level: 1 - pValue }));
    expectNear(interval.low, 1, 1e-5);
  });

  it('states what it can’t compute', () => {
    expect(reasonOrFail(powerLawIntensity([[cell(0, 1, 1)]]))).toMatch(/fewer than two events/);
    expect(reasonOrFail(powerLawIntensity([]))).toMatch(/fewer than two events/);
    expect(reasonOrFail(powerLawIntensity([[cell(3, 4, 5, 40)], [cell(3, 4, 2, 10)]]))).toMatch(
      /same stretch of the clock/,
    );
    expect(reasonOrFail(powerLawIntensity([[cell(0, 1, 0, 9), cell(1, 2, 4, 9)]]))).toMatch(/no maximum/);
    expect(() => powerLawIntensity([[cell(2, 2, 1)]])).toThrow(RangeError);
    expect(() => powerLawIntensity([[cell(0, 1, 1.5)]])).toThrow(RangeError);
    expect(powerLawRefit([[cell(0, 1)]], 0)([[0]])).toBeNull();
  });

  it('holds no NaN, and a cluster without observation stands at the mean', () => {
    const fit = computedOrFail(powerLawIntensity([[cell(0, 1, 1, 9), cell(1, 2, 3, 9)], []]));
    expect(numbersIn(fit).every((number) => !Number.isNaN(number))).toBe(true);
    expect(fit.clusters[1]).toEqual({ events: 0, expected: 0, frailty: 1 });
  });
});
