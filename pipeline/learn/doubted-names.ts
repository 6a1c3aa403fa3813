import { foldName } from '../site/unit-names.ts';

/** A name of a unit that may be a slip, the name that it may stand for, and why. */
export interface DoubtedName {
  name: string;
  near: string | undefined;
  why: string;
}

/** A unit with so small a share of the rows of a usual one, and so few, is a question. */
const FEW = { share: 0.01, rows: 20 } as const;

/** Words from this length on may be compared letter by letter: "A1" and "B1" are two units. */
const LONG = 4;

/**
 * Names of units that may be slips of the hand: with very few rows beside the others, or one letter away from a name that has more. Which of them are units is for the site
 * to say.
 *
 * @param rows rows by name
 */
export function doubtedNames(rows: ReadonlyMap<string, number>): DoubtedName[] {
  const all = [...rows.values()].reduce((sum, count) => sum + count, 0);
  return [...rows].flatMap(([name, count]): DoubtedName[] => {
    const others = [...rows].filter(([other]) => other !== name);
    const of = `${count} of ${all} rows ${count === 1 ? 'has' : 'have'} it`;
    const [alike] = others
      .filter(
        ([other, more]) => oneLetterApart(name, other) && (more > count || (more === count && other < name)),
      )
      .sort((a, b) => b[1] - a[1]);
    if (alike) return [{ name, near: alike[0], why: `${of}; it is one letter away from "${alike[0]}"` }];
    const usual = middle(others.map(([, more]) => more));
    return count <= FEW.rows && count <= usual * FEW.share
      ? [{ name, near: undefined, why: `only ${of}` }]
      : [];
  });
}

/** The middle of counts, the lower of two; 0 of none. */
const middle = (counts: readonly number[]): number =>
  counts.toSorted((a, b) => a - b)[Math.floor((counts.length - 1) / 2)] ?? 0;

/** Whether two names differ by a slip in one long word: a letter more, less, exchanged or swapped with its neighbour. A last letter that differs may tell two units apart. */
function oneLetterApart(a: string, b: string): boolean {
  const [left, right] = [wordsOf(a), wordsOf(b)];
  if (left.length !== right.length) return false;
  const differ = left.flatMap((word, at) => (word === right[at] ? [] : [[word, right[at]!] as const]));
  const [pair] = differ;
  return differ.length === 1 && pair !== undefined && isSlip(...pair);
}

const wordsOf = (name: string): string[] => foldName(name).match(/\p{L}+|\p{N}+/gu) ?? [];

function isSlip(a: string, b: string): boolean {
  if (![a, b].every((word) => word.length >= LONG && /^\p{L}+$/u.test(word))) return false;
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  let same = 0;
  while (same < short.length && short[same] === long[same]) same++;
  if (long.length === short.length + 1) return short.slice(same) === long.slice(same + 1);
  if (long.length !== short.length || same === short.length - 1) return false;
  const isOther = short.slice(same + 1) === long.slice(same + 1);
  const isSwapped =
    short[same] === long[same + 1] &&
    short[same + 1] === long[same] &&
    short.slice(same + 2) === long.slice(same + 2);
  return isOther || isSwapped;
}
