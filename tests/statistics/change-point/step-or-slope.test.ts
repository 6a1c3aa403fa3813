import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLine, fitStep } from '../../../pipeline/statistics/change-point/least-absolute-fits.ts';
import { type StepOrSlope, stepOrSlope } from '../../../pipeline/statistics/change-point/step-or-slope.ts';
import { autoregressiveSeries, normalStream } from '../../../pipeline/statistics/run-length/normal-stream.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

/**
 * Share of each verdict in simulated series of 60 values: a shape (by position from 0 to 1) plus AR(1) noise
 * of standard deviation 1.
 */
function shares(shape: (x: number) => number, autocorrelation: number): Record<StepOrSlope['shape'], number> {
  const runs = 120;
  const newSeries = autoregressiveSeries(normalStream(17), autocorrelation);
  const counts = { level: 0, slope: 0, step: 0, moved: 0 };
  for (let run = 0; run < runs; run += 1) {
    const next = newSeries();
    const times = Array.from({ length: 60 }, (_, i) => i);
    const values = times.map((t) => shape(t / 60) + next());
    counts[computedOrFail(stepOrSlope({ times, values })).shape] += 1 / runs;
  }
  return counts;
}

// No published operating characteristics exist for this combination; the rates are those stated in its
// docstring, with room for 120 runs (three standard errors are 14 points at 50 %, 3 points at 1 %).
describe('level, slope or step: operating characteristics', () => {
  it('calls movement in at most 4 % of level series', () => {
    for (const autocorrelation of [0, 0.3, 0.6])
      expect(shares(() => 0, autocorrelation).level).toBeGreaterThan(0.96);
  });

  it('names a slope of 4 standard deviations a slope, seldom a step', () => {
    const quiet = shares((x) => 4 * x, 0);
    expect(quiet.slope).toBeGreaterThan(0.88);
    expect(quiet.step).toBeLessThan(0.07);
    const correlated = shares((x) => 4 * x, 0.3);
    expect(correlated.slope).toBeGreaterThan(0.66);
    expect(correlated.step).toBeLessThan(0.1);
  });

  it('names a step of 3 standard deviations a step, seldom a slope, and finds its place', () => {
    const quiet = shares((x) => (x < 0.6 ? 0 : 3), 0);
    expect(quiet.step).toBeGreaterThan(0.95);
    expect(quiet.slope).toBeLessThan(0.03);
    const correlated = shares((x) => (x < 0.6 ? 0 : 3), 0.3);
    expect(correlated.step).toBeGreaterThan(0.82);
    expect(correlated.slope).toBeLessThan(0.06);
  });

  it('is not moved by gross outliers', () => {
    const spikes = (x: number) => (Math.round(x * 60) % 19 === 7 ? 9 : 0);
    expect(shares(spikes, 0).level).toBeGreaterThan(0.95);
  });
});

describe('least absolute fits', () => {
  // reference/change-point.R, R 4.2.2: best of all lines through two of the points.
  it('has the cost of the best line through two points', () => {
    expect(fitLine([0, 1, 2, 4, 7], [1, 3, 2, 6, 20]).cost).toBeCloseTo(61 / 6, 9);
  });

  it('is never beaten by a line through two points, nor by another step', () => {
    const noise = fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 8, maxLength: 14 });
    holds(
      fc.property(noise, (values) => {
        const times = values.map((_, i) => i * i + i);
        const line = fitLine(times, values);
        for (let i = 1; i < values.length; i += 1) {
          for (let j = 0; j < i; j += 1) {
            const slope = (values[i]! - values[j]!) / (times[i]! - times[j]!);
            const cost = values.reduce(
              (s, v, k) => s + Math.abs(v - values[j]! - slope * (times[k]! - times[j]!)),
              0,
            );
            expect(line.cost).toBeLessThanOrEqual(cost + 1e-9);
          }
        }
        const step = fitStep(values, 2);
        for (let last = 1; last < values.length - 2; last += 1) {
          const side = (part: number[]) =>
            Math.min(...part.map((c) => part.reduce((s, v) => s + Math.abs(v - c), 0)));
          expect(step.cost).toBeLessThanOrEqual(
            side(values.slice(0, last + 1)) + side(values.slice(last + 1)) + 1e-9,
          );
        }
      }),
    );
  });
});

describe('level, slope or step at the edges', () => {
  const times = Array.from({ length: 30 }, (_, i) => i);

  it('dates a step and gives its levels', () => {
    const values = times.map((t) => (t < 12 ? 1 : 4) + 0.1 * Math.sin(t * t));
    const found = computedOrFail(stepOrSlope({ times: times.map((t) => 10 * t), values }));
    expect(found.shape).toBe('step');
    expect(found.step).toMatchObject({ lastBefore: 11, firstTimeAfter: 120 });
    expect(found.step.after - found.step.before).toBeCloseTo(3, 1);
  });

  it('gives the slope per unit of time', () => {
    const found = computedOrFail(
      stepOrSlope({
        times: times.map((t) => 10 * t),
        values: times.map((t) => 2 * t + 0.1 * Math.sin(t * t)),
      }),
    );
    expect(found.shape).toBe('slope');
    expect(found.slope.perTime).toBeCloseTo(0.2, 2);
  });

  it('copes with data without noise', () => {
    const exact = computedOrFail(stepOrSlope({ times, values: times.map((t) => (t < 12 ? 1 : 4)) }));
    expect(exact.shape).toBe('step');
    expect(numbersIn(exact).every(Number.isFinite)).toBe(true);
  });

  it('does not depend on the unit or the direction of the values', () => {
    const values = times.map((t) => 0.1 * t + Math.sin(t * t));
    const shape = (v: number[]) => computedOrFail(stepOrSlope({ times, values: v }));
    const original = shape(values);
    const turned = shape(values.map((v) => -1000 * v + 5));
    expect(turned.shape).toBe(original.shape);
    expect(turned.excess.level).toBeCloseTo(original.excess.level, 6);
  });

  it('states too few values and a constant series, and refuses what cannot be', () => {
    expect(reasonOrFail(stepOrSlope({ times: [1, 2, 3], values: [1, 2, 3] }))).toMatch(/too few/);
    expect(reasonOrFail(stepOrSlope({ times, values: times.map(() => 1) }))).toMatch(/equal/);
    expect(() => stepOrSlope({ times: times.toReversed(), values: times })).toThrow(RangeError);
    expect(() => stepOrSlope({ times, values: times, fewest: 16 })).toThrow(RangeError);
    expect(() => stepOrSlope({ times, values: times, autocorrelation: 1 })).toThrow(RangeError);
  });
});
