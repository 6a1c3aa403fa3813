import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weibull } from '../../../pipeline/statistics/survival/weibull.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

/** Relative difference. */
const off = (found: number, expected: number) => Math.abs(found / expected - 1);

describe('Weibull, right censored', () => {
  // NIST/SEMATECH e-Handbook 8.4.1: 20 units, test stopped at 500 h; shape 1.7207 (cut, not rounded), scale
  // 606.5280 (print, 1e-4). More digits by reference/weibull.R, R 4.2.2, survival 3.5-3: relative 1e-6.
  const durations = [54, 187, 216, 240, 244, 335, 361, 373, 375, 386, ...(Array(10).fill(500) as number[])];
  const observed = durations.map((d): 0 | 1 => (d < 500 ? 1 : 0));
  const fit = computedOrFail(weibull({ durations, observed }));
  const scale = fit.scales[0]!;

  it('has the published shape and scale', () => {
    expect(Math.trunc(fit.shape * 1e4) / 1e4).toBe(1.7207);
    expect(off(scale.scale!, 606.528)).toBeLessThan(1e-4);
    expect(off(fit.shape, 1.720797261)).toBeLessThan(1e-9);
    expect(off(scale.scale!, 606.527558004)).toBeLessThan(1e-9);
    expect(fit.logLikelihood).toBeCloseTo(-75.134618164, 8);
  });

  it('has the standard errors and profile-likelihood intervals', () => {
    expect(off(fit.logShapeError, 0.2918127631)).toBeLessThan(1e-8);
    expect(off(scale.logScaleError!, 0.205943909)).toBeLessThan(1e-8);
    expect(off(fit.shapeInterval.low, 0.9056453588)).toBeLessThan(1e-8);
    expect(off(fit.shapeInterval.high, 2.8857378657)).toBeLessThan(1e-8);
    expect(off(scale.interval.low, 437.5567454)).toBeLessThan(1e-8);
    expect(off(scale.interval.high, 1118.8776246)).toBeLessThan(1e-8);
    // Wald on the log scale, for who wants it: 0.971266102 to 3.048745557.
    expect(off(fit.shape * Math.exp(-1.959963985 * fit.logShapeError), 0.971266102)).toBeLessThan(1e-8);
  });

  it('has the test of a constant hazard', () => {
    expect(fit.shapeOne.logLikelihood).toBeCloseTo(-76.555690422, 8);
    expect(fit.shapeOne.statistic).toBeCloseTo(2.842144515, 8);
    expect(off(fit.shapeOne.pValue, 0.09182159224)).toBeLessThan(1e-8);
  });

  it('has an interval at whose end the likelihood-ratio p-value is 1 - level', () => {
    // At the level where the interval of the shape just reaches 1, 1 - level is the p-value of the test of
    // shape 1.
    const level = 1 - fit.shapeOne.pValue;
    expect(computedOrFail(weibull({ durations, observed, level })).shapeInterval.low).toBeCloseTo(1, 7);
  });

  it('takes a weight for so many equal subjects', () => {
    const weighted = computedOrFail(
      weibull({
        durations: [...durations.slice(0, 10), 500],
        observed: [...observed.slice(0, 10), 0],
        weights: [...Array(10).fill(1), 10],
      }),
    );
    expect(off(weighted.shape, fit.shape)).toBeLessThan(1e-10);
    expect(off(weighted.shapeInterval.high, fit.shapeInterval.high)).toBeLessThan(1e-8);
  });
});

describe('Weibull, left truncated', () => {
  // No published example was found; reference/weibull.R, R 4.2.2, maximises the likelihood written out:
  // relative 1e-6 (its optimiser's limit).
  const data = {
    durations: [40, 75, 88, 120, 150, 150, 61, 93, 110, 150, 130, 57],
    observed: [1, 1, 1, 1, 0, 0, 1, 1, 0, 0, 1, 1] as (0 | 1)[],
    entry: [0, 30, 50, 0, 90, 100, 20, 60, 45, 70, 80, 0],
  };

  it('agrees with the likelihood maximised in R', () => {
    const fit = computedOrFail(weibull(data));
    expect(off(fit.shape, 1.527890303)).toBeLessThan(1e-6);
    expect(off(fit.scales[0]!.scale!, 104.53067671)).toBeLessThan(1e-6);
    expect(fit.logLikelihood).toBeCloseTo(-43.05615249, 8);
    expect(off(fit.logShapeError, 0.4020160468)).toBeLessThan(1e-5);
    expect(off(fit.shapeInterval.low, 0.6069479429)).toBeLessThan(1e-6);
    expect(off(fit.shapeInterval.high, 3.0079958524)).toBeLessThan(1e-6);
    expect(off(fit.scales[0]!.interval.low, 39.15379232)).toBeLessThan(1e-6);
    expect(off(fit.scales[0]!.interval.high, 176.54585545)).toBeLessThan(1e-6);
  });

  it('differs from the fit that forgets the entries', () => {
    const { entry: _, ...forgetful } = data;
    expect(computedOrFail(weibull(forgetful)).shape).toBeGreaterThan(1.8);
  });
});

describe('Weibull with strata', () => {
  const data = {
    durations: [20, 35, 50, 64, 80, 80, 90, 120, 150, 170, 200, 200],
    observed: [1, 1, 1, 1, 0, 0, 1, 1, 1, 0, 1, 0] as (0 | 1)[],
    strata: [...Array(6).fill('a'), ...Array(6).fill('b')] as string[],
  };

  // reference/weibull.R, R 4.2.2, survival 3.5-3: survreg with a factor, and profiles of the likelihood
  // written out.
  it('shares the shape and scales each stratum', () => {
    const fit = computedOrFail(weibull(data));
    expect(off(fit.shape, 2.392205595)).toBeLessThan(1e-8);
    expect(fit.scales.map((s) => s.stratum)).toEqual(['a', 'b']);
    expect(off(fit.scales[0]!.scale!, 71.777647957)).toBeLessThan(1e-8);
    expect(off(fit.scales[1]!.scale!, 191.893990613)).toBeLessThan(1e-8);
    expect(fit.logLikelihood).toBeCloseTo(-44.579264616, 8);
    expect(off(fit.shapeInterval.low, 1.197103126)).toBeLessThan(1e-7);
    expect(off(fit.shapeInterval.high, 4.115995157)).toBeLessThan(1e-7);
    expect(off(fit.scales[0]!.interval.high, 129.98990318)).toBeLessThan(1e-6);
    expect(off(fit.scales[1]!.interval.low, 130.1728537)).toBeLessThan(1e-6);
  });

  it('bounds the scale of a stratum without events from below only', () => {
    const quiet = computedOrFail(weibull({ ...data, observed: [1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0] }));
    const b = quiet.scales[1]!;
    expect(b).toMatchObject({
      scale: null,
      logScaleError: null,
      events: 0,
      interval: { high: Number.POSITIVE_INFINITY },
    });
    expect(b.interval.low).toBeGreaterThan(100);
    expect(numbersIn(quiet).some(Number.isNaN)).toBe(false);
  });
});

describe('Weibull at the edges', () => {
  it('runs the example of the docstring', () => {
    const fit = computedOrFail(
      weibull({ durations: [54, 187, 216, 240, 500, 500], observed: [1, 1, 1, 1, 0, 0] }),
    );
    expect(fit.shape).toBeCloseTo(1.175, 3);
    expect(fit.scales[0]!.scale).toBeCloseTo(411.7, 1);
  });

  it.each([
    { durations: [5, 6], observed: [0, 0] as (0 | 1)[], why: /0 events/ },
    { durations: [5, 6], observed: [1, 0] as (0 | 1)[], why: /1 events/ },
    { durations: [7, 7, 7], observed: [1, 1, 1] as (0 | 1)[], why: /without bound/ },
    { durations: [3, 7, 7], observed: [0, 1, 1] as (0 | 1)[], why: /without bound/ },
  ])('states why there is no fit of $durations', ({ why, ...data }) => {
    expect(reasonOrFail(weibull(data))).toMatch(why);
  });

  it('refuses impossible input', () => {
    expect(() => weibull({ durations: [0, 1], observed: [1, 1] })).toThrow(RangeError);
    expect(() => weibull({ durations: [1, 2], observed: [1, 1], weights: [1] })).toThrow(RangeError);
    expect(() => weibull({ durations: [1, 2], observed: [1, 1], weights: [1, -1] })).toThrow(RangeError);
  });

  it('keeps its shape when the unit of time changes, and holds its estimates inside their intervals', () => {
    const subject = fc.tuple(
      fc.integer({ min: 1, max: 400 }),
      fc.constantFrom<0 | 1>(0, 1, 1),
      fc.integer({ min: 0, max: 3 }),
    );
    holds(
      fc.property(fc.array(subject, { minLength: 4, maxLength: 25 }), (subjects) => {
        const data = (unit: number) => ({
          durations: subjects.map((s) => s[0] * unit),
          observed: subjects.map((s) => s[1]),
          entry: subjects.map((s) => (s[0] * unit * s[2]) / 4),
        });
        const days = weibull(data(1));
        const hours = weibull(data(24));
        expect(hours.computable).toBe(days.computable);
        expect(numbersIn(days).some(Number.isNaN)).toBe(false);
        if (!days.computable || !hours.computable) return;
        expect(off(hours.shape, days.shape)).toBeLessThan(1e-6);
        expect(off(hours.scales[0]!.scale!, 24 * days.scales[0]!.scale!)).toBeLessThan(1e-6);
        expect(days.shapeInterval.low).toBeLessThanOrEqual(days.shape);
        expect(days.shapeInterval.high).toBeGreaterThanOrEqual(days.shape);
        expect(days.scales[0]!.interval.low).toBeLessThanOrEqual(days.scales[0]!.scale!);
        expect(days.scales[0]!.interval.high).toBeGreaterThanOrEqual(days.scales[0]!.scale!);
        expect(days.logLikelihood).toBeGreaterThanOrEqual(days.shapeOne.logLikelihood - 1e-9);
      }),
      100,
    );
  });
});
