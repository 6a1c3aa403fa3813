import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyRules } from '../../../pipeline/statistics/run-rules/apply-rules.ts';
import { nelsonRules, westernElectricRules } from '../../../pipeline/statistics/run-rules/rule-sets.ts';
import type { RunRule, ZSeries } from '../../../pipeline/statistics/run-rules/signal.ts';
import { holds } from '../properties.ts';

/** Positions as the published rules count them: from 1. */
const firesAt = (rule: RunRule, z: ZSeries) => rule(z).map((s) => s.index + 1);

// Rules as worded in Western Electric, Statistical Quality Control Handbook (1956), and Nelson, Journal of
// Quality Technology 16 (1984) 237-239. No published series with all firings was found: the expected
// positions were worked out by hand from the wording and agree with an independent implementation in R 4.2.2.
describe('Western Electric rules on a mixed series', () => {
  const z = [
    0.3, -0.8, 1.2, 2.2, -0.4, 2.4, 1.1, 1.3, 1.6, 0.2, 1.2, 0.9, 0.4, -0.2, -1.4, -2.1, -0.6, -2.3, -3.2,
    0.5,
  ];
  it.each([
    ['beyond-three-sigma', [19]],
    ['two-of-three-beyond-two', [6, 18, 19]],
    ['four-of-five-beyond-one', [7, 8, 9, 11, 19]],
    ['eight-on-one-side', [13]],
  ] as const)('%s', (name, expected) => {
    expect(firesAt(westernElectricRules[name], z)).toEqual(expected);
  });
});

describe("Nelson's rules on a mixed series", () => {
  const z = [
    0.2, -0.5, 0.1, 0.4, 0.7, 0.9, 1.3, 1.8, 2.1, -0.3, 0.6, -0.2, 0.4, -0.7, 0.3, -0.1, 0.8, -0.6, 0.5, -0.9,
    0.2, -0.3, 0.1, -0.2,
  ];
  it.each([
    ['beyond-three-sigma', []],
    ['nine-on-one-side', []],
    ['six-rising-or-falling', [7, 8, 9]],
    ['fourteen-alternating', [21, 22, 23, 24]],
    ['two-of-three-beyond-two', []],
    ['four-of-five-beyond-one', []],
    ['fifteen-within-one', [24]],
    ['eight-beyond-one', []],
  ] as const)('%s', (name, expected) => {
    expect(firesAt(nelsonRules[name], z)).toEqual(expected);
  });
});

// For each rule the shortest series that fires, and the same with one point moved that does not.
describe.each([
  ['beyond-three-sigma', [3.01], [3]],
  ['two-of-three-beyond-two', [2.1, 2.1], [2.1, -2.1]],
  ['two-of-three-beyond-two', [2.1, 0, 2.1], [2.1, 0, 2]],
  ['four-of-five-beyond-one', [1.1, 1.1, 1.1, 1.1], [1.1, 1.1, 1.1, 1]],
  ['four-of-five-beyond-one', [1.1, 0, 1.1, 1.1, 1.1], [1.1, 0, 0, 1.1, 1.1, 1.1]],
  ['nine-on-one-side', [1, 1, 1, 1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 0, 1, 1, 1, 1]],
  ['six-rising-or-falling', [0, 1, 2, 3, 4, 5], [0, 1, 2, 3, 3, 5]],
  ['six-rising-or-falling', [5, 4, 3, 2, 1, 0], [5, 4, 3, 2, 1]],
  [
    'fourteen-alternating',
    [0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1],
    [0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 0],
  ],
  [
    'fifteen-within-one',
    Array.from({ length: 15 }, (_, i) => (i % 2 ? 1 : -1)),
    [...Array(14).fill(0), 1.01],
  ],
  [
    'eight-beyond-one',
    [1.1, -1.1, 1.1, -1.1, 1.1, -1.1, 1.1, -1.1],
    [1.1, -1.1, 1.1, -1.1, 1, -1.1, 1.1, -1.1],
  ],
] as [keyof typeof nelsonRules, number[], number[]][])('%s', (name, fires, quiet) => {
  it('fires once, at the last point', () => {
    expect(firesAt(nelsonRules[name], fires)).toEqual([fires.length]);
  });
  it('is quiet with one point moved', () => {
    expect(firesAt(nelsonRules[name], quiet)).toEqual([]);
  });
});

describe('eight on one side', () => {
  it('fires at the eighth point, one before nine on one side', () => {
    const nine = Array(9).fill(-0.5);
    expect(firesAt(westernElectricRules['eight-on-one-side'], nine)).toEqual([8, 9]);
    expect(firesAt(nelsonRules['nine-on-one-side'], nine)).toEqual([9]);
    expect(westernElectricRules['eight-on-one-side'](nine)[0]).toEqual({ index: 7, from: 0, side: 'low' });
  });
});

describe('applyRules', () => {
  it('runs the example of the docstring', () => {
    expect(applyRules([0.1, 3.2, 2.1], westernElectricRules)).toEqual([
      { rule: 'beyond-three-sigma', index: 1, from: 1, side: 'high' },
      { rule: 'two-of-three-beyond-two', index: 2, from: 1, side: 'high' },
    ]);
  });

  it('refuses NaN', () => {
    expect(() => applyRules([Number.NaN], westernElectricRules)).toThrow(RangeError);
  });

  const series = fc.array(fc.option(fc.double({ min: -4, max: 4, noNaN: true })), { maxLength: 40 });

  it('mirrors when the series is turned upside down', () => {
    const turned = { high: 'low', low: 'high', both: 'both' } as const;
    holds(
      fc.property(series, (z) => {
        const mirrored = applyRules(
          z.map((v) => (v === null ? null : -v)),
          { ...nelsonRules, ...westernElectricRules },
        );
        const expected = applyRules(z, { ...nelsonRules, ...westernElectricRules });
        expect(mirrored).toEqual(expected.map((s) => ({ ...s, side: turned[s.side] })));
      }),
    );
  });

  it('says the same of the plotted points whether or not periods are missing', () => {
    holds(
      fc.property(series, (z) => {
        const kept = z.flatMap((v, i) => (v === null ? [] : [i]));
        const dense = applyRules(
          kept.map((i) => z[i]!),
          nelsonRules,
        );
        expect(applyRules(z, nelsonRules)).toEqual(
          dense.map((s) => ({ ...s, index: kept[s.index]!, from: kept[s.from]! })),
        );
      }),
    );
  });

  it('never looks ahead: a later point changes no earlier firing', () => {
    holds(
      fc.property(series, fc.double({ min: -4, max: 4, noNaN: true }), (z, next) => {
        const longer = applyRules([...z, next], nelsonRules).filter((s) => s.index < z.length);
        expect(longer).toEqual(applyRules(z, nelsonRules));
      }),
    );
  });
});
