import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, it } from 'vitest';
import { combineDrawn } from '../../../pipeline/statistics/permutation/combine-drawn.ts';

it('gives the sums of the definition, combination by combination, also where not all numbers are drawn at once', () => {
  // 17,000 segments and 1,000 draws: 17 million shifts, more than 2^24.
  const used = Array.from({ length: 17_000 }, (_, at) => ({
    excess: Float64Array.from({ length: 2 + (at % 5) }, (_, shift) => (shift + 1) / (at + 3)),
    variance: Float64Array.from({ length: 2 + (at % 5) }, (_, shift) => 1 / (shift + at + 7)),
  }));
  const generator = xoroshiro128plus(11);
  const excess = new Float64Array(1000);
  const variance = new Float64Array(1000);
  for (let draw = 0; draw < 1000; draw++)
    for (const scores of used) {
      const shift = Math.floor(((generator.next() >>> 0) / 2 ** 32) * scores.excess.length);
      excess[draw]! += scores.excess[shift]!;
      variance[draw]! += scores.variance[shift]!;
    }
  const sums = combineDrawn(used, 1000, 11);
  expect(sums.excess).toEqual(excess);
  expect(sums.variance).toEqual(variance);
});

it('takes segments of more than 65,536 steps', () => {
  const excess = Float64Array.from({ length: 70_000 }, (_, shift) => shift);
  const { excess: sums } = combineDrawn([{ excess, variance: excess }], 1000, 3);
  const generator = xoroshiro128plus(3);
  expect(Array.from(sums)).toEqual(
    Array.from({ length: 1000 }, () => Math.floor(((generator.next() >>> 0) / 2 ** 32) * 70_000)),
  );
  expect(Math.max(...sums)).toBeGreaterThan(65_536);
});
