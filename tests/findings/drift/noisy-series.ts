import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { JudgeInput } from '../../../pipeline/findings/drift/judge-series.ts';

/** A series of 200 days around a shape, with noise of standard deviation 1 (sum of twelve uniform values). */
export function noisySeries(shape: (day: number) => number, seed = 3) {
  const generator = xoroshiro128plus(seed);
  const t = Array.from({ length: 200 }, (_, day) => day);
  const y = t.map((day) => {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += (generator.next() >>> 0) / 2 ** 32;
    return shape(day) + sum;
  });
  return {
    t,
    y,
    w: t.map(() => 1),
    measured: y,
    spread: 1,
    autocorrelation: 0,
    leastChange: 0,
    leastValues: 20,
    leastRate: 0.015,
    leastMeasuredStep: 0.4,
  };
}

/** The first so many values of a series, as an export of that day would have given them. */
export function firstValues(input: JudgeInput, values: number): JudgeInput {
  const { t, y, w, measured } = input;
  const [days, ys, weights, raw] = [t, y, w, measured].map((list) => list.slice(0, values));
  return { ...input, t: days!, y: ys!, w: weights!, measured: raw! };
}
