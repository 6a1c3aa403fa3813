import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kaplanMeier } from '../../../pipeline/statistics/survival/kaplan-meier.ts';
import { nelsonAalen } from '../../../pipeline/statistics/survival/nelson-aalen.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';
import { lateEntries, mercaptopurine, placebo } from './remission.ts';

// Klein and Moeschberger, Survival Analysis, Tables 4.1 and 4.2 (from memory, as printed): survival, its
// standard error; then log-log limits, hazard and its standard error by reference/survival.R, R 4.2.2,
// survival 3.5-3.
const rows = [
  [6, 21, 3, 0.857, 0.0764, 0.6197179553, 0.9515517476, 0.1428571429, 0.08247860988],
  [7, 17, 1, 0.807, 0.0869, 0.5631465646, 0.9228090192, 0.2016806723, 0.10130611384],
  [10, 15, 1, 0.753, 0.0963, 0.5031995108, 0.8893618352, 0.2683473389, 0.12127395911],
  [13, 12, 1, 0.69, 0.1068, 0.4316102225, 0.8490659633, 0.3516806723, 0.14714556599],
  [16, 11, 1, 0.627, 0.1141, 0.367510856, 0.8049121895, 0.4425897632, 0.17296323424],
  [22, 7, 1, 0.538, 0.1282, 0.2677789368, 0.7467907176, 0.585446906, 0.22433110276],
  [23, 6, 1, 0.448, 0.1346, 0.188052006, 0.6801426285, 0.7521135727, 0.2794677467],
] as const;

describe('Kaplan-Meier and Nelson-Aalen on remission times', () => {
  const curve = computedOrFail(kaplanMeier(mercaptopurine));
  const hazard = computedOrFail(nelsonAalen(mercaptopurine));

  it.each(rows.map((row, i) => [i, ...row] as const))(
    'step %i at week %i',
    (i, time, atRisk, events, survival, standardError, low, high, cumulative, hazardError) => {
      const step = curve.steps[i]!;
      expect(step).toMatchObject({ time, atRisk, events });
      expect(Math.abs(step.survival - survival)).toBeLessThan(0.00051);
      expect(Math.abs(step.standardError! - standardError)).toBeLessThan(0.000051);
      expect(step.interval!.low).toBeCloseTo(low, 9);
      expect(step.interval!.high).toBeCloseTo(high, 9);
      expect(hazard.steps[i]!.cumulativeHazard).toBeCloseTo(cumulative, 9);
      expect(hazard.steps[i]!.standardError).toBeCloseTo(hazardError, 9);
    },
  );

  it('has the log interval of R where it is asked for', () => {
    // reference values by R 4.2.2, survival 3.5-3, conf.type = "log"; upper ends cut at 1.
    const log = computedOrFail(kaplanMeier({ ...mercaptopurine, intervalBy: 'log' }));
    const bounds = [
      [0.719817, 1],
      [0.653124, 0.996444],
      [0.585919, 0.967575],
      [0.509613, 0.934769],
      [0.439394, 0.895995],
      [0.337037, 0.858201],
      [0.248788, 0.807372],
    ];
    for (const [i, [low, high]] of bounds.entries()) {
      expect(log.steps[i]!.interval!.low).toBeCloseTo(low!, 6);
      expect(log.steps[i]!.interval!.high).toBeCloseTo(high!, 6);
    }
  });

  it('has the medians and their intervals', () => {
    expect(curve).toMatchObject({ median: 23, medianInterval: { low: 13, high: null }, events: 9, n: 21 });
    const untreated = computedOrFail(kaplanMeier(placebo));
    expect(untreated).toMatchObject({ median: 8, medianInterval: { low: 4, high: 11 } });
    const at = (time: number) => untreated.steps.find((s) => s.time === time)!;
    expect(at(1).survival).toBeCloseTo(0.9047619, 7);
    expect(at(8).survival).toBeCloseTo(0.3809524, 7);
    expect(at(23)).toMatchObject({ survival: 0, standardError: null, interval: null });
  });
});

describe('Kaplan-Meier with late entries', () => {
  // reference/survival.R, R 4.2.2, survival 3.5-3.
  it('agrees with R at each step', () => {
    const curve = computedOrFail(kaplanMeier(lateEntries));
    expect(curve.steps.map((s) => [s.time, s.atRisk, s.events])).toEqual([
      [4, 11, 1],
      [5, 11, 2],
      [6, 10, 1],
      [7, 10, 1],
      [8, 10, 2],
      [9, 7, 2],
      [12, 4, 3],
    ]);
    const last = curve.steps.at(-1)!;
    expect(last.survival).toBeCloseTo(0.08606847698, 10);
    expect(last.standardError).toBeCloseTo(0.08090702402, 10);
    expect(last.interval!.low).toBeCloseTo(0.005525033717, 10);
    expect(last.interval!.high).toBeCloseTo(0.3143868752, 9);
    expect(curve).toMatchObject({ median: 8, medianInterval: { low: 5, high: 12 } });
  });

  it('says when a small early risk set empties', () => {
    const curve = computedOrFail(
      kaplanMeier({ durations: [2, 9, 8], observed: [1, 1, 1], entry: [0, 5, 5] }),
    );
    expect(curve.emptied).toBe(true);
    expect(curve.steps.map((s) => s.survival)).toEqual([0, 0, 0]);
  });
});

describe('Kaplan-Meier and Nelson-Aalen at the edges', () => {
  it('runs the examples of the docstrings', () => {
    const data = { durations: [6, 6, 6, 6, 7], observed: [1, 1, 1, 0, 1] as (0 | 1)[] };
    const curve = computedOrFail(kaplanMeier(data));
    expect(curve.steps.map((s) => s.survival)).toEqual([expect.closeTo(0.4, 12), 0]);
    expect(curve.median).toBe(6);
    const hazards = computedOrFail(nelsonAalen(data)).steps.map((s) => s.cumulativeHazard);
    expect(hazards).toEqual([expect.closeTo(0.6, 12), expect.closeTo(1.6, 12)]);
  });

  it('takes the midpoint where survival is a half exactly, as R does', () => {
    const even = computedOrFail(kaplanMeier({ durations: [1, 2, 3, 4], observed: [1, 1, 1, 1] }));
    expect(even).toMatchObject({ median: 2.5, medianInterval: { low: 1, high: null } });
  });

  it('states all censored and no subjects', () => {
    expect(reasonOrFail(kaplanMeier({ durations: [3, 4], observed: [0, 0] }))).toMatch(/No event/);
    expect(reasonOrFail(nelsonAalen({ durations: [], observed: [] }))).toMatch(/No event/);
  });

  it('copes with one event, and with an event at time 0', () => {
    expect(computedOrFail(kaplanMeier({ durations: [3, 4], observed: [1, 0] })).steps[0]!.survival).toBe(0.5);
    const atZero = computedOrFail(kaplanMeier({ durations: [0, 4], observed: [1, 0], entry: [0, 0] }));
    expect(atZero.steps[0]).toMatchObject({ time: 0, atRisk: 2, survival: 0.5 });
  });

  it('refuses swapped or impossible input', () => {
    expect(() => kaplanMeier({ durations: [1, 0], observed: [3, 4] as never })).toThrow(RangeError);
    expect(() => kaplanMeier({ durations: [1], observed: [1, 0] })).toThrow(RangeError);
    expect(() => kaplanMeier({ durations: [-1], observed: [1] })).toThrow(RangeError);
    expect(() => kaplanMeier({ durations: [3], observed: [1], entry: [3] })).toThrow(RangeError);
    expect(() => nelsonAalen({ durations: [3], observed: [1], level: 0 })).toThrow(RangeError);
  });

  const subject = fc.record({
    from: fc.integer({ min: 0, max: 8 }),
    watched: fc.integer({ min: 1, max: 12 }),
    event: fc.constantFrom<0 | 1>(0, 1),
  });

  it('falls from 1 within its limits, ignores the order, and is never NaN', () => {
    holds(
      fc.property(fc.array(subject, { minLength: 1, maxLength: 40 }), (subjects) => {
        const dataOf = (list: typeof subjects) => ({
          durations: list.map((s) => s.from + s.watched),
          observed: list.map((s) => s.event),
          entry: list.map((s) => s.from),
        });
        const curve = kaplanMeier(dataOf(subjects));
        const hazard = nelsonAalen(dataOf(subjects));
        expect(kaplanMeier(dataOf(subjects.toReversed()))).toEqual(curve);
        expect([...numbersIn(curve), ...numbersIn(hazard)].some(Number.isNaN)).toBe(false);
        if (!curve.computable || !hazard.computable) return;
        let before = 1;
        for (const [i, step] of curve.steps.entries()) {
          expect(step.survival).toBeLessThanOrEqual(before);
          before = step.survival;
          if (step.interval !== null) {
            expect(step.interval.low).toBeLessThanOrEqual(step.survival);
            expect(step.interval.high).toBeGreaterThanOrEqual(step.survival);
          }
          // exp(-H) is never under S, since 1 - x <= exp(-x).
          expect(Math.exp(-hazard.steps[i]!.cumulativeHazard)).toBeGreaterThanOrEqual(step.survival - 1e-12);
        }
      }),
    );
  });
});
