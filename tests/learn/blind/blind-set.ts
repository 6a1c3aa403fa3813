import { beforeAll, describe, expect, it } from 'vitest';
import type { BlindStyle } from './make-blind.ts';
import {
  type CountsOf,
  countedOff,
  describeCounted,
  describeJudged,
  type Measured,
  measure,
} from './measure.ts';

/** How many of a set must be right, and how many there are. */
export interface Floors {
  kind: [right: number, all: number];
  column: [right: number, all: number];
  word: [right: number, all: number];
  /** Tables whose counts are exact, of those whose truth has any. */
  counts: [right: number, all: number];
}

/** The tests of one set of styles: nothing wrong stands without a mark, and no fewer are right than the floors say. */
export function testBlindSet(
  title: string,
  make: () => Promise<BlindStyle[]> | BlindStyle[],
  floors: Floors,
  countsOf?: CountsOf,
): void {
  describe(title, () => {
    let judged: Measured['judged'];
    let counted: Measured['counted'];
    beforeAll(async () => {
      ({ judged, counted } = await measure(await make(), countsOf));
      counted = counted.filter(({ expected }) => expected);
    }, 120_000);

    it('nothing wrong stands without a mark', () => {
      expect(judged.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
    });

    it.each(['kind', 'column', 'word'] as const)('%s: no fewer are proposed right than before', (what) => {
      console.log(describeJudged(what, judged));
      const all = judged.filter((one) => one.what === what);
      const [right, of] = floors[what];
      expect(all).toHaveLength(of);
      expect(all.filter(({ verdict }) => verdict === 'right').length).toBeGreaterThanOrEqual(right);
    });

    it('counts of records, duplicates, problems and skipped rows: no fewer are exact than before', () => {
      console.log(describeCounted(counted));
      const [right, of] = floors.counts;
      expect(counted).toHaveLength(of);
      expect(counted.length - countedOff(counted).length).toBeGreaterThanOrEqual(right);
    });
  });
}
