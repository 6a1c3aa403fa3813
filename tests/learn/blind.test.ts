import { beforeAll, describe, expect, it } from 'vitest';
import type { Judged, Verdict } from './blind/judge.ts';
import { makeBlindStyles } from './blind/make-blind.ts';
import { describeJudged, type Measured, measure } from './blind/measure.ts';

/**
 * Ten styles whose truth was written down before anything was proposed for them. As they came first, 174 of 258 columns were proposed right (67 %), 66 not at all,
 * 110 of 146 words right; two words were wrong without a mark ("No" under "Completed" as failed, a cross beside ticks as done). Nine columns counted as wrong, too: eight
 * of a workbook whose header in two lines was taken for its lower line (the columns were right, by another name), one whose date pattern reads the same texts. The truth
 * was put right since in one word that its file does not hold and in three counts. The floors below are those reached with general words and parts of words,
 * so they say nothing of styles that come next; nothing wrong may stand without a mark, ever.
 */
const FLOOR = { kind: 1, column: 0.98, word: 0.95 } as const;

let judged: Measured['judged'];
let counted: Measured['counted'];
beforeAll(async () => {
  ({ judged, counted } = await measure(await makeBlindStyles(), 'source'));
}, 120_000);

const share = (what: Judged['what'], verdict: Verdict): number => {
  const all = judged.filter((one) => one.what === what);
  return all.filter((one) => one.verdict === verdict).length / all.length;
};

describe('ten styles of exports that nobody had in mind', () => {
  it('nothing wrong stands without a mark', () => {
    expect(judged.length).toBeGreaterThan(400);
    expect(judged.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
  });

  it.each(['kind', 'column', 'word'] as const)('%s: share proposed right is not under its floor', (what) => {
    console.log(describeJudged(what, judged));
    expect(share(what, 'right')).toBeGreaterThanOrEqual(FLOOR[what]);
  });

  it('counts of records, duplicates, problems and skipped rows are exactly right', () => {
    const told = counted.filter(({ expected }) => expected !== undefined);
    expect(told.map(({ place, found }) => ({ place, counts: found }))).toEqual(
      told.map(({ place, expected }) => ({ place, counts: expected })),
    );
  });
});
