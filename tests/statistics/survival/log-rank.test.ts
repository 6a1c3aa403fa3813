import { describe, expect, it } from 'vitest';
import { logRank } from '../../../pipeline/statistics/survival/log-rank.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';
import { lateEntries, mercaptopurine, placebo } from './remission.ts';

/** The sixteen made-up subjects by group, late entries left out as R's survdiff can't take them. */
function madeUpGroups(strata?: readonly string[]) {
  const groupOf = (i: number) => 'pqrq'[i % 4]!;
  return ['p', 'q', 'r'].map((name) => {
    const members = lateEntries.durations.map((_, i) => i).filter((i) => groupOf(i) === name);
    return {
      name,
      durations: members.map((i) => lateEntries.durations[i]!),
      observed: members.map((i) => lateEntries.observed[i]!),
      ...(strata ? { strata: members.map((i) => strata[i]!) } : {}),
    };
  });
}

describe('log-rank test', () => {
  // Published chi-square 16.79 (from memory); the rest by reference/survival.R, R 4.2.2, survival 3.5-3.
  it('has the published chi-square of the remission times', () => {
    const test = computedOrFail(logRank({ groups: [mercaptopurine, placebo] }));
    expect(test.chiSquare).toBeCloseTo(16.79, 2);
    expect(test.chiSquare).toBeCloseTo(16.792940989, 8);
    expect(test.variance).toBeCloseTo(6.256960574, 8);
    expect(test.groups[0]).toMatchObject({ observed: 9, expected: expect.closeTo(19.250500948, 8) });
    expect(test.groups[1]).toMatchObject({ observed: 21, expected: expect.closeTo(10.749499052, 8) });
    expect(test.pValue / 4.168809e-5).toBeCloseTo(1, 6);
  });

  it('has the Peto-Peto chi-square of R (rho = 1)', () => {
    const test = computedOrFail(logRank({ groups: [mercaptopurine, placebo], weight: 'peto-peto' }));
    expect(test.chiSquare).toBeCloseTo(14.45715082, 7);
  });

  it('compares three groups, and within strata', () => {
    const three = computedOrFail(logRank({ groups: madeUpGroups() }));
    expect(three).toMatchObject({ degreesOfFreedom: 2, chiSquare: expect.closeTo(3.068631604, 8) });
    const strata = lateEntries.durations.map((_, i) => 'aaabb'[i % 5]!);
    const stratified = computedOrFail(logRank({ groups: madeUpGroups(strata) }));
    expect(stratified.chiSquare).toBeCloseTo(6.238838817, 8);
  });

  it('takes late entries: the score test of Cox regression without ties', () => {
    const groups = [
      { name: 'a', durations: [4, 7, 9, 2.5], observed: [1, 1, 0, 1] as (0 | 1)[], entry: [0, 1, 2, 0] },
      { name: 'b', durations: [8, 6, 11, 5], observed: [1, 1, 1, 0] as (0 | 1)[], entry: [3, 1, 0, 2] },
    ];
    expect(computedOrFail(logRank({ groups })).chiSquare).toBeCloseTo(0.4889924352, 9);
  });

  it('gives the same p-value with the groups in another order', () => {
    const [a, b, c] = madeUpGroups();
    const first = computedOrFail(logRank({ groups: [a!, b!, c!] }));
    const second = computedOrFail(logRank({ groups: [c!, a!, b!] }));
    expect(second.pValue).toBeCloseTo(first.pValue, 12);
  });

  it('adds no degree of freedom for a group never at risk together with another', () => {
    const absent = { name: 'late', durations: [90, 95], observed: [1, 1] as (0 | 1)[], entry: [80, 85] };
    const test = computedOrFail(logRank({ groups: [mercaptopurine, placebo, absent] }));
    expect(test).toMatchObject({ degreesOfFreedom: 1, chiSquare: expect.closeTo(16.792940989, 8) });
  });

  it('states no event and nothing to compare', () => {
    const quiet = { name: 'quiet', durations: [3, 4], observed: [0, 0] as (0 | 1)[] };
    expect(reasonOrFail(logRank({ groups: [quiet, { ...quiet, name: 'still' }] }))).toMatch(/No event/);
    expect(reasonOrFail(logRank({ groups: [mercaptopurine] }))).toMatch(/two groups/);
    expect(() => logRank({ groups: [{ ...quiet, strata: ['x'] }] })).toThrow(RangeError);
  });
});
