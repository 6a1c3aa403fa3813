import { describe, expect, it } from 'vitest';
import { blockPermutationTest } from '../../../pipeline/statistics/permutation/block-permutation-test.ts';
import { computedOrFail, reasonOrFail } from '../computed-or-fail.ts';

const exposure = [0, 0, 1, 1, 1, 0, 0, 0, 0, 0];
const events = [0, 0, 0, 2, 1, 1, 0, 0, 0, 1];

describe('permutation of blocks', () => {
  it('agrees with a count by hand: blocks of two, 6 of 120 orders reach 3', () => {
    // The five blocks 00 11 10 00 00 in all orders: the sum is 0 in 36, 1 in 30, 2 in 48 and 3 in 6 of them (counted by hand).
    const result = computedOrFail(blockPermutationTest(exposure, events, { blockLength: 2 }));
    expect(result).toMatchObject({ statistic: 3, orders: 120, coverage: 'all', blocks: 5 });
    expect(result.pGreater).toBeCloseTo(6 / 120, 12);
  });

  it('with blocks of one step is naive random placement: 22 of the 120 places of three exposed days reach 3', () => {
    const { pGreater, coverage } = computedOrFail(
      blockPermutationTest(exposure, events, { blockLength: 1, draws: 40_000 }),
    );
    expect(coverage).toBe('drawn');
    // 22 / 120 counted by hand; four standard errors of 40,000 draws.
    expect(Math.abs(pGreater - 22 / 120)).toBeLessThan(4 * Math.sqrt(((22 / 120) * (98 / 120)) / 40_000));
  });

  it('states what it can’t do', () => {
    expect(reasonOrFail(blockPermutationTest([1, 1], [0, 1], { blockLength: 1 }))).toMatch(
      /exposure that varies/,
    );
    expect(() => blockPermutationTest([0, 1, 0], [0, 1, 0], { blockLength: 2 })).toThrow(RangeError);
  });
});
