import { describe, expect, it } from 'vitest';
import { EVIDENCE } from '../../../pipeline/findings/drift/evidence.ts';
import { type Judgement, judgeSeries } from '../../../pipeline/findings/drift/judge-series.ts';
import { judgeStanding } from '../../../pipeline/findings/drift/standing.ts';
import { firstValues, noisySeries } from './noisy-series.ts';

const SEEDS = [3, 4, 5, 6, 7, 8, 9, 10];
const LOOKS = Array.from({ length: 60 }, (_, i) => 141 + i);

/** A climb from day 150 on that reaches 4 in fifty days, as on record after so many values that lie some days apart. */
const climbAfter = (values: number, seed: number, apart = 1) => {
  const climb = firstValues(
    noisySeries((day) => Math.max(0, day - 150) * 0.08, seed),
    values,
  );
  return { ...climb, t: climb.t.map((day) => day * apart) };
};
const says = ({ state, slope }: Judgement) => (state === 'moving' ? Math.sign(slope!.slope) : 0);

describe('a movement', () => {
  // Values a week apart: a look between two values adds nothing.
  it.each([
    [1, 1],
    [2, 1],
    [3, 1],
    [1, 7],
  ])(
    'stands where it was called on each of the %i looks before as well, values %i days apart',
    (values, apart) => {
      let taken = 0;
      let left = 0;
      for (const seed of SEEDS)
        for (const n of LOOKS) {
          const looks = Array.from({ length: values + 1 }, (_, back) =>
            says(judgeSeries(climbAfter(n - back, seed, apart))),
          );
          const found = says(judgeStanding(climbAfter(n, seed, apart), EVIDENCE, values));
          expect(found).toBe(looks.every((said) => said === looks[0]) ? looks[0] : 0);
          if (looks[0] !== 0 && found === 0) taken++;
          if (found !== 0) left++;
        }
      // Both happen, and more calls of a true climb stand than not.
      expect(taken).toBeGreaterThan(0);
      expect(left).toBeGreaterThan(taken);
    },
  );

  it('that does not stand yet is undecided, and keeps the steps that were found', () => {
    let seen = 0;
    for (const seed of SEEDS)
      for (const n of LOOKS) {
        const judged = judgeSeries(climbAfter(n, seed));
        const found = judgeStanding(climbAfter(n, seed), EVIDENCE);
        if (judged.state !== 'moving' || found.state === 'moving') continue;
        seen++;
        const state = judged.steps.length > 0 ? 'stepped' : 'steady';
        expect(found).toMatchObject({ state, slope: null, signal: null, undecided: true });
        expect(found.steps).toEqual(judged.steps);
      }
    expect(seen).toBeGreaterThan(0);
  });

  it('is called at once where nothing is asked', () => {
    for (const n of LOOKS)
      expect(judgeStanding(climbAfter(n, 3), EVIDENCE, 0)).toEqual(judgeSeries(climbAfter(n, 3)));
  });
});
