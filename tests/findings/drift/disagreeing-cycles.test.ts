import { describe, expect, it } from 'vitest';
import { dayValues } from '../../../pipeline/findings/drift/day-values.ts';
import { disagreeingCycles } from '../../../pipeline/findings/drift/disagreeing-cycles.ts';
import type { ProbeValue } from '../../../pipeline/findings/drift/probe-values.ts';
import { dice } from '../../calibration/drift-simulate-site.ts';

/** Distances of -2, -1, 0, 1, 2 in turn: their median is 0, that of their absolute values 1. */
const APART = [0, 2, -1, 1, -2];
const DAYS = Array.from({ length: 60 }, (_, day) => day);
const reference = (level: (day: number) => number = () => 0) => new Map(DAYS.map((day) => [day, level(day)]));
const other = (change: (day: number, plain: number) => number = (_, plain) => plain) =>
  new Map(DAYS.map((day) => [day, change(day, APART[day % APART.length]!)]));
const daysOf = (found: ReturnType<typeof disagreeingCycles>) => [[...found.reference], [...found.other]];

describe('two cycles of a day that disagree', () => {
  // 2.5 standard deviations, which the median absolute deviation of 1 says are 1.4826 each (Hampel, JASA 69 (1974) 383-393): 3.7065.
  it.each([
    [3.7, []],
    [3.71, [30]],
    [-3.71, [30]],
  ])('are told by the usual distance: %d', (apart, days) => {
    const found = disagreeingCycles(
      reference(),
      other((day, plain) => (day === 30 ? apart : plain)),
    );
    expect(daysOf(found)).toEqual([[], days]);
  });

  it('leave out the one that is far from the days around', () => {
    const off = (day: number) => (day === 30 ? 8 : 0);
    expect(daysOf(disagreeingCycles(reference(off), other()))).toEqual([[30], []]);
    expect(
      daysOf(
        disagreeingCycles(
          reference(),
          other((day, plain) => plain + off(day)),
        ),
      ),
    ).toEqual([[], [30]]);
  });

  it.each([
    ['a step', (day: number) => (day < 30 ? 0 : 20)],
    ['a drift', (day: number) => 0.5 * day],
  ])('are none where %s shows in both', (_, level) => {
    const found = disagreeingCycles(
      reference(level),
      other((day, plain) => plain + level(day)),
    );
    expect(daysOf(found)).toEqual([[], []]);
  });

  it('are soon as usual where one kind has changed for good', () => {
    const found = disagreeingCycles(
      reference(),
      other((day, plain) => plain + (day < 45 ? 0 : 9)),
    );
    for (const day of daysOf(found).flat()) expect(Math.abs(day - 45)).toBeLessThanOrEqual(4);
  });

  it('can’t be told where most are equal, or from a handful', () => {
    const equal = new Map(DAYS.map((day) => [day, day === 30 ? 60 : 0]));
    expect(daysOf(disagreeingCycles(reference(), equal))).toEqual([[], []]);
    const few = new Map([...other((day, plain) => (day === 5 ? 9 : plain))].slice(0, 9));
    expect(daysOf(disagreeingCycles(reference(), few))).toEqual([[], []]);
  });
});

describe('a day of two cycles', () => {
  /** Two cycles a day for so many days, of normal noise of standard deviation 1, on which one in fifty is 6 too high where asked for. */
  const spreadOfDays = (outliers: boolean): number => {
    const draw = dice(5);
    const values = Array.from({ length: 4000 }, (_, i): ProbeValue => {
      const far = draw.float() < 0.02 && outliers ? 6 : 0;
      return { day: i >> 1, at: i, kind: i % 2 ? 'air_removal_test' : 'warm_up', value: draw.normal() + far };
    });
    const ys = dayValues('saturation_residual', values).map((of) => of.y);
    const middle = ys.reduce((sum, y) => sum + y, 0) / ys.length;
    return ys.reduce((sum, y) => sum + (y - middle) ** 2, 0) / ys.length;
  };

  // The mean of two values has half the variance of one; values far off would make it 0.5 + 0.02 x 0.98 x 36 / 2 = 0.85. Of them those stay that are less far off by chance, and the days on which both
  // are: 0.02 x 0.02 x 36.
  it('is nearly as calm with values far off as without', () => {
    expect(Math.abs(spreadOfDays(false) - 0.5)).toBeLessThan(0.06);
    expect(spreadOfDays(true)).toBeLessThan(0.65);
  });

  it('counts for less where one of them is left out', () => {
    const draw = dice(6);
    const values = DAYS.flatMap((day): ProbeValue[] =>
      (['warm_up', 'air_removal_test'] as const).map((kind, i) => ({
        day,
        at: 2 * day + i,
        kind,
        value: draw.normal() + (day === 30 && i === 0 ? 12 : 0),
      })),
    );
    const test = values.find((of) => of.day === 30 && of.kind === 'air_removal_test')!;
    const found = dayValues('saturation_residual', values).find((of) => of.day === 30)!;
    expect(found.y).toBe(test.value);
    expect(found.weight).toBeLessThan(0.8);
  });
});
