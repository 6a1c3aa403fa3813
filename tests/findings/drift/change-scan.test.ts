import fc from 'fast-check';
import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { scanChanges } from '../../../pipeline/findings/drift/change-scan.ts';
import { commonMovement } from '../../../pipeline/findings/drift/common-movement.ts';
import { median } from '../../../pipeline/findings/drift/robust.ts';

const room = { before: 3, afterStep: 2, afterKnot: 3, daysAfterKnot: 2, wholeSlope: true };
const values = fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 12, maxLength: 40 });
const sum = (of: readonly number[]) => of.reduce((a, b) => a + b, 0);
const squares = (of: readonly number[], fit: (i: number) => number) =>
  sum(of.map((y, i) => (y - fit(i)) ** 2));
const mean = (of: readonly number[]) => sum(of) / of.length;

describe('the scan for changes', () => {
  // Against least squares done again at each place; the line by simple-statistics.
  it('finds the step and the slope that least squares find one by one', () => {
    fc.assert(
      fc.property(values, (y) => {
        const t = y.map((_, i) => i);
        const found = scanChanges({ t, y, w: y.map(() => 1) }, room, true);
        const level = mean(y);
        expect(found.constant.sse).toBeCloseTo(
          squares(y, () => level),
          6,
        );
        let bestStep = Number.POSITIVE_INFINITY;
        for (let k = room.before; k <= y.length - room.afterStep; k++) {
          const [low, high] = [mean(y.slice(0, k)), mean(y.slice(k))];
          bestStep = Math.min(
            bestStep,
            squares(y, (i) => (i < k ? low : high)),
          );
        }
        expect(found.step!.sse).toBeCloseTo(bestStep, 6);
        for (const slope of found.slopes) {
          const { m, b } = linearRegression(t.map((day, i) => [Math.max(0, day - slope.knot), y[i]!]));
          expect(slope.slope).toBeCloseTo(m, 6);
          expect(slope.level).toBeCloseTo(b, 6);
          expect(slope.sse).toBeCloseTo(
            squares(y, (i) => b + m * Math.max(0, i - slope.knot)),
            6,
          );
        }
        expect(found.slope!.sse).toBe(Math.min(...found.slopes.map((of) => of.sse)));
        const bare = scanChanges({ t, y, w: y.map(() => 1) }, room);
        expect([bare.slope, bare.slopes]).toEqual([found.slope, []]);
      }),
    );
  });
});

describe('the median', () => {
  it('is the middle of the sorted values', () => {
    const long = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 120 });
    fc.assert(
      fc.property(long, (of) => {
        const sorted = of.toSorted((a, b) => a - b);
        const middle = of.length >> 1;
        expect(median(of)).toBe(
          of.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1]! + sorted[middle]!) / 2,
        );
      }),
    );
    expect(median([])).toBeUndefined();
  });
});

describe('the common movement of a site', () => {
  const units = ['A', 'B', 'C', 'D'];
  const days = Array.from({ length: 60 }, (_, day) => day);
  const effect = (day: number) => Math.sin(day / 9);
  const series = (own: (unit: number, day: number) => number) =>
    units.map((_, unit) => days.map((day) => ({ day, y: 10 * unit + effect(day) + own(unit, day) })));

  it('is what all units do, whatever their levels', () => {
    const found = commonMovement(
      series(() => 0),
      units,
      3,
    );
    const shift = mean(days.map(effect));
    for (const { day, effect: is, units: count } of found.days) {
      expect(is).toBeCloseTo(effect(day) - shift, 1);
      expect(count).toBe(4);
    }
  });

  it('hardly follows one unit that goes its own way', () => {
    const alone = commonMovement(
      series((unit, day) => (unit === 0 && day > 40 ? 8 : 0)),
      units,
      3,
    );
    const none = commonMovement(
      series(() => 0),
      units,
      3,
    );
    const apart = alone.days.map((of, i) => Math.abs(of.effect - none.days[i]!.effect));
    expect(Math.max(...apart)).toBeLessThan(1);
  });

  it('is not known with too few units', () => {
    const two = commonMovement(series(() => 0).slice(0, 2), units.slice(0, 2), 3);
    expect(two.days).toEqual([]);
    expect(two.at(5)).toBeUndefined();
  });
});
