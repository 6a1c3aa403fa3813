import { beforeAll, describe, expect, it } from 'vitest';
import { countedOff, describeCounted, describeJudged, type Measured, measure } from './blind/measure.ts';
import { makeFourthStyles } from './blind-fourth/make-fourth.ts';

/**
 * Ten styles (44 tables) by a fifth hand, who knew the trade and had seen neither the vocabularies nor the other forty but one of them (British, of the third set); the
 * list of fields and the remarks on the third set's first figures were known. They were committed with their truth before anything was measured. The one table without
 * a truth of counts is measured for kind, columns and words alone.
 *
 * `all` is what the truth holds; the floors are what was measured first, and 0 until then.
 */
const FIRST = {
  kind: { right: 0, all: 44 },
  column: { right: 0, all: 309 },
  word: { right: 0, all: 183 },
  counts: { exact: 0, all: 43 },
} as const;

/** Wrong and called certain when first measured; nothing else may be. */
const WRONG_AT_FIRST: readonly string[] = [];

let judged: Measured['judged'];
let counted: Measured['counted'];
beforeAll(async () => {
  ({ judged, counted } = await measure(await makeFourthStyles()));
  counted = counted.filter(({ expected }) => expected);
}, 120_000);

describe('ten styles of exports by a fifth hand', () => {
  it('nothing wrong stands without a mark but what did at first', () => {
    const wrong = judged.filter(({ verdict }) => verdict === 'wrong').map(({ place }) => place);
    expect(wrong.filter((place) => !WRONG_AT_FIRST.includes(place))).toEqual([]);
    expect(wrong.length).toBeLessThanOrEqual(WRONG_AT_FIRST.length);
  });

  it.each(['kind', 'column', 'word'] as const)('%s: no fewer are proposed right than at first', (what) => {
    const all = judged.filter((one) => one.what === what);
    console.log(describeJudged(what, judged));
    expect(all).toHaveLength(FIRST[what].all);
    expect(all.filter(({ verdict }) => verdict === 'right').length).toBeGreaterThanOrEqual(FIRST[what].right);
  });

  it('counts of records, duplicates, problems and skipped rows: no fewer are exact than at first', () => {
    console.log(describeCounted(counted));
    expect(counted).toHaveLength(FIRST.counts.all);
    expect(counted.length - countedOff(counted).length).toBeGreaterThanOrEqual(FIRST.counts.exact);
  });
});
