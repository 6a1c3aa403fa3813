import { describe, expect, it } from 'vitest';
import { normalStream } from '../../../pipeline/statistics/run-length/normal-stream.ts';
import {
  runRuleRunLength,
  type ZoneRule,
} from '../../../pipeline/statistics/run-length/run-rule-run-length.ts';
import { applyRules } from '../../../pipeline/statistics/run-rules/apply-rules.ts';
import { westernElectricRules } from '../../../pipeline/statistics/run-rules/rule-sets.ts';
import { computedOrFail } from '../computed-or-fail.ts';

const rule: Record<string, ZoneRule> = {
  1: 'beyond-three-sigma',
  2: 'two-of-three-beyond-two',
  3: 'four-of-five-beyond-one',
  4: 'eight-on-one-side',
};
const average = (numbers: string, shift = 0) =>
  computedOrFail(runRuleRunLength({ rules: numbers.split('').map((n) => rule[n]!), shift })).average;

describe('run length under run rules', () => {
  // Champ and Woodall, Technometrics 29 (1987) 393-399, Table 1. 91.75 is also in NIST/SEMATECH e-Handbook
  // 6.3.2; the others are quoted from memory.
  it.each([
    ['1', 370.4],
    ['12', 225.44],
    ['13', 166.05],
    ['14', 152.73],
    ['123', 132.89],
    ['124', 122.05],
    ['134', 105.78],
    ['1234', 91.75],
  ])('rules %s in control', (numbers, published) => {
    expect(Math.abs(average(numbers) - published)).toBeLessThan(0.0051);
  });

  // All four rules under shifts: reference/run-rule-run-length.R, R 4.2.2, three decimals.
  it.each([
    [0.2, 66.803],
    [0.4, 36.606],
    [0.6, 20.905],
    [0.8, 13.251],
    [1, 9.222],
    [1.2, 6.892],
    [1.6, 4.412],
    [2, 3.128],
    [3, 1.667],
  ])('all four rules, shift %f', (shift, expected) => {
    expect(Math.abs(average('1234', shift) - expected)).toBeLessThan(0.00051);
    expect(average('1234', -shift)).toBeCloseTo(average('1234', shift), 9);
  });

  it('is what the rules do on simulated points (four standard errors)', () => {
    const normal = normalStream(31);
    const lengths = Array.from({ length: 400 }, () => {
      const z = Array.from({ length: 1200 }, () => normal());
      return (applyRules(z, westernElectricRules)[0]?.index ?? 1200) + 1;
    });
    const mean = lengths.reduce((a, b) => a + b, 0) / lengths.length;
    expect(Math.abs(mean - average('1234'))).toBeLessThan((4 * 91.75) / Math.sqrt(400));
  });

  it('waits longer for nine in a row than for eight', () => {
    const nine = computedOrFail(runRuleRunLength({ rules: ['nine-on-one-side'] })).average;
    const eight = computedOrFail(runRuleRunLength({ rules: ['eight-on-one-side'] })).average;
    // A run of m on one side, fair coin: 2^m - 1 tosses on average (Feller, An Introduction to Probability
    // Theory, vol. 1, XIII.7).
    expect(eight).toBeCloseTo(255, 6);
    expect(nine).toBeCloseTo(511, 6);
  });

  it('refuses no rules', () => {
    expect(() => runRuleRunLength({ rules: [] })).toThrow(RangeError);
  });
});
