import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pChart } from '../../../pipeline/statistics/control-charts/p-chart.ts';
import { computedOrFail, numbersIn, reasonOrFail } from '../computed-or-fail.ts';
import { holds } from '../properties.ts';

// Montgomery, Introduction to Statistical Quality Control, Example 7.1: nonconforming orange-juice cans, 30
// samples of 50 (the same data are `orangejuice` in R package qcc). Published values are quoted from memory,
// to four decimals.
const cans = [
  12, 15, 8, 10, 4, 7, 16, 9, 14, 10, 5, 6, 17, 12, 22, 8, 10, 5, 13, 11, 20, 18, 24, 15, 9, 12, 7, 13, 9, 6,
];
const fifty = cans.map(() => 50);

describe('p chart of the orange-juice cans', () => {
  it('has the published centre and limits', () => {
    const chart = computedOrFail(pChart({ counts: cans, denominators: fifty }));
    const point = chart.points[0]!;
    expect(chart.centre).toBeCloseTo(0.2313, 4);
    expect(point.lower).toBeCloseTo(0.0524, 4);
    expect(point.upper).toBeCloseTo(0.4102, 4);
    // Recomputed with R 4.2.2 from the defining formula; relative 1e-9.
    expect(chart.centre / 0.2313333333).toBeCloseTo(1, 9);
    expect(point.lower! / 0.05242754807).toBeCloseTo(1, 9);
    expect(point.upper! / 0.4102391186).toBeCloseTo(1, 9);
  });

  it('puts samples 15 and 23 out, and sample 21 as well once they are left out of the baseline', () => {
    const out = (points: { z: number | null; index: number }[]) =>
      points.filter((p) => Math.abs(p.z!) > 3).map((p) => p.index + 1);
    const all = computedOrFail(pChart({ counts: cans, denominators: fifty }));
    expect(out(all.points)).toEqual([15, 23]);
    const kept = cans.filter((_, i) => i !== 14 && i !== 22);
    // The two samples are moved to the end, after the frozen baseline of the other 28.
    const revised = computedOrFail(
      pChart({ counts: [...kept, 22, 24], denominators: fifty, baseline: { first: 0, last: 27 } }),
    );
    expect(revised.centre).toBeCloseTo(0.215, 12);
    expect(revised.points[0]!.lower).toBeCloseTo(0.04070283995, 10);
    expect(revised.points[0]!.upper).toBeCloseTo(0.38929716, 8);
    expect(out(revised.points)).toEqual([20, 29, 30]);
    expect(revised.points[19]!.value).toBe(20 / 50);
    expect(revised.baseline).toEqual({
      first: 0,
      last: 27,
      frozen: true,
      points: 28,
      events: 301,
      denominator: 1400,
    });
  });

  it('runs the example of the docstring', () => {
    const chart = computedOrFail(pChart({ counts: [12, 15, 8, 10], denominators: [50, 50, 50, 50] }));
    expect(chart.centre).toBe(0.225);
    expect(chart.points[0]!.lower).toBeCloseTo(0.0478, 4);
    expect(chart.points[0]!.upper).toBeCloseTo(0.4022, 4);
    expect(chart.baseline.frozen).toBe(false);
  });
});

describe('p chart at the edges', () => {
  it('states a period without cases and goes on', () => {
    const chart = computedOrFail(pChart({ counts: [1, 0, 2], denominators: [10, 0, 10] }));
    expect(chart.points[1]).toMatchObject({
      value: null,
      lower: null,
      upper: null,
      z: null,
      missing: 'denominator is 0',
    });
    expect(chart.baseline).toMatchObject({ points: 2, events: 3, denominator: 20 });
  });

  it.each([
    { counts: [0, 0, 0], denominators: [10, 10, 10], why: /No event/ },
    { counts: [10, 10], denominators: [10, 10], why: /Every case/ },
    { counts: [1], denominators: [10], why: /at least 2/ },
    { counts: [], denominators: [], why: /at least 2/ },
  ])('states why there is no chart: $why', ({ counts, denominators, why }) => {
    expect(reasonOrFail(pChart({ counts, denominators }))).toMatch(why);
  });

  it.each([
    { counts: [11], denominators: [10] },
    { counts: [1.5], denominators: [10] },
    { counts: [1, 2], denominators: [10] },
    { counts: [1, 2], denominators: [10, 10], baseline: { first: 1, last: 2 } },
  ])('refuses impossible input %#', (input) => {
    expect(() => pChart(input)).toThrow(RangeError);
  });

  it('keeps limits inside 0 and 1, finite, around the centre, whatever the counts', () => {
    const period = fc
      .integer({ min: 0, max: 200 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
    holds(
      fc.property(fc.array(period, { maxLength: 40 }), (periods) => {
        const chart = pChart({ counts: periods.map((p) => p[0]), denominators: periods.map((p) => p[1]) });
        expect(numbersIn(chart).every(Number.isFinite)).toBe(true);
        if (!chart.computable) return;
        for (const p of chart.points) {
          if (p.value === null) continue;
          expect(p.lower).toBeGreaterThanOrEqual(0);
          expect(p.upper).toBeLessThanOrEqual(1);
          expect(p.lower).toBeLessThanOrEqual(p.centre);
          expect(p.upper).toBeGreaterThanOrEqual(p.centre);
        }
      }),
    );
  });
});
