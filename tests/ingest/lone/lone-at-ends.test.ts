import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loneAtEnds } from '../../../pipeline/ingest/lone/lone-at-ends.ts';

/** What is lone among records of these operating days. */
function lone(days: readonly number[]): { early: number; late: number } {
  const sorted = days.toSorted((a, b) => a - b);
  return loneAtEnds(sorted.slice(0, 5), sorted.slice(-5).reverse(), days.length);
}

const NONE = { early: 0, late: 0 };
/** A year of one record a day, from day 1000 to 1364. */
const YEAR = Array.from({ length: 365 }, (_, at) => 1000 + at);

describe('records at the ends of the whole record', () => {
  it.each([
    ['nothing', [], NONE],
    ['one record', [7], NONE],
    ['a year without a gap', YEAR, NONE],
    ['one slip of ten years forward', [...YEAR, 4900], { early: 0, late: 1 }],
    ['one of ten years back', [-2600, ...YEAR], { early: 1, late: 0 }],
    ['one at each end', [-2600, ...YEAR, 4900], { early: 1, late: 1 }],
    ['a cycle and its test on one day', [...YEAR, 4900, 4900], { early: 0, late: 2 }],
    ['slips in two years', [...YEAR, 4900, 8600], { early: 0, late: 2 }],
    ['three in one year and one in another', [...YEAR, 4900, 4901, 4930, 8600], { early: 0, late: 4 }],
    ['five that lie together', [...YEAR, 4900, 4901, 4902, 4903, 4904], NONE],
    ['five of which one lies yet further', [...YEAR, 4900, 4901, 4902, 4903, 8600], { early: 0, late: 1 }],
    [
      'five in five years: no more than four are lone',
      [...YEAR, 2e3, 3e3, 4e3, 5e3, 6e3],
      { early: 0, late: 4 },
    ],
    ['62 days beyond the last', [...YEAR, 1364 + 62], NONE],
    ['63 days beyond the last', [...YEAR, 1364 + 63], { early: 0, late: 1 }],
    ['the first four after a pause', [...YEAR, 1500, 1501, 1502, 1503], { early: 0, late: 4 }],
    ['twenty others', [...YEAR.slice(0, 20), 4900], { early: 0, late: 1 }],
    ['nineteen others', [...YEAR.slice(0, 19), 4900], NONE],
    [
      'a record of tests that all lie a quarter of a year apart',
      YEAR.slice(0, 15).map((_, at) => 91 * at),
      NONE,
    ],
    ['thirty records of one day, and a slip', [...Array(30).fill(1000), 4900], { early: 0, late: 1 }],
  ] as [string, number[], { early: number; late: number }][])('%s', (_, days, expected) => {
    expect(lone(days)).toEqual(expected);
  });

  it('are found as by taking the smallest lone group away and looking again', () => {
    const gaps = fc.array(fc.constantFrom(0, 1, 30, 62, 63, 4000), { minLength: 30, maxLength: 40 });
    fc.assert(
      fc.property(gaps, (steps) => {
        const days: number[] = [];
        for (const step of steps) days.push((days.at(-1) ?? 0) + step);
        const early = takenAway(days, (from, to) => to - from);
        const late = takenAway(days.toReversed(), (from, to) => from - to);
        const others = days.length - early - late;
        expect(lone(days)).toEqual(others < 20 ? NONE : { early, late });
      }),
    );
  });
});

/** How many records are taken away from the front: each time the fewest of which the last lies over 62 days before the next, four in all. */
function takenAway(days: readonly number[], distance: (from: number, to: number) => number): number {
  let taken = 0;
  for (;;) {
    const left = days.slice(taken);
    const group = [1, 2, 3, 4].find((size) => distance(left[size - 1]!, left[size]!) > 62);
    if (group === undefined || taken + group > 4) return taken;
    taken += group;
  }
}
